package outwind.flatten;

import outwind.numeric.plane.Plane;
import outwind.surface.SampledBoard;

/**
 * The thickest flat, parallel board that lies inside a rough one, for cut planes of given slopes.
 *
 * <pre>
 *   faceA = highest plane of these slopes with the skim above it coming off everywhere
 *   faceB = lowest plane of these slopes with the skim below it coming off everywhere
 * </pre>
 *
 * @param faceA the highest plane that face A can be cut to
 * @param faceB the lowest plane that face B can be cut to
 */
public record Slab(Plane faceA, Plane faceB) {

    /**
     * @param kept   the part of the board that must clean up
     * @param slopes a plane whose slopes the cuts take; its height does not matter
     * @param skim   least depth to come off each face (mm)
     */
    public static Slab of(SampledBoard kept, Plane slopes, double skim) {
        // Written out: a thousand possible boards of every board are asked.
        double highest = Double.POSITIVE_INFINITY;
        double lowest = Double.NEGATIVE_INFINITY;
        double[] x = kept.x();
        double[] y = kept.y();
        for (int i = 0; i < x.length; i++) {
            double plane = slopes.at(x[i], y[i]);
            double top = kept.top()[i] - plane;
            double underside = kept.underside()[i] - plane;
            highest = top < highest ? top : highest;
            lowest = underside > lowest ? underside : lowest;
        }
        return new Slab(slopes.raisedBy(highest - skim), slopes.raisedBy(lowest + skim));
    }

    /** Thickness along z (mm); negative if the cuts would meet before both faces are clean. */
    public double thickness() {
        return faceA.height() - faceB.height();
    }
}
