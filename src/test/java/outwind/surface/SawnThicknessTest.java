package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.surface.field.Viewpoint;

class SawnThicknessTest {

    private static final double LENGTH = 2400;
    private static final double WIDTH = 150;

    /** Four caliper readings (inch) on each of eight boards; see brown2000/README.md. */
    private static List<double[]> published() throws IOException {
        List<double[]> boards = new ArrayList<>();
        try (InputStream in = SawnThicknessTest.class.getResourceAsStream("/brown2000/sawn_thickness.csv")) {
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (Character.isDigit(line.charAt(0))) {
                    boards.add(Arrays.stream(line.split(",")).skip(1).limit(4).mapToDouble(Double::parseDouble)
                        .toArray());
                }
            }
        }
        return boards;
    }

    private static double within(List<double[]> boards) {
        return Math.sqrt(boards.stream().mapToDouble(StatUtils::variance).average().orElseThrow());
    }

    @Test
    void publishedDeviationsComeOutToTheirPrintedDigits() throws IOException {
        List<double[]> boards = published();

        // T. D. Brown, EM 8731 (2000), below table 3.
        assertEquals(0.01594, within(boards), 0.000005);
        assertEquals(0.02235, Math.sqrt(StatUtils.variance(boards.stream().mapToDouble(StatUtils::mean).toArray())),
            0.000005);
        assertEquals(0.02546, Math.sqrt(StatUtils.variance(boards.stream().flatMapToDouble(Arrays::stream).toArray())),
            0.000005);
    }

    @Test
    void possibleBoardsAreAsUnevenAsPublishedOnes() throws IOException {
        double[] x = {150, 850, 1550, 2250};
        double[] y = {10, 140, 10, 140};
        SplittableRandom random = new SplittableRandom(1);

        double[] deviations = Arrays.stream(SawnThickness.stated(43, Board.SAWN, new Viewpoint(LENGTH, WIDTH, false, false)).draws(x, y, 4000, random))
            .mapToDouble(draw -> Math.sqrt(StatUtils.variance(Arrays.stream(draw)
                .map(t -> t + random.nextGaussian(0, CaliperReading.DEVIATION)).toArray()))).toArray();

        // The published within-board deviation, 0.40 mm, is an ordinary one, and so is that of each published board.
        double pooled = 25.4 * within(published());
        assertTrue(StatUtils.percentile(deviations, 25) < pooled && pooled < StatUtils.percentile(deviations, 75),
            () -> StatUtils.percentile(deviations, 25) + " to " + StatUtils.percentile(deviations, 75));
        for (double[] board : published()) {
            double deviation = 25.4 * Math.sqrt(StatUtils.variance(board));
            assertTrue(StatUtils.percentile(deviations, 10) < deviation
                && deviation < StatUtils.percentile(deviations, 90), () -> "deviation " + deviation);
        }
    }

    @Test
    void oneFigureLeavesTheWedgeAsOpenAsItWasBelieved() {
        double[][] draws = SawnThickness.stated(30, Board.SAWN, new Viewpoint(LENGTH, WIDTH, false, false)).draws(new double[] {0, LENGTH},
            new double[] {0, WIDTH}, 20_000, new SplittableRandom(2));

        assertEquals(30, StatUtils.mean(column(draws, 0)), 0.03);
        // By hand: corner to corner 4·E f²·(0.32² + 0.18²) = 1.38 for the wedge, with E f² = (2 cosh(1.4·√3))/6 + 2/3,
        // and 2·0.13²·E exp(1.6 s) = 0.10 for the wander, s over its six steps.
        double[] difference = IntStream.range(0, draws.length).mapToDouble(d -> draws[d][0] - draws[d][1]).toArray();
        assertEquals(Math.sqrt(1.38 + 0.10), Math.sqrt(StatUtils.variance(difference)), 0.12);
    }

    @Test
    void caliperReadingsBringTheThicknessBack() {
        SplittableRandom random = new SplittableRandom(3);
        List<CaliperReading> six = IntStream.range(0, 6).mapToObj(i -> new CaliperReading(
            20 + (LENGTH - 40) * (i % 3) / 2, i < 3 ? 0 : WIDTH, 30 + 0.5 * (i % 3), i)).toList();

        double[][] draws = SawnThickness.through(six, new Viewpoint(LENGTH, WIDTH, false, false)).draws(new double[] {0, LENGTH},
            new double[] {0, WIDTH}, 2000, random);

        assertEquals(30, StatUtils.mean(column(draws, 0)), 0.1);
        assertEquals(31, StatUtils.mean(column(draws, 1)), 0.1);
        assertTrue(Math.sqrt(StatUtils.variance(column(draws, 0))) < 0.2);
    }

    private static double[] column(double[][] draws, int i) {
        return Arrays.stream(draws).mapToDouble(draw -> draw[i]).toArray();
    }

    // Identity: the caliper may have been set anywhere round the board, so no corner, edge or end is known better than
    // the one across from it. From either viewpoint.
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void noEdgeIsKnownBetterThanTheOther(boolean far) {
        double[] x = {LENGTH / 2, LENGTH / 2, 0, LENGTH};
        double[] y = {0, WIDTH, WIDTH / 2, WIDTH / 2};
        double[][] draws = SawnThickness.stated(30, Board.SAWN, new Viewpoint(LENGTH, WIDTH, far, far)).draws(x, y, 20_000,
            new SplittableRandom(5));

        double[] deviations = IntStream.range(0, 4).mapToDouble(i -> Math.sqrt(StatUtils.variance(column(draws, i))))
            .toArray();
        // Twice the standard error of either is 1 %.
        assertEquals(1, deviations[0] / deviations[1], 0.03);
        assertEquals(1, deviations[2] / deviations[3], 0.03);
    }
}
