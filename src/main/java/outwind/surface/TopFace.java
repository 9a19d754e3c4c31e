package outwind.surface;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import outwind.surface.field.KrigedField;

/** Face A everywhere on the board, as touch-offs or a scan tell it (mm). */
interface TopFace {

    /** Its most likely height at a place. */
    double mean(double x, double y);

    /**
     * The same without what is narrower than the board is thick: the shape that both faces of a warped board share.
     *
     * @param mean what {@link #mean} is there
     */
    double shared(double x, double y, double mean);

    /** Standard deviation of its height at a place. */
    double deviation(double x, double y);

    /** The same at many places, which costs less than one by one. */
    default double[] deviations(double[] x, double[] y) {
        return IntStream.range(0, x.length).mapToDouble(i -> deviation(x[i], y[i])).toArray();
    }

    /**
     * What each reading should have been by all the others; empty where no single reading can mislead, because there
     * are so many.
     */
    List<KrigedField.Predicted> leavingOut();

    /** The same where one reading is left out already; what stands at its own place means nothing. */
    List<KrigedField.Predicted> leavingOutBeside(int reading);

    /**
     * Faces that the readings leave possible, each as likely as the next.
     *
     * @param places  where they are wanted
     * @param anchors further places, x and y, that follow them
     * @param count   how many
     */
    Drawn draws(Places places, double[][] anchors, int count, SplittableRandom random);

    /**
     * Drawn faces, each of two arrays count × (places and anchors).
     *
     * @param lows  the lowest that the face is around each place, as far as half way to the next: what a cut has
     *              to get under
     * @param highs the highest that a face of the shape that both faces share is there, saw marks of its own on it; the
     *              same as {@code lows} where the face is smooth between places
     */
    public record Drawn(double[][] lows, double[][] highs) { }
}
