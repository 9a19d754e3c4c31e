package outwind.surface.field;

import java.util.Arrays;
import java.util.List;

/**
 * What a height field may hold beside its free trend: terms that are small on most boards and large on a few.
 *
 * <pre>
 *   coefficients of a group: normal(0, size · deviation), one size for the group, unknown
 *   a hinge at one of nine places along:  h·lift + h·v·turn,   lift ~ normal(0, s),   turn ~ normal(0, 0.7·s)
 *   h(x) = √(d² + r²) / 2 over the shorter part of the board,   d = x − place in mm,   r = 50 mm at most
 * </pre>
 * u and v run from −1 to 1 along and across. A hinge is a kink, as at a knot, a little rounded; lift is how far the
 * shorter part stands off the line of the longer one at its end. h bends both parts by half of that, so that it is its
 * own mirror image; the tilt between is in the free trend. That most boards have none is part of the belief.
 *
 * @param groups     of terms that share a size
 * @param hingeShare how likely a hinge is, all places together; 0 for none
 */
public record Bends(List<Group> groups, double hingeShare) {

    /**
     * Faces of boards. A lengthwise S, which three columns of readings cannot see, has a size of its own. Our choice,
     * held to the made boards of the benchmark that are unlike it.
     */
    static final Bends OF_A_FACE = new Bends(List.of(
        new Group(List.of(new Bend((u, v) -> cubic(u), 1)), new double[] {0.05, 0.3, 1.2}, new double[] {0.46, 0.32, 0.22}),
        new Group(List.of(new Bend((u, v) -> square(u) * v, 1), new Bend((u, v) -> u * square(v), 1),
            new Bend((u, v) -> cubic(u) * v, 1)), new double[] {0.05, 0.3, 1.2}, new double[] {0.4, 0.35, 0.25})), 0.3);

    /**
     * Thickness of a sawn board: a wedge, and what is left where both faces were not sawn in one pass, so that one is
     * bent otherwise than the other. The wedge has standard deviations at the ends and at the edges (mm), times a size
     * whose logarithm is normal with standard deviation 0.7, by Gauss and Hermite's rule in three nodes. The sizes are ours.
     * They are held to what is published of sawn boards: within one board the thickness strays by a standard deviation of
     * 0.40 mm (T. D. Brown, Lumber Size Control, Part 2, Oregon State University Extension EM 8731, 2000, table 3: eight
     * boards, four caliper readings each).
     */
    static final Bends OF_A_THICKNESS = new Bends(List.of(new Group(
        List.of(new Bend((u, v) -> u, 0.345), new Bend((u, v) -> v, 0.165)),
        new double[] {Math.exp(-0.7 * Math.sqrt(3)), 1, Math.exp(0.7 * Math.sqrt(3))},
        new double[] {1.0 / 6, 2.0 / 3, 1.0 / 6}),
        new Group(List.of(new Bend((u, v) -> square(u), 1), new Bend((u, v) -> u * v, 1),
            new Bend((u, v) -> square(v), 0.5)), new double[] {0.02, 0.08, 0.35}, new double[] {0.8, 0.14, 0.06})), 0);

    /** Standard deviations of the lift of a hinge, each as likely as the next (mm). */
    public static final double[] LIFTS = {0.5, 2, 6};

    /** How much of its lift a hinge may turn by from edge to edge. */
    public static final double TURN = 0.7;

    /** Places along where a hinge may be, as shares of the length. */
    public static final double[] HINGES = {0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9};

    /** Over which a hinge is rounded (mm); on a short board over a tenth of its length. */
    private static final double ROUNDED = 50;

    /** These where all are so many times as large. */
    Bends times(double factor) {
        return new Bends(groups.stream().map(group -> new Group(group.bends(), Arrays.stream(group.sizes())
            .map(size -> factor * size).toArray(), group.shares())).toList(), hingeShare);
    }

    /** A shape over the board, u and v from −1 to 1. */
    @FunctionalInterface
    public interface Form {

        double at(double u, double v);
    }

    /**
     * A term whose coefficient is normal about zero.
     *
     * @param deviation of it (mm) where the size of its group is 1
     */
    public record Bend(Form form, double deviation) { }

    /**
     * Terms that are large or small together.
     *
     * @param sizes  that the group may have
     * @param shares how likely each is; they sum to 1
     */
    public record Group(List<Bend> bends, double[] sizes, double[] shares) { }

    /** Legendre's polynomial of degree two. */
    private static double square(double t) {
        return (3 * t * t - 1) / 2;
    }

    /** Legendre's polynomial of degree three. */
    private static double cubic(double t) {
        return (5 * t * t - 3) * t / 2;
    }

    /** Height of a hinge of lift 1 at x (mm), on the middle line. */
    public static double hinge(double place, double x, double length) {
        double off = x - place * length;
        double shorter = Math.min(place, 1 - place) * length;
        return Math.hypot(off, Math.min(ROUNDED, length / 10)) / 2 / shorter;
    }
}
