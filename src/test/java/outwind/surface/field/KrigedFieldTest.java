package outwind.surface.field;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.surface.trend.TrendModel;

class KrigedFieldTest {

    // A row of readings and one beside it, which alone holds the slope across: nothing predicts it. Heights so rough
    // that settings of small spread have no weight at all; they made the deviation not a number.
    @Test
    void aReadingThatNothingPredictsHasAnInfiniteDeviationHoweverRoughTheOthersAre() {
        SplittableRandom random = new SplittableRandom(20260301);
        double[] x = new double[41];
        double[] y = new double[41];
        double[] z = new double[41];
        Arrays.setAll(x, i -> 37 * i % 1500);
        Arrays.setAll(y, i -> i < 40 ? 20 : 180);
        Arrays.setAll(z, i -> random.nextDouble(-60, 60));

        KrigedField.Predicted last = KrigedField.of(Observations.of(x, y, z, 0.05, 1500, 200), TrendModel.CURVED,
            Prior.FACE, Noises.AS_STATED, new Viewpoint(1500, 200, false, false)).leavingOut().get(40);

        assertEquals(Double.POSITIVE_INFINITY, last.deviation());
    }
}
