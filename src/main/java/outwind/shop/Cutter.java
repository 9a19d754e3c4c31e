package outwind.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A cutter and how it is run: how deep at a time, how wide, how fast, and how far it runs out past the board.
 *
 * @param name     what the shop calls it
 * @param diameter (mm)
 * @param deepest  most that one pass takes (mm)
 * @param lastPass what the last pass takes after others (mm); 0 where it is a pass like any other
 * @param rows     from one row to the next (mm), at most the diameter
 * @param feed     mm per minute
 * @param overrun  how far the cutter's centre goes past every edge (mm), at least its radius
 */
public record Cutter(String name, double diameter, double deepest, double lastPass, double rows, double feed,
                     double overrun) {

    /** Past every edge by this, with the whole cutter (mm): a quarter inch; common practice. */
    private static final double CLEAR_OF_THE_EDGE = 6.35;

    /** No machine is set finer than this (mm). */
    private static final double FINEST = 0.01;

    /** Depth that differs by less than this is the same depth: a hundredth of the finest dial (mm). */
    public static final double SAME = 1e-4;

    public Cutter {
        require(deepest >= FINEST, "deepest pass", deepest, "at least " + FINEST + " mm");
        require(lastPass >= 0 && lastPass <= deepest, "last pass", lastPass, "at most the deepest pass of " + deepest
            + " mm");
        require(diameter > 0 && Double.isFinite(diameter), "cutter's diameter", diameter, "above zero");
        require(rows >= FINEST && rows <= diameter, "distance between rows", rows, "at least " + FINEST
            + " mm and at most the diameter of " + diameter + " mm");
        require(feed > 0 && Double.isFinite(feed), "feed", feed, "above zero");
        require(overrun >= diameter / 2, "overrun", overrun, "at least the cutter's radius of " + diameter / 2 + " mm");
    }

    /**
     * A cutter of which the rest is as usual: rows at half its diameter, no lighter last pass, past every edge by a
     * quarter inch with the whole cutter. Common practice.
     *
     * @param rows     from one row to the next (mm), if it is stated
     * @param lastPass what the last pass takes (mm), if it is stated
     */
    public static Cutter usual(String name, double diameter, double deepest, double feed, OptionalDouble rows,
                               OptionalDouble lastPass) {
        return new Cutter(name, diameter, deepest, lastPass.orElse(0), rows.orElse(diameter / 2), feed,
            diameter / 2 + CLEAR_OF_THE_EDGE);
    }

    private static void require(boolean holds, String what, double value, String wanted) {
        if (!holds) {
            throw new IllegalArgumentException("the " + what + " must be " + wanted + ", got " + value + " mm");
        }
    }

    /** How many passes of at most one depth it takes to get down another (mm). */
    public static int passes(double depth, double each) {
        return Math.max(0, (int) Math.ceil((depth - SAME) / each));
    }

    /**
     * Depths of the passes, each below the highest spot (mm), the last one the full depth. Passes take the deepest, the
     * one before the last what is left above the last.
     *
     * @param depth full depth of cut from the highest spot (mm)
     */
    public List<Double> passes(double depth) {
        List<Double> depths = new ArrayList<>();
        int roughing = passes(depth - lastPass, deepest);
        for (int i = 1; i < roughing; i++) {
            depths.add(i * deepest);
        }
        if (roughing > 0) {
            depths.add(depth - lastPass);
        }
        if (lastPass > SAME && depth > SAME) {
            depths.add(depth);
        }
        return depths;
    }
}
