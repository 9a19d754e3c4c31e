package outwind.surface;

import java.util.List;
import java.util.SplittableRandom;
import outwind.surface.field.KrigedField;

/**
 * Face A as readings of it tell; a few readings show nothing narrower than the board is thick.
 *
 * @param field its height (mm)
 */
record TouchedTop(KrigedField field) implements TopFace {

    @Override
    public double mean(double x, double y) {
        return field.mean(x, y);
    }

    @Override
    public double shared(double x, double y, double mean) {
        return mean;
    }

    @Override
    public double deviation(double x, double y) {
        return field.deviation(x, y);
    }

    @Override
    public double[] deviations(double[] x, double[] y) {
        return field.deviations(x, y);
    }

    @Override
    public List<KrigedField.Predicted> leavingOut() {
        return field.leavingOut();
    }

    @Override
    public List<KrigedField.Predicted> leavingOutBeside(int reading) {
        return field.leavingOutBeside(reading);
    }

    @Override
    public Drawn draws(Places places, double[][] anchors, int count, SplittableRandom random) {
        double[][] all = places.and(anchors);
        double[][] draws = field.draws(all[0], all[1], count, random);
        return new Drawn(draws, draws);
    }
}
