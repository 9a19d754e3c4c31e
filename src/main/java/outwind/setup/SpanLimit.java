package outwind.setup;

import outwind.numeric.plate.Rigidity;

/**
 * How far apart supports may be before a push moves the board too far, by beam theory.
 *
 * <pre>
 *   span       w = P·L³ / (48·D·b)    pushed halfway between two supports
 *   overhang   w = P·L³ / (3·D·b)     pushed at the end
 * </pre>
 * D is the plate's rigidity along the strip, b the width of wood that bends with the pushed place. A push on a wide
 * plate takes along only so much: a plate held on two lines L apart gives 0.01695·P·L²/D, as a beam of width 1.23·L,
 * and one clamped along a line 0.168·P·L²/D at its free edge, as a beam of width 1.98·L. In an orthotropic plate
 * widths shrink or grow by (Dacross/Dalong)^¼, the ratio at which its equation looks isotropic. At an edge, where
 * boards give most, wood lies on one side only and twists away easily; 0.3 of that width counts, and never more than
 * there is.
 *
 * <p>A start and a rule of thumb: the supports themselves are judged as a plate.
 *
 * <p>Source: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, table 23 (infinite
 * strip), and its section on cantilever plates of infinite length; both figures from memory. The 0.3 is measured on
 * this program's own plates.
 *
 * @param along    greatest distance between supports along an edge (mm)
 * @param across   widest board whose end supports at the edges alone carry (mm)
 * @param overhang greatest reach of an end beyond the last support (mm)
 */
public record SpanLimit(double along, double across, double overhang) {

    /** Width over span of the beam that gives as much as an infinitely wide strip: 1/(48·0.01695). */
    private static final double STRIP = 1.23;

    /** The same for a cantilever: 1/(3·0.168). */
    private static final double CANTILEVER = 1.98;

    /** Of those widths, what bends with a push at an edge; see {@code SpanLimitTest} for how near it comes. */
    private static final double AT_EDGE = 0.3;

    /**
     * @param length   of the board (mm)
     * @param width    of the board (mm)
     * @param rigidity x along the grain
     */
    static SpanLimit of(double length, double width, Rigidity rigidity, Push push) {
        double spread = Math.pow(rigidity.dy() / rigidity.dx(), 0.25);
        double yield = push.give() / push.force();
        return new SpanLimit(
            reach(48 * rigidity.dx() * yield, AT_EDGE * STRIP * spread, width),
            reach(48 * rigidity.dy() * yield, AT_EDGE * STRIP / spread, length),
            reach(3 * rigidity.dx() * yield, AT_EDGE * CANTILEVER * spread, width));
    }

    /** The longest L with L³ ≤ scale·b for b the lesser of ratio·L and the wood there is. */
    private static double reach(double scale, double ratio, double wood) {
        return Math.min(Math.sqrt(scale * ratio), Math.cbrt(scale * wood));
    }
}
