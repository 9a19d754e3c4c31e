package outwind.surface;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import outwind.numeric.plane.Plane;

/**
 * Both faces at one set of places.
 *
 * @param places    where
 * @param top       height of face A (mm), length n
 * @param underside height of the underside (mm), length n
 */
public record SampledBoard(Places places, double[] top, double[] underside) {

    /** The board turned over along its length: what was the underside is on top, and y runs from the other edge. */
    public SampledBoard turnedOver(double width) {
        double[] y = Arrays.stream(places.y()).map(across -> width - across).toArray();
        return new SampledBoard(new Places(places.x(), y, places.weight(), places.cellX(), places.cellY()),
            Arrays.stream(underside).map(z -> -z).toArray(), Arrays.stream(top).map(z -> -z).toArray());
    }

    /** Number of places. */
    public int size() {
        return places.size();
    }

    public double[] x() {
        return places.x();
    }

    public double[] y() {
        return places.y();
    }

    /** Integral over the region of a quantity known at each place (its unit times mm²). */
    public double integral(IntToDoubleFunction quantity) {
        double sum = 0;
        for (int i = 0; i < size(); i++) {
            sum += places.weight()[i] * quantity.applyAsDouble(i);
        }
        return sum;
    }

    /** Mean over the region of a quantity known at each place. */
    public double mean(IntToDoubleFunction quantity) {
        return integral(quantity) / integral(i -> 1);
    }

    /** Greatest value over the places of a quantity known at each. */
    public double greatest(IntToDoubleFunction quantity) {
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size(); i++) {
            double value = quantity.applyAsDouble(i);
            greatest = value > greatest ? value : greatest;
        }
        return greatest;
    }

    /** Thickness at the thinnest place (mm); not above zero where the readings contradict each other. */
    public double thinnest() {
        return -greatest(i -> underside[i] - top[i]);
    }

    /** Number of the place where face A stands highest over a plane. */
    public int highestOver(Plane plane) {
        int highest = 0;
        for (int i = 1; i < size(); i++) {
            if (topAbove(plane, i) > topAbove(plane, highest)) {
                highest = i;
            }
        }
        return highest;
    }

    /** Height of face A above a plane at place {@code i} (mm). */
    public double topAbove(Plane plane, int i) {
        return top[i] - plane.at(x()[i], y()[i]);
    }

    /** Height of the underside above a plane at place {@code i} (mm). */
    public double undersideAbove(Plane plane, int i) {
        return underside[i] - plane.at(x()[i], y()[i]);
    }

    /** True for the same figures. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SampledBoard that && places.equals(that.places) && Arrays.equals(top, that.top)
            && Arrays.equals(underside, that.underside);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(top) + 31 * Arrays.hashCode(underside);
    }
}
