package outwind.surface;

import java.util.SplittableRandom;

/** What is known of the face that lies on the bed. Heights in mm, in the frame of the readings on face A. */
interface UndersideShape {

    /**
     * Most likely height of the underside.
     *
     * @param top most likely height of face A at the same place; see {@link TopFace#shared}
     */
    double at(double x, double y, double top);

    /** Places at which heights of face A are needed for a draw, beside those that are asked for: x and y. */
    default double[][] anchors() {
        return new double[2][0];
    }

    /**
     * Undersides that the readings leave possible.
     *
     * @param x    places, the anchors last, length m
     * @param y    places, length m
     * @param tops drawn heights of face A there, count × m
     * @return count × m
     */
    double[][] draws(double[] x, double[] y, double[][] tops, SplittableRandom random);
}
