package outwind.setup;

import java.util.List;
import java.util.function.DoubleBinaryOperator;

/**
 * The few places to support a board at, so that a push anywhere on it moves it less than it may.
 *
 * <p>Supports push up and never pull. Each just touches the board's underside before it takes any weight; the board's
 * own weight, at its thinnest throughout, holds it down. Where the underside hangs less than a shim's least thickness
 * over the bed the bed itself supports it; that costs nothing and always counts. Shims lie under the two long edges,
 * where a hand can slide them in, and in the board's middle only if edges alone cannot hold it.
 *
 * @param places       contacts and shims: out along the edge y = 0, back along the far edge, then those inside
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

    /**
     * Chooses the supports; the same input gives the same answer.
     *
     * @param length    along the grain (mm), positive
     * @param width     across (mm), positive
     * @param thickness at the thinnest place (mm), positive
     * @param gap       height of the underside above the bed at (x, y), all in mm
     */
    public static Supports of(double length, double width, double thickness, Stiffness wood,
            DoubleBinaryOperator gap, Push push) {
        if (!(length > 0 && width > 0 && thickness > 0) || !Double.isFinite(length + width + thickness)) {
            throw new IllegalArgumentException("board needs positive sizes, got " + length + " x " + width + " x "
                + thickness);
        }
        return SupportSearch.over(BoardMesh.of(length, width, thickness, wood, gap, push)).best();
    }

    /** Those of the places that need a shim. */
    public List<Shim> shims() {
        return places.stream().filter(Shim::isNeeded).toList();
    }
}
