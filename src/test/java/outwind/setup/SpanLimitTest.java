package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.numeric.plate.Rigidity;

class SpanLimitTest {

    private static final Stiffness WOOD = Stiffness.of(Optional.empty());

    // Worked by hand: a strip 10 mm wide and 20 mm thick, E 9000 MPa, I = 10·20³/12 = 6666.7 mm⁴;
    // 50·L³/(48·9000·I) = 0.1 gives L = 179.3 mm, 50·L³/(3·9000·I) = 0.1 gives 71.1 mm. All 10 mm of it bend.
    @Test
    void narrowStripIsABeam() {
        double h = 20.0 * 20 * 20 / 12;

        SpanLimit limit = SpanLimit.of(2000, 10, new Rigidity(9000 * h, 9000 * h, 0, 4500 * h), Push.USUAL);

        assertEquals(179.3, limit.along(), 0.1);
        assertEquals(71.1, limit.overhang(), 0.1);
    }

    // Definition: a push four times as strong, or a give a fourth as great, halves every span of a wide plate.
    @Test
    void fourTimesThePushHalvesTheSpans() {
        Rigidity plate = WOOD.plate(22);
        SpanLimit usual = SpanLimit.of(2000, 1000, plate, Push.USUAL);
        SpanLimit strong = SpanLimit.of(2000, 1000, plate, new Push(200, 0.1));

        assertEquals(usual.along() / 2, strong.along(), 1e-9);
        assertEquals(usual.across() / 2, strong.across(), 1e-9);
        assertEquals(usual.overhang() / 2, strong.overhang(), 1e-9);
    }

    // Identity: what is along for a plate is across for the same plate turned by a quarter, where there is wood enough.
    @Test
    void aPlateTurnedByAQuarterSwapsItsSpans() {
        SpanLimit plate = SpanLimit.of(4000, 4000, new Rigidity(9e6, 5e5, 0, 6e5), Push.USUAL);
        SpanLimit turned = SpanLimit.of(4000, 4000, new Rigidity(5e5, 9e6, 0, 6e5), Push.USUAL);

        assertEquals(plate.along(), turned.across(), 1e-9);
        assertEquals(plate.across(), turned.along(), 1e-9);
    }

    // Timoshenko and Woinowsky-Krieger, as in the class: a plate on two lines L apart gives 0.01695·P·L²/D, one clamped
    // along a line 0.168·P·L²/D; for the same give the squares of the lengths are as these figures turned over. Half a
    // percent for their last digits.
    @Test
    void anOverhangIsToASpanAsTheHandbooksPlates() {
        SpanLimit plate = SpanLimit.of(4000, 4000, new Rigidity(9e6, 5e5, 0, 6e5), Push.USUAL);

        assertEquals(0.01695 / 0.168, Math.pow(plate.overhang() / plate.along(), 2), 5e-4);
    }

    // Independent: SplinePlate with a support every 40 mm along both edges, pushed in the middle of an end. At the
    // width that beam theory allows, it gives what it may, within a quarter: what the rule of thumb is worth.
    @ParameterizedTest
    @ValueSource(doubles = {18, 25, 32})
    void widthLimitIsWhereTheMiddleOfAnEndGivesTooMuch(double thickness) {
        double length = 800;
        double width = SpanLimit.of(length, 200, WOOD.plate(thickness), Push.USUAL).across();
        List<double[]> edges = new ArrayList<>();
        for (double x = 40; x <= length - 40; x += 40) {
            edges.add(new double[] {x, 0});
            edges.add(new double[] {x, width});
        }
        SplinePlate plate = new SplinePlate(length, width, WOOD.plate(thickness),
            WOOD.density() * 1e-9 * 9.80665 * thickness);

        double moved = plate.movements(edges, List.of(new double[] {0, width / 2}), 50)[0];

        assertEquals(0.1, moved, 0.025);
    }

    @Test
    void thickerBoardsSpanFurther() {
        SpanLimit thin = SpanLimit.of(2000, 200, WOOD.plate(20), Push.USUAL);
        SpanLimit thick = SpanLimit.of(2000, 200, WOOD.plate(40), Push.USUAL);

        assertTrue(thick.along() > thin.along() && thick.across() > thin.across()
            && thick.overhang() > thin.overhang());
    }
}
