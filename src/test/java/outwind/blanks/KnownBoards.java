package outwind.blanks;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import outwind.surface.BoardShape;
import outwind.surface.Places;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;
import outwind.surface.field.Viewpoint;

/**
 * Possible boards that are known to the last figure: what comes of them can be worked out by hand. The likely board is
 * the first of them.
 */
interface KnownBoards extends BoardShape {

    double THICKNESS = 30;

    /** Height of face A on one of the possible boards (mm). */
    double top(int board, double x, double y);

    /** Height of its underside (mm). */
    double underside(int board, double x, double y);

    /** Board {@code k} is flat and finishes at 30 − k·step (mm) everywhere. */
    static KnownBoards thinnerBy(double step) {
        return alike((k, x, y) -> 0, step);
    }

    /**
     * A strip from y = 0 to {@code width} that twists as g says: both faces lie at (2y/width − 1)·g(x), and board k is
     * thinner by k·step.
     *
     * <p>Worked by hand: a length of full width finishes at 30 − (most of g − least of g) over it. With each height z
     * there is −z on the other edge, so that a plane (2y/width − 1)·c is best. What sticks out on either side is least
     * where c lies halfway between most and least.
     */
    static KnownBoards twisting(double width, DoubleUnaryOperator g, double step) {
        return alike((k, x, y) -> (2 * y / width - 1) * g.applyAsDouble(x), step);
    }

    /** Both faces alike; board k is thinner by k·step (mm). */
    static KnownBoards alike(Face face, double step) {
        return new KnownBoards() {
            @Override
            public double top(int board, double x, double y) {
                return THICKNESS - board * step + face.at(board, x, y);
            }

            @Override
            public double underside(int board, double x, double y) {
                return face.at(board, x, y);
            }
        };
    }

    /** Height over the mean of one face of one board (mm). */
    interface Face {
        double at(int board, double x, double y);
    }

    @Override
    default double topAt(double x, double y) {
        return top(0, x, y);
    }

    @Override
    default double undersideAt(double x, double y) {
        return underside(0, x, y);
    }

    @Override
    default double topDeviationAt(double x, double y) {
        return 0;
    }

    @Override
    default Viewpoint seen() {
        throw new UnsupportedOperationException("known boards are looked at from nowhere");
    }

    @Override
    default SampledBoard at(Places places) {
        return board(places, 0);
    }

    @Override
    default List<SampledBoard> draws(Places places, int count, long seed) {
        return IntStream.range(0, count).mapToObj(k -> board(places, k)).toList();
    }

    private SampledBoard board(Places places, int k) {
        return ShapeOf.sampled(places, (x, y) -> top(k, x, y), (x, y) -> underside(k, x, y));
    }
}
