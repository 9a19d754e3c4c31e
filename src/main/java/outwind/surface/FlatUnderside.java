package outwind.surface;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * An underside that lies flat on the bed.
 *
 * @param height    of the bed in the frame of the readings (mm)
 * @param deviation how sure that height is (mm): the error of the thickness it was reckoned from
 */
record FlatUnderside(double height, double deviation) implements UndersideShape {

    @Override
    public double at(double x, double y, double top) {
        return height;
    }

    @Override
    public double[][] draws(double[] x, double[] y, double[][] tops, SplittableRandom random) {
        double[][] draws = new double[tops.length][x.length];
        for (double[] draw : draws) {
            Arrays.fill(draw, height + (deviation > 0 ? random.nextGaussian(0, deviation) : 0));
        }
        return draws;
    }
}
