package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class JointTestTest {

    private static double[][] independent(int draws, double... deviations) {
        SplittableRandom random = new SplittableRandom(5);
        return IntStream.range(0, draws).mapToObj(d -> IntStream.range(0, deviations.length)
            .mapToDouble(i -> deviations[i] * random.nextGaussian()).toArray()).toArray(double[][]::new);
    }

    // Closed form (Šidák): n independent normal figures all stay within q standard deviations with chance
    // (2Φ(q) − 1)ⁿ, so the joint 5 % bound is q = Φ⁻¹((1 + 0.95^(1/n)) / 2). Tolerance: four standard errors of the
    // quantile of 20,000 draws, about 1.4 %.
    @Test
    void boundsOfIndependentFiguresAreThoseOfSidak() {
        double q = new NormalDistribution().inverseCumulativeProbability((1 + Math.pow(0.95, 1.0 / 6)) / 2);

        double[] bounds = new JointTest(independent(20_000, 1, 1, 1, 2, 2, 2)).bounds(0.05);

        assertArrayEquals(new double[] {q, q, q, 2 * q, 2 * q, 2 * q}, bounds, 0.03 * q);
    }

    // By definition of a p-value: figures drawn by chance are below a level as often as it says. Standard error 0.7 %.
    @Test
    void pValuesOfChanceAreEvenlySpread() {
        JointTest test = new JointTest(independent(4000, 1, 3, 0.2));
        SplittableRandom random = new SplittableRandom(6);

        double below = IntStream.range(0, 1000).filter(i -> test.probability(new double[] {random.nextGaussian(),
            3 * random.nextGaussian(), 0.2 * random.nextGaussian()}) <= 0.05).count() / 1000.0;

        assertEquals(0.05, below, 0.021);
    }

    // Counted by hand: of draws 1, 2 and 3, two are at least as great as 2, three as 0, none as 4.
    @Test
    void aDrawThatIsAsGreatCounts() {
        JointTest test = new JointTest(new double[][] {{1}, {-2}, {3}});

        assertEquals((1 + 2) / 4.0, test.probability(new double[] {2}), 1e-12);
        assertEquals(1, test.probability(new double[] {0}), 1e-12);
        assertEquals(1 / 4.0, test.probability(new double[] {4}), 1e-12);
    }
}
