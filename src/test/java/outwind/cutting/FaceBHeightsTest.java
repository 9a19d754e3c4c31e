package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.flatten.Slab;
import outwind.numeric.plane.Plane;
import outwind.setup.Setup;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

/** Face B after the cut of face A, as the readings of it leave it possible. */
class FaceBHeightsTest {

    private static final ShapeOf SHAPE = new ShapeOf(900, 180, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
        ShapeOf.board().trim());

    private static final Board BEFORE = SHAPE.read(9, 5, (x, y) -> 0);
    private static final MeasuredShape MEASURED = MeasuredShape.of(BEFORE);
    private static final CuttingPlan CUTS = cuts();

    private static CuttingPlan cuts() {
        SampledBoard whole = MEASURED.at(Places.fine(BEFORE, Region.whole(BEFORE)));
        Plane level = new Plane(0, 0, 0);
        return CuttingPlan.of(Slab.of(whole, level, 0), Setup.bedUnder(whole, level), Datum.HIGHEST_SPOT, whole, whole,
            Double.POSITIVE_INFINITY, 0);
    }

    private static Places at(double... xy) {
        double[] x = Arrays.stream(new int[] {0, 2}).mapToDouble(i -> xy[i]).toArray();
        double[] y = Arrays.stream(new int[] {1, 3}).mapToDouble(i -> xy[i]).toArray();
        return new Places(x, y, new double[2], 0, 0);
    }

    // By definition: the board may lie tilted by a deviation of 0.1 mm at the middle of an edge or end against the
    // middle, 0.2 mm from side to side, beside what is unsure of the board itself. Readings along the one side do not
    // show it.
    @ParameterizedTest
    @CsvSource({"450, 0, 450, 180, false", "0, 90, 900, 90, true"})
    void aTiltThatWasNotReadIsLeftOpen(double x1, double y1, double x2, double y2, boolean along) {
        DoubleBinaryOperator level = (x, y) -> 30;
        Board read = SHAPE.read(5, 5, level);
        Board after = read.withReadings(read.readings().stream().filter(r -> along ? r.x() == 0 : r.y() == 0).toList());
        Places places = at(x1, y1, x2, y2);

        double[][] draws = FaceBHeights.draws(MEASURED, CUTS, after, places, 1);
        double[][] errors = ExpectedHeights.at(MEASURED, CUTS.faceA().plane(), places.x(), new double[] {180 - y1, 180
            - y2}, 0, 1).errors();

        double board = StatUtils.variance(Arrays.stream(errors).mapToDouble(draw -> draw[1] - draw[0]).toArray());
        double tilted = StatUtils.variance(Arrays.stream(draws).mapToDouble(draw -> draw[1] - draw[0]).toArray());
        assertEquals(0.04, tilted - board, 0.015);
    }
}
