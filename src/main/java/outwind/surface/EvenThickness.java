package outwind.surface;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The thickness of a board that was planed: the same everywhere.
 *
 * @param thickness mm
 */
record EvenThickness(double thickness) implements Thickness {

    @Override
    public double at(double x, double y) {
        return thickness;
    }

    @Override
    public double[][] draws(double[] x, double[] y, int count, SplittableRandom random) {
        double[][] draws = new double[count][x.length];
        for (double[] draw : draws) {
            Arrays.fill(draw, thickness);
        }
        return draws;
    }
}
