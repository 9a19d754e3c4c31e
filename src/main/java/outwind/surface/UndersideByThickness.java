package outwind.surface;

import java.util.SplittableRandom;

/**
 * An underside that lies one thickness below face A.
 *
 * @param thickness of the board
 */
record UndersideByThickness(Thickness thickness) implements UndersideShape {

    @Override
    public double at(double x, double y, double top) {
        return top - thickness.at(x, y);
    }

    @Override
    public double[][] draws(double[] x, double[] y, double[][] tops, SplittableRandom random) {
        double[][] draws = thickness.draws(x, y, tops.length, random);
        for (int d = 0; d < draws.length; d++) {
            double[] top = tops[d];
            double[] below = draws[d];
            for (int i = 0; i < below.length; i++) {
                below[i] = top[i] - below[i];
            }
        }
        return draws;
    }
}
