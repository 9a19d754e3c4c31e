package outwind.setup;

import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/**
 * The few places to support a board at, so that a push anywhere on it moves it less than it may.
 *
 * <p>Supports push up and never pull. Each just touches the board's underside before it takes any weight; the board's
 * own weight, at its thinnest throughout, holds it down. Where the board is sure to touch, the bed itself supports it;
 * that costs nothing. Shims lie under the two long edges, and in the board's middle only if edges alone cannot hold it
 * and a hand reaches there.
 *
 * <p>A board and its mirror image get mirrored supports: of the four ways to look at a board, the search always takes
 * the one in which the underside rises along and across.
 *
 * @param places       contacts that are counted on, and shims: out along the edge y = 0, back along the far edge, then those inside
 * @param limit        beam-theory limits for this board; the start, and a rule of thumb for people
 * @param movement     greatest movement of a pushed place (mm); infinite if a push tips the board
 * @param weakestX     where that is (mm)
 * @param weakestY     where that is (mm)
 * @param inside       true if shims lie away from the edges, because edges alone cannot hold the board
 * @param holds        false if no arrangement within {@link #MOST_SHIMS} was found that holds; the places are then the
 *                     best found
 */
public record Supports(List<Shim> places, SpanLimit limit, double movement, double weakestX, double weakestY,
        boolean inside, boolean holds) {

    /** Nobody sets more shims than this under one board: our choice. */
    public static final int MOST_SHIMS = 40;

    public Supports {
        places = List.copyOf(places);
    }

    /** A gap under this needs no shim where the underside is known (mm): half of the finest step of shims. */
    private static final double NO_SHIM = 0.05;

    /** Lines of the lattice on which the slopes of the underside are taken. */
    private static final int LATTICE = 8;

    /** The supports under an underside that is known everywhere; see the other. */
    static Supports of(double length, double width, double thickness, Stiffness wood, DoubleBinaryOperator gap,
            Push push) {
        return of(length, width, thickness, wood, gap, (x, y) -> gap.applyAsDouble(x, y) < NO_SHIM, push);
    }

    /**
     * Chooses the supports; the same input gives the same answer.
     *
     * @param length    along the grain (mm), positive
     * @param width     across (mm), positive
     * @param thickness at the thinnest place (mm), positive
     * @param gap       height of the underside above the bed at (x, y), all in mm
     * @param touching  where the bed itself is counted on
     */
    static Supports of(double length, double width, double thickness, Stiffness wood, DoubleBinaryOperator gap,
            Touching touching, Push push) {
        if (!(length > 0 && width > 0 && thickness > 0) || !Double.isFinite(length + width + thickness)) {
            throw new IllegalArgumentException("board needs positive sizes, got " + length + " x " + width + " x "
                + thickness);
        }
        double alongX = 0;
        double alongY = 0;
        for (int i = 0; i <= LATTICE; i++) {
            for (int j = 0; j <= LATTICE; j++) {
                double height = gap.applyAsDouble(length * i / LATTICE, width * j / LATTICE);
                alongX += height * (i - LATTICE / 2);
                alongY += height * (j - LATTICE / 2);
            }
        }
        boolean falls = alongX < 0;
        boolean fallsAcross = alongY < 0;
        DoubleUnaryOperator toX = x -> falls ? length - x : x;
        DoubleUnaryOperator toY = y -> fallsAcross ? width - y : y;
        BoardMesh mesh = BoardMesh.of(length, width, thickness, wood,
            (x, y) -> gap.applyAsDouble(toX.applyAsDouble(x), toY.applyAsDouble(y)),
            (x, y) -> touching.at(toX.applyAsDouble(x), toY.applyAsDouble(y)), push);
        return SupportSearch.over(mesh).best().seenFrom(toX, toY, width);
    }

    /** The same with coordinates of another corner, in the order of a walk round the board. */
    private Supports seenFrom(DoubleUnaryOperator toX, DoubleUnaryOperator toY, double width) {
        List<Shim> seen = places.stream().map(place -> new Shim(toX.applyAsDouble(place.x()),
            toY.applyAsDouble(place.y()), place.height(), place.touches())).sorted(walkRound(width)).toList();
        return new Supports(seen, limit, movement, toX.applyAsDouble(weakestX), toY.applyAsDouble(weakestY), inside,
            holds);
    }

    private static Comparator<Shim> walkRound(double width) {
        Comparator<Shim> bySide = Comparator.comparingInt(place -> place.y() == 0 ? 0 : place.y() == width ? 1 : 2);
        return bySide.thenComparingDouble(place -> place.y() == width ? -place.x() : place.x())
            .thenComparingDouble(Shim::y);
    }

    /** Those of the places that need a shim. */
    public List<Shim> shims() {
        return places.stream().filter(Shim::isNeeded).toList();
    }
}
