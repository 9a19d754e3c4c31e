package outwind.setup;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import outwind.numeric.plate.Compliance;
import outwind.numeric.plate.OrthotropicPlate;
import outwind.numeric.plate.Rigidity;

/**
 * A board cut into the rectangles that its bending is computed on, and the gap under each node.
 *
 * <p>One line of nodes near either end is where the outermost shims go; the others are evenly spaced between them.
 *
 * @param x      lines along the grain (mm), rising from 0 to the length
 * @param y      lines across (mm), rising from 0 to the width
 * @param first  index in {@code x} of the outermost line for shims at the near end; at the far end as many from last
 * @param gap    under node i·across + j (mm), never negative
 * @param touches true at the nodes where the bed itself is counted on
 * @param weight borne by each node (N)
 */
record BoardMesh(double[] x, double[] y, int first, double[] gap, boolean[] touches, double[] weight,
        Rigidity rigidity, Push push, SpanLimit limit) {

    /** No shim is thinner (mm): what is printed as a tenth of a millimetre; a place that touches needs none. */
    private static final double FINEST = 0.1;

    /** Shims lie no further in from the ends (mm): clear of the corner, under the end. Common practice. */
    private static final double MOST_INSET = 40;

    /** An inset smaller than this is a shim under the corner itself (mm). */
    private static final double LEAST_INSET = 5;

    /** Elements to one span: a push between nodes then moves a board up to some 7 % further than one at a node. */
    private static final double ELEMENTS_PER_SPAN = 4;
    private static final int FEWEST_ALONG = 16;
    private static final int MOST_ALONG = 40;

    /** Even, so that there is a middle line; divisible by three, so that there are lines at the thirds. */
    static final int ACROSS = 6;

    static BoardMesh of(double length, double width, double thickness, Stiffness wood, DoubleBinaryOperator gap,
            Touching touching, Push push) {
        Rigidity rigidity = wood.plate(thickness);
        SpanLimit limit = SpanLimit.of(length, width, rigidity, push);
        double pressure = wood.density() * 1e-9 * Finger.GRAVITY * thickness;
        double inset = inset(length, pressure * length * width, limit, push);
        double[] x = linesAlong(length, inset, limit);
        double[] y = even(0, width, ACROSS);
        double[] gaps = new double[x.length * y.length];
        boolean[] touches = new boolean[gaps.length];
        double[] weight = new double[gaps.length];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < y.length; j++) {
                int node = i * y.length + j;
                // A node may dip a hair under every place at which the bed was fitted.
                gaps[node] = Math.max(0, gap.applyAsDouble(x[i], y[j]));
                touches[node] = touching.at(x[i], y[j]);
                weight[node] = pressure * share(x, i) * share(y, j);
            }
        }
        return new BoardMesh(x, y, inset > 0 ? 1 : 0, gaps, touches, weight, rigidity, push, limit);
    }

    /**
     * How far in from the ends the outermost shims lie. A push P on an end beyond both shims there tips a stiff board
     * of weight W once P·inset reaches W·(length/2 − inset); at half of that inset all four corner shims still bear.
     */
    private static double inset(double length, double weight, SpanLimit limit, Push push) {
        double tips = weight * length / 2 / (weight + push.force());
        double inset = Math.min(Math.min(MOST_INSET, limit.overhang()), Math.min(tips / 2, length / 10));
        return inset < LEAST_INSET ? 0 : inset;
    }

    private static double[] linesAlong(double length, double inset, SpanLimit limit) {
        int elements = (int) Math.ceil((length - 2 * inset) / limit.along() * ELEMENTS_PER_SPAN);
        double[] between = even(inset, length - inset, Math.max(FEWEST_ALONG, Math.min(MOST_ALONG, elements)));
        if (inset == 0) {
            return between;
        }
        double[] x = new double[between.length + 2];
        System.arraycopy(between, 0, x, 1, between.length);
        x[x.length - 1] = length;
        return x;
    }

    private static double[] even(double from, double to, int elements) {
        double[] lines = new double[elements + 1];
        Arrays.setAll(lines, i -> i == elements ? to : from + (to - from) * i / elements);
        return lines;
    }

    /** Half the way to the neighbouring lines. */
    private static double share(double[] lines, int i) {
        double before = i == 0 ? 0 : lines[i] - lines[i - 1];
        double after = i == lines.length - 1 ? 0 : lines[i + 1] - lines[i];
        return (before + after) / 2;
    }

    int node(int i, int j) {
        return i * y.length + j;
    }

    /** The node nearest to a place (mm). */
    int nearest(double atX, double atY) {
        return node(nearest(x, atX), nearest(y, atY));
    }

    private static int nearest(double[] lines, double at) {
        return IntStream.range(0, lines.length).boxed()
            .min(Comparator.comparingDouble(i -> Math.abs(lines[i] - at))).orElseThrow();
    }

    int lineAlong(int node) {
        return node / y.length;
    }

    int lineAcross(int node) {
        return node % y.length;
    }

    /** Node {@code node} as a support. */
    Shim support(int node) {
        return new Shim(x[lineAlong(node)], y[lineAcross(node)], touches[node] ? 0 : Math.max(FINEST, gap[node]),
            touches[node]);
    }

    /** Nodes where the bed itself supports the board. */
    List<Integer> contacts() {
        List<Integer> contacts = new ArrayList<>();
        for (int node = 0; node < gap.length; node++) {
            if (touches[node]) {
                contacts.add(node);
            }
        }
        return contacts;
    }

    /**
     * The contacts less those inside a patch that others all round make up for: half of the lines along and across
     * are kept there. The rest, half a span apart at most, carry the board as well; the cost grows steeply with their
     * number.
     */
    List<Integer> countedContacts() {
        Set<Integer> all = new HashSet<>(contacts());
        return contacts().stream().filter(node -> {
            int i = lineAlong(node);
            int j = lineAcross(node);
            boolean between = i % 2 == 1 && all.contains(node - y.length) && all.contains(node + y.length)
                || j % 2 == 1 && all.contains(node - 1) && all.contains(node + 1);
            return !between;
        }).toList();
    }

    HeldBoard held() {
        Compliance compliance = OrthotropicPlate.compliance(x, y, rigidity);
        return new HeldBoard(compliance, weight, push);
    }
}
