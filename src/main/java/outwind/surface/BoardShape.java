package outwind.surface;

import java.util.List;

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

    /**
     * Boards that the readings leave possible, each as likely as the next.
     *
     * @param count how many
     * @param seed  the same seed gives the same boards
     */
    List<SampledBoard> draws(Places places, int count, long seed);
}
