package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;

/** What a sample says of its pack, against distributions of commons-math3. */
class PackModelTest {

    private static final double[] ROUGH = {28.1, 28.6, 27.9, 28.3, 28.4, 28.0, 28.8, 28.2, 28.5, 27.7};
    private static final double[] LOSS = {1.2, 2.0, 3.1, 4.4, 2.6, 1.8, 6.0, 2.2, 3.6, 3.3};

    /** A board of 2 x 0.2 m whose finished thickness is one of these. */
    private static PricedBoard board(double rough, double... finished) {
        return new PricedBoard("b", "b", WoodKind.ANY, Verdict.NONE, OptionalDouble.empty(), OptionalDouble.empty(),
            new ThicknessRange(finished), new BoardFeet(2000, 200, rough), 400_000 * rough, 1, 400_000,
            OptionalDouble.empty(), Optional.empty(), Optional.empty());
    }

    private static PackModel model(List<PricedBoard> measured, double target) {
        return new PackModel(measured, target, new SplittableRandom(1));
    }

    /** Ten boards that are known for sure. */
    private static PackModel known(double target) {
        return model(IntStream.range(0, 10).mapToObj(j -> board(ROUGH[j], ROUGH[j] - LOSS[j])).toList(), target);
    }

    // Reference: Student's distribution is what a normal one of unknown mean and deviation predicts. The deviation was
    // as good as read off two figures before: 0.4 mm, and 0.5 of log loss. Four standard errors of 10 000 draws.
    @Test
    void oneMoreBoardIsPredictedByStudentsDistribution() {
        PackModel model = known(25);
        TDistribution student = new TDistribution(null, 11);
        double[] rough = predicted(ROUGH, 0.4);
        double[] loss = predicted(Arrays.stream(LOSS).map(Math::log).toArray(), 0.5);
        double makes = 0;
        for (int i = 0; i < 400; i++) {
            double l = Math.exp(loss[0] + loss[1] * student.inverseCumulativeProbability((i + 0.5) / 400));
            makes += student.cumulativeProbability((rough[0] - l - 25) / rough[1]) / 400;
        }

        List<PackModel.Draw> draws = IntStream.range(0, 10_000).mapToObj(i -> model.next()).toList();

        double[] share = draws.stream().mapToDouble(PackModel.Draw::share).toArray();
        double mean = Arrays.stream(share).average().orElseThrow();
        double deviation = Math.sqrt(Arrays.stream(share).map(s -> (s - mean) * (s - mean)).average().orElseThrow());
        assertTrue(deviation < 0.15, "deviation " + deviation);
        assertEquals(makes, mean, 4 * deviation / 100);
        for (double under : new double[] {0.1, 0.5, 0.9}) {
            double at = student.inverseCumulativeProbability(under);
            double error = 4 * Math.sqrt(under * (1 - under)) / 100;
            assertEquals(under, draws.stream().filter(draw -> draw.rough() < rough[0] + at * rough[1]).count() / 1e4,
                error, "rough");
            assertEquals(under, draws.stream().filter(draw -> Math.log(draw.loss()) < loss[0] + at * loss[1]).count()
                / 1e4, error, "loss");
        }
    }

    /** Middle and scale of Student's distribution with n + 1 degrees, as two figures were known before. */
    private static double[] predicted(double[] figures, double first) {
        int n = figures.length;
        double mean = Arrays.stream(figures).average().orElseThrow();
        double squares = 2 * first * first + Arrays.stream(figures).map(x -> (x - mean) * (x - mean)).sum();
        return new double[] {mean, Math.sqrt(squares / (n + 1) * (1 + 1.0 / n))};
    }

    @Test
    void whatNoBoardCanMissOrMakeIsSure() {
        assertEquals(1, known(-1000).next().share(), 0);
        assertEquals(0, known(1000).next().share(), 0);
    }

    // Worked by hand: 28.4 − 2.6 mm is the fifth board's finished thickness, to the last bit.
    @Test
    void aBoardKnownForSureMakesItsOwnThickness() {
        boolean[] makes = known(28.4 - 2.6).next().makes();
        boolean[] misses = known(Math.nextUp(28.4 - 2.6)).next().makes();

        assertTrue(makes[4]);
        assertFalse(misses[4]);
        assertTrue(misses[0] && misses[1] && !makes[3]);
    }

    // Reference: log-normal distribution. A hundred boards say that losses have a median of 2 mm and a deviation of 0.5
    // in logarithms; of the last no more is known than that it loses up to 6 mm, so that it makes 25 of 28 mm where it
    // loses up to 3. Its readings alone would give an even chance.
    @Test
    void aBoardThatWasReadBadlyIsTakenForOneOfThePack() {
        LogNormalDistribution loss = new LogNormalDistribution(null, Math.log(2), 0.5);
        List<PricedBoard> measured = new ArrayList<>(IntStream.range(0, 100).mapToObj(i ->
            board(28, 28 - loss.inverseCumulativeProbability((i + 0.5) / 100))).toList());
        measured.add(board(28, IntStream.rangeClosed(0, 60).mapToDouble(i -> 22 + i / 10.0).toArray()));
        PackModel model = model(measured, 25);

        double makes = IntStream.range(0, 10_000).filter(i -> model.next().makes()[100]).count() / 1e4;

        assertEquals(loss.cumulativeProbability(3) / loss.cumulativeProbability(6), makes, 0.016);
    }

    // Worked by hand: two thousand boards lose 1 mm each. One is read to lose 26.5 to 27.5 mm, evenly, which the pack
    // rules out: it makes 1 mm of 28 as often as not. Four standard errors of 600 draws are 8 %.
    @Test
    void readingsAreBelievedWhereThePackRulesThemOut() {
        List<PricedBoard> measured = new ArrayList<>(Collections.nCopies(2000, board(28, 27)));
        measured.add(board(28, 0.5, 1, 1.5));
        PackModel model = model(measured, 1);

        double makes = IntStream.range(0, 600).filter(i -> model.next().makes()[2000]).count() / 600.0;

        assertEquals(0.5, makes, 0.08);
    }
}
