package outwind.setup;

import java.util.Arrays;
import outwind.numeric.plane.Plane;
import outwind.numeric.plane.WidestGap;
import outwind.surface.SampledBoard;

/**
 * A finger that presses on one corner of a board after another, as one tests whether it rocks.
 *
 * <pre>
 *   centre of the load = (weight·centre of gravity + force·place of the finger) / (weight + force)
 *   bed under the board = the highest plane under the underside there
 *   drop = greatest change of any corner's height over the bed, from one place of the finger to another or to none
 * </pre>
 * Corners are where a finger has the longest lever. The board is taken as rigid. Whatever it rests on, the bed's plane
 * depends on the centre of the load alone.
 */
final class Finger {

    /** Standard gravity (N per kg). */
    static final double GRAVITY = 9.80665;

    /** What a finger presses with (N); our choice. */
    private static final double FORCE = 5;

    /** The middle of a finger comes no nearer to an edge than this (mm): half the width of its pad; our choice. */
    private static final double PAD = 5;

    private final SampledBoard board;
    private final double centreX;
    private final double centreY;
    private final double weight;

    /**
     * @param board   the whole board
     * @param centreX of gravity (mm)
     * @param centreY of gravity (mm)
     * @param weight  of the board (N)
     */
    Finger(SampledBoard board, double centreX, double centreY, double weight) {
        this.board = board;
        this.centreX = centreX;
        this.centreY = centreY;
        this.weight = weight;
    }

    /** How far the finger moves a corner up or down, by pressing on one corner after another (mm). */
    double drop() {
        double[] x = {least(board.x()), greatest(board.x())};
        double[] y = {least(board.y()), greatest(board.y())};
        double[] low = new double[4];
        double[] high = new double[4];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        span(centreX, centreY, x, y, low, high);
        for (double fingerX : nearEnds(x)) {
            for (double fingerY : nearEnds(y)) {
                span((weight * centreX + FORCE * fingerX) / (weight + FORCE),
                    (weight * centreY + FORCE * fingerY) / (weight + FORCE), x, y, low, high);
            }
        }
        double drop = 0;
        for (int k = 0; k < low.length; k++) {
            drop = Math.max(drop, high[k] - low[k]);
        }
        return drop;
    }

    /** Lets the board down with its load centred there, and widens the span of heights of the bed under each corner. */
    private void span(double loadX, double loadY, double[] x, double[] y, double[] low, double[] high) {
        Plane bed = WidestGap.highestPlaneUnder(board.x(), board.y(), board.underside(), loadX, loadY).plane();
        double[] heights = {bed.at(x[0], y[0]), bed.at(x[1], y[0]), bed.at(x[1], y[1]), bed.at(x[0], y[1])};
        for (int k = 0; k < heights.length; k++) {
            low[k] = Math.min(low[k], heights[k]);
            high[k] = Math.max(high[k], heights[k]);
        }
    }

    /** Where the finger presses along one side of the board. */
    private static double[] nearEnds(double[] ends) {
        double pad = Math.min(PAD, (ends[1] - ends[0]) / 10);
        return new double[] {ends[0] + pad, ends[1] - pad};
    }

    private static double least(double[] values) {
        return Arrays.stream(values).min().orElseThrow();
    }

    private static double greatest(double[] values) {
        return Arrays.stream(values).max().orElseThrow();
    }
}
