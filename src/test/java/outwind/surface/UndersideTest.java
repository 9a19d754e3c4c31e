package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;

class UndersideTest {

    private static final ShapeOf SHAPE = ShapeOf.board();

    /** A made-up underside: 30 mm below level, cupped, and tapering to one end. */
    private static final DoubleBinaryOperator UNDERSIDE = (x, y) -> -30 + SHAPE.cup(0.6).applyAsDouble(x, y)
        + 0.002 * x;

    /** What is read off face B when the board lies on its other face, 5 mm up and tilted. */
    private static Board bothFaces(Turned turned) {
        DoubleBinaryOperator top = SHAPE.twist(1.5);
        List<CaliperReading> calipers = new ArrayList<>();
        for (double[] place : new double[][] {{0, 0}, {900, 0}, {900, 180}, {0, 180}, {450, 0}}) {
            calipers.add(new CaliperReading(place[0], place[1], top.applyAsDouble(place[0], place[1])
                - UNDERSIDE.applyAsDouble(place[0], place[1]), 2));
        }
        Board faceA = SHAPE.read(5, 3, top, calipers);
        List<Reading> faceB = SHAPE.read(5, 3, (x, y) -> {
            double onA = turned == Turned.ALONG ? x : 900 - x;
            double acrossA = turned == Turned.ALONG ? 180 - y : y;
            return 5 + 0.003 * x - 0.01 * y - UNDERSIDE.applyAsDouble(onA, acrossA);
        }).readings();
        return faceA.withFaceB(faceB, turned);
    }

    // Worked by hand: the tilt and height that face B was read at are plane terms, and five caliper readings without
    // noise fix them, so the underside comes back as it was made.
    @ParameterizedTest
    @EnumSource(Turned.class)
    void faceBIsTiedToFaceAByCalipers(Turned turned) {
        MeasuredShape shape = MeasuredShape.of(bothFaces(turned));

        for (double[] place : new double[][] {{0, 0}, {130, 40}, {450, 90}, {900, 180}}) {
            assertEquals(UNDERSIDE.applyAsDouble(place[0], place[1]), shape.undersideAt(place[0], place[1]), 1e-8);
        }
    }

    // Worked by hand: a bed that falls 2 mm over the length; a board on it of even thickness 30, read square to the
    // machine, is 30 thick everywhere once its readings are measured from the bed.
    @Test
    void heightsAreToldFromTheBedThatWasTouched() {
        DoubleBinaryOperator bed = (x, y) -> -2 * x / 900 + 0.001 * y;
        Board board = SHAPE.lyingFlat().read(5, 3, (x, y) -> 30 + bed.applyAsDouble(x, y));
        Board touched = board.withReadings(Stream.concat(board.readings().stream(), Stream.of(
            new Reading(-20, -20, bed.applyAsDouble(-20, -20), Face.BED, "", 30),
            new Reading(950, -20, bed.applyAsDouble(950, -20), Face.BED, "", 31),
            new Reading(950, 220, bed.applyAsDouble(950, 220), Face.BED, "", 32))).toList());

        MeasuredShape shape = MeasuredShape.of(touched);

        assertEquals(30, shape.topAt(100, 20), 1e-9);
        assertEquals(0, shape.undersideAt(100, 20), 1e-12);
    }

    @Test
    void oneTouchOfTheBedGivesItsHeight() {
        Board board = SHAPE.lyingFlat().read(5, 3, (x, y) -> 12);
        List<Reading> readings = new ArrayList<>(board.readings());
        readings.add(new Reading(-20, 0, -17.5, Face.BED, "", 30));

        assertEquals(29.5, MeasuredShape.of(board.withReadings(readings)).topAt(450, 90), 1e-9);
    }

    @Test
    void withoutATouchedBedNothingChanges() {
        Board board = SHAPE.read(3, 3, (x, y) -> 0);

        assertSame(board, Bed.measuredFrom(board));
    }
}
