package outwind.cutting;

import outwind.board.Face;
import outwind.numeric.plane.Plane;
import outwind.shop.Cutter;

/**
 * One face cut flat, parallel to the bed.
 *
 * @param face      which face
 * @param plane     the plane it is cut to, in the frame of the readings
 * @param depth     from the face's highest spot, as it stands on the bed, down to the plane (mm)
 * @param meanDepth mean over the part that must clean up (mm)
 * @param removed   wood that comes off (mm³)
 * @param aboveBed  height of the new face above the bed while it is cut (mm): where the last pass is set
 * @param datum     what the cutter is zeroed on for the last pass
 */
public record Cut(Face face, Plane plane, double depth, double meanDepth, double removed, double aboveBed,
                  Datum datum) {

    /** How far clamps and shims stay under the cutter's last pass (mm): a hand's error and a board that gives. */
    public static final double CLEAR = 3;

    /** Nothing that holds wood from beside is lower than this (mm): our choice. */
    private static final double LOWEST_CLAMP = 1;

    /** Height above the bed under which clamps and shims stay, clear of the last pass (mm). */
    public double keepBelow() {
        return Math.max(0, aboveBed - CLEAR);
    }

    /** True if nothing has to come off. */
    public boolean isEmpty() {
        return depth <= Cutter.SAME;
    }

    /** True if anything can hold the board from beside, clear of the cutter. */
    public boolean leavesRoomForClamps() {
        return keepBelow() >= LOWEST_CLAMP;
    }
}
