package outwind.cutting;

import java.util.ArrayList;
import java.util.List;

/**
 * How deep the machine cuts at a time.
 *
 * @param stepDown  most that a roughing pass takes (mm)
 * @param finishing what the last pass takes (mm)
 */
public record Cutter(double stepDown, double finishing) {

    /** A light facing cut. */
    public static final Cutter LIGHT = new Cutter(0.5, 0.2);

    /** Depth that differs by less than this is the same depth: a hundredth of the finest dial (mm). */
    private static final double SAME = 1e-4;

    public Cutter {
        if (!(stepDown > 0) || !(finishing >= 0)) {
            throw new IllegalArgumentException("a step-down is above zero and a finishing pass not below it, got "
                + stepDown + " and " + finishing);
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
