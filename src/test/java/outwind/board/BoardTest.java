package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class BoardTest {

    private static final Reading ON_A = new Reading(15, 20, -0.4, Face.A, "", 7);
    private static final Reading ON_B = new Reading(15, 20, 0.2, Face.B, "", 8);
    private static final Reading ON_BED = new Reading(-50, 20, -31, Face.BED, "", 9);

    private static Board board(double length, Trim trim, List<Defect> defects, List<Reading> readings,
            List<CaliperReading> calipers) {
        return new Board("shelf", Units.MILLIMETRES, length, 200, OptionalDouble.of(30), Optional.empty(),
            OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), trim,
            Underside.ALIKE, Optional.empty(), defects, readings, calipers, List.of());
    }

    private static String refusal(Runnable making) {
        return assertThrows(IllegalArgumentException.class, making::run).getMessage();
    }

    @Test
    void readingsOfAFaceKeepTheirOrder() {
        Reading later = new Reading(10, 10, 0, Face.A, "", 10);

        Board board = board(1000, Trim.NONE, List.of(), List.of(ON_A, ON_B, ON_BED, later), List.of());

        assertEquals(List.of(ON_A, later), board.readingsOf(Face.A));
        assertEquals(List.of(ON_B), board.readingsOf(Face.B));
        assertEquals(List.of(ON_BED), board.readingsOf(Face.BED));
    }

    @Test
    void keepsItsOwnListOfReadings() {
        List<Reading> readings = new ArrayList<>(List.of(ON_A));
        Board board = board(1000, Trim.NONE, List.of(), readings, List.of());

        readings.clear();

        assertEquals(List.of(ON_A), board.readings());
    }

    @Test
    void targetAndSkimCanBeChangedAlone() {
        Board board = board(1000, Trim.NONE, List.of(), List.of(ON_A), List.of());

        Board changed = board.withTarget(20).withSkim(0.5);

        assertEquals(OptionalDouble.of(20), changed.target());
        assertEquals(OptionalDouble.of(0.5), changed.skim());
        assertEquals(changed, board.withSkim(0.5).withTarget(20));
        assertEquals(board.readings(), changed.readings());
        assertEquals(OptionalDouble.empty(), board.target());
    }

    @Test
    void impossibleSizesAreRefused() {
        assertEquals("length must be more than 0 and at most 20000 mm, got 0.0",
            refusal(() -> board(0, Trim.NONE, List.of(), List.of(), List.of())));
        assertEquals("length must be more than 0 and at most 20000 mm, got NaN",
            refusal(() -> board(Double.NaN, Trim.NONE, List.of(), List.of(), List.of())));
        Board board = board(1000, Trim.NONE, List.of(), List.of(), List.of());
        assertEquals("target must be more than 0 and at most 1000 mm, got 0.0", refusal(() -> board.withTarget(0)));
        assertEquals("skim must be from 0 to 1000 mm, got -0.1", refusal(() -> board.withSkim(-0.1)));
        assertEquals("skim must be less than half the thickness of 30 mm, got 15 mm",
            refusal(() -> board.withSkim(15)));
    }

    @Test
    void whatLiesOffTheBoardIsRefused() {
        Reading beyond = new Reading(1000.1, 20, 0, Face.B, "", 7);
        CaliperReading below = new CaliperReading(10, -0.1, 30, 7);

        assertEquals("reading lies off the board: " + beyond,
            refusal(() -> board(1000, Trim.NONE, List.of(), List.of(beyond), List.of())));
        assertEquals("caliper reading lies off the board: " + below,
            refusal(() -> board(1000, Trim.NONE, List.of(), List.of(), List.of(below))));
        assertEquals("defect lies off the board: Defect[x1=10.0, y1=10.0, x2=50.0, y2=201.0]",
            refusal(() -> board(1000, Trim.NONE, List.of(new Defect(10, 10, 50, 201)), List.of(), List.of())));
    }

    @Test
    void trimMustLeaveWood() {
        assertEquals("trim leaves nothing of the board: Trim[along=500.0, across=0.0]",
            refusal(() -> board(1000, new Trim(500, 0), List.of(), List.of(), List.of())));
        assertEquals("trim leaves nothing of the board: Trim[along=0.0, across=100.0]",
            refusal(() -> board(1000, new Trim(0, 100), List.of(), List.of(), List.of())));
        assertEquals(499, board(1000, new Trim(499, 99), List.of(), List.of(), List.of()).trim().along());
    }

    @Test
    void defectCornersComeInAnyOrder() {
        assertEquals(new Defect(300, 40, 420, 90), new Defect(420, 40, 300, 90));
        assertEquals(new Defect(300, 40, 420, 90), new Defect(300, 90, 420, 40));
        assertEquals(300, new Defect(420, 90, 300, 40).x1());
        assertEquals("defect needs two corners that span an area, got 1.0 2.0 1.0 4.0",
            refusal(() -> new Defect(1, 2, 1, 4)));
    }
}
