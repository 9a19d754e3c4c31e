package outwind.surface;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import outwind.board.Reading;

/**
 * Heights or thicknesses at places, each with its noise.
 *
 * @param x             mm along the grain, length n
 * @param y             mm across, length n
 * @param z             observed (mm), length n
 * @param noiseVariance of each (mm²), length n, above zero
 */
record Observations(double[] x, double[] y, double[] z, double[] noiseVariance) {

    /** Kriging takes time with the cube of the observations; more than this are first averaged in cells. */
    private static final int MOST = 150;

    /** Cells along and across for what is averaged: finer than any wave that touching off by hand would show. */
    private static final int CELLS_ALONG = 18;
    private static final int CELLS_ACROSS = 6;

    /** Observations that all have the same noise. */
    static Observations alike(double[] x, double[] y, double[] z, double noise) {
        double[] variance = new double[x.length];
        Arrays.fill(variance, noise * noise);
        return new Observations(x, y, z, variance);
    }

    /** Touch-offs with one standard deviation of noise (mm); very many are averaged in cells of the board. */
    static Observations of(List<Reading> readings, double noise, double length, double width) {
        if (readings.size() <= MOST) {
            return alike(readings.stream().mapToDouble(Reading::x).toArray(),
                readings.stream().mapToDouble(Reading::y).toArray(),
                readings.stream().mapToDouble(Reading::z).toArray(), noise);
        }
        Map<Integer, double[]> cells = new TreeMap<>();
        for (Reading reading : readings) {
            int along = Math.min(CELLS_ALONG - 1, (int) (reading.x() / length * CELLS_ALONG));
            int across = Math.min(CELLS_ACROSS - 1, (int) (reading.y() / width * CELLS_ACROSS));
            double[] sum = cells.computeIfAbsent(along * CELLS_ACROSS + across, cell -> new double[4]);
            sum[0] += reading.x();
            sum[1] += reading.y();
            sum[2] += reading.z();
            sum[3]++;
        }
        List<double[]> means = new ArrayList<>(cells.values());
        return new Observations(
            means.stream().mapToDouble(sum -> sum[0] / sum[3]).toArray(),
            means.stream().mapToDouble(sum -> sum[1] / sum[3]).toArray(),
            means.stream().mapToDouble(sum -> sum[2] / sum[3]).toArray(),
            means.stream().mapToDouble(sum -> noise * noise / sum[3]).toArray());
    }

    int size() {
        return x.length;
    }
}
