package outwind.scan.find;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import outwind.board.PointCloud;
import outwind.numeric.Median;

/**
 * The points of a scan within reach of its middle. Where nothing came back, some scanners write a number that is far
 * beyond anything; nothing could be computed with it.
 *
 * @param points those within reach, in the order of the file; the scan's own where all of them are
 * @param astray how many were not
 */
record OutlierCrop(PointCloud points, int astray) {

    /** From the middle (mm), along each axis: what is further away is no part of a board, nor of its bed. */
    private static final double FURTHEST = 1e6;

    /** @param millimetres what one of the scan's units is */
    static OutlierCrop of(PointCloud all, double millimetres) {
        PointCloud sample = Sample.of(all, Placement.scaledBy(1));
        double[] middle = {Median.of(sample.x()), Median.of(sample.y()), Median.of(sample.z())};
        double furthest = FURTHEST / millimetres;
        IntPredicate isWithin = i -> Math.abs(all.x()[i] - middle[0]) <= furthest
            && Math.abs(all.y()[i] - middle[1]) <= furthest && Math.abs(all.z()[i] - middle[2]) <= furthest;
        if (IntStream.range(0, all.size()).parallel().allMatch(isWithin)) {
            return new OutlierCrop(all, 0);
        }
        int[] within = IntStream.range(0, all.size()).filter(isWithin).toArray();
        return new OutlierCrop(new PointCloud(of(all.x(), within), of(all.y(), within), of(all.z(), within)),
            all.size() - within.length);
    }

    private static double[] of(double[] values, int[] places) {
        return Arrays.stream(places).mapToDouble(i -> values[i]).toArray();
    }
}
