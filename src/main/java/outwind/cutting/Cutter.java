package outwind.cutting;

import java.util.ArrayList;
import java.util.List;

/**
 * How the machine cuts: how deep at a time, how wide, how fast, and how far it runs out past the board.
 *
 * @param stepDown  most that a roughing pass takes (mm)
 * @param finishing what the last pass takes (mm)
 * @param diameter  of the cutter (mm)
 * @param stepOver  from one row to the next (mm), at most the diameter
 * @param feed      mm per minute
 * @param overrun   how far the cutter's centre goes past every edge (mm), at least its radius
 */
public record Cutter(double stepDown, double finishing, double diameter, double stepOver, double feed,
                     double overrun) {

    /** Past every edge by this, with the whole cutter (mm): a quarter inch; common practice. */
    public static final double CLEAR_OF_THE_EDGE = 6.35;

    /** A wide light facing cutter, two fifths of it at a time; common practice. */
    public static final Cutter LIGHT = new Cutter(0.5, 0.2, 40, 16, 2500, 20 + CLEAR_OF_THE_EDGE);

    /** No machine is set finer than this (mm). */
    private static final double FINEST = 0.01;

    /** Depth that differs by less than this is the same depth: a hundredth of the finest dial (mm). */
    private static final double SAME = 1e-4;

    public Cutter {
        require(stepDown >= FINEST, "step-down", stepDown, "at least " + FINEST);
        require(finishing >= 0 && finishing <= stepDown, "finishing pass", finishing, "at most the step-down of "
            + stepDown);
        require(diameter > 0, "cutter's diameter", diameter, "above zero");
        require(stepOver >= FINEST && stepOver <= diameter, "step-over", stepOver, "at least " + FINEST
            + " and at most the diameter of " + diameter);
        require(feed > 0, "feed", feed, "above zero");
        require(overrun >= diameter / 2, "overrun", overrun, "at least the cutter's radius of " + diameter / 2);
    }

    private static void require(boolean holds, String what, double value, String wanted) {
        if (!holds) {
            throw new IllegalArgumentException("the " + what + " must be " + wanted + " mm, got " + value);
        }
    }

    /** Roughing passes to reach a depth (mm), the finishing pass not counted. */
    public int roughingPasses(double depth) {
        return Math.max(0, (int) Math.ceil((depth - finishing - SAME) / stepDown));
    }

    /**
     * Depths of the passes, each below the highest spot (mm), the last one the full depth. Roughing passes take the
     * step-down, the last of them what is left above the finishing pass.
     *
     * @param depth full depth of cut from the highest spot (mm)
     */
    public List<Double> passes(double depth) {
        List<Double> depths = new ArrayList<>();
        int roughing = roughingPasses(depth);
        for (int i = 1; i < roughing; i++) {
            depths.add(i * stepDown);
        }
        if (roughing > 0) {
            depths.add(depth - finishing);
        }
        if (finishing > SAME && depth > SAME) {
            depths.add(depth);
        }
        return depths;
    }
}
