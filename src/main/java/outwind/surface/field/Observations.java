package outwind.surface.field;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Heights or thicknesses at places, each with its noise.
 *
 * @param x             mm along the grain, length n
 * @param y             mm across, length n
 * @param z             observed (mm), length n
 * @param noiseVariance of each (mm²), length n, above zero
 */
public record Observations(double[] x, double[] y, double[] z, double[] noiseVariance) {

    /** Kriging takes time with the cube of the observations; more than this are first averaged in cells. */
    private static final int MOST = 150;

    /** Cells along and across for what is averaged: finer than any wave that touching off by hand would show. */
    private static final int CELLS_ALONG = 18;
    private static final int CELLS_ACROSS = 6;

    /** Observations that all have the same noise. */
    public static Observations alike(double[] x, double[] y, double[] z, double noise) {
        double[] variance = new double[x.length];
        Arrays.fill(variance, noise * noise);
        return new Observations(x, y, z, variance);
    }

    /**
     * Observations with one standard deviation of noise, those at very many places averaged in cells of the board. What
     * the observations of a cell scatter by counts as noise too: their mean is not the height of its dips and bumps.
     *
     * @param x     places (mm), length n; likewise {@code y} and the heights {@code z}
     * @param noise of one observation (mm)
     */
    public static Observations of(double[] x, double[] y, double[] z, double noise, double length, double width) {
        if (x.length <= MOST) {
            return alike(x, y, z, noise);
        }
        Map<Integer, double[]> cells = new TreeMap<>();
        for (int i = 0; i < x.length; i++) {
            int along = Math.min(CELLS_ALONG - 1, (int) (x[i] / length * CELLS_ALONG));
            int across = Math.min(CELLS_ACROSS - 1, (int) (y[i] / width * CELLS_ACROSS));
            double[] sum = cells.computeIfAbsent(along * CELLS_ACROSS + across, cell -> new double[5]);
            sum[0] += x[i];
            sum[1] += y[i];
            sum[2] += z[i];
            sum[3] += z[i] * z[i];
            sum[4]++;
        }
        List<double[]> sums = new ArrayList<>(cells.values());
        return new Observations(
            sums.stream().mapToDouble(sum -> sum[0] / sum[4]).toArray(),
            sums.stream().mapToDouble(sum -> sum[1] / sum[4]).toArray(),
            sums.stream().mapToDouble(sum -> sum[2] / sum[4]).toArray(),
            sums.stream().mapToDouble(sum -> noise * noise / sum[4]
                + Math.max(0, sum[3] / sum[4] - Math.pow(sum[2] / sum[4], 2)) / sum[4]).toArray());
    }

    /** True if so many places are averaged. */
    public static boolean isAveraged(int places) {
        return places > MOST;
    }

    int size() {
        return x.length;
    }
}
