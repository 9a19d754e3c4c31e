package outwind.surface;

import java.util.List;
import java.util.stream.IntStream;
import outwind.surface.field.Viewpoint;

/** Height of both faces at any place on the board, in the frame of the readings (mm), and how sure it is. */
public interface BoardShape {

    /** Height of face A, the one that was touched, at ({@code x}, {@code y}); its most likely value. */
    double topAt(double x, double y);

    /** Height of the underside at ({@code x}, {@code y}); its most likely value. */
    double undersideAt(double x, double y);

    /** Both faces at many places as they most likely are. */
    SampledBoard at(Places places);

    /** Standard deviation of the height of face A at ({@code x}, {@code y}). */
    double topDeviationAt(double x, double y);

    /** The same at many places, which costs less than one by one. */
    default double[] topDeviationsAt(double[] x, double[] y) {
        return IntStream.range(0, x.length).mapToDouble(i -> topDeviationAt(x[i], y[i])).toArray();
    }

    /** The board's size, and the corner that it is looked at from wherever random numbers meet it. */
    Viewpoint seen();

    /**
     * How many times closer than on a smooth face the lines of a grid have to lie on which it is looked at; 1 or more.
     */
    default int fineness() {
        return 1;
    }

    /**
     * Boards that the readings leave possible, each as likely as the next. Where the face is rough
     * between places, its lowest and its highest around each place are given: what cuts have to get under and
     * over.
     *
     * @param count how many
     * @param seed  the same seed gives the same boards
     */
    List<SampledBoard> draws(Places places, int count, long seed);
}
