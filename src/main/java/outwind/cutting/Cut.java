package outwind.cutting;

import java.util.List;
import outwind.board.Face;
import outwind.numeric.Plane;

/**
 * One face cut flat.
 *
 * @param face          which face
 * @param plane         the plane it is cut to, in the frame of the readings
 * @param depth         from the face's highest spot, as it stands on the bed, down to the plane (mm)
 * @param meanDepth     mean over the part that must clean up (mm)
 * @param passes        layer by layer, the last one at the full depth
 * @param removed       wood that comes off (mm³)
 * @param keepBelow     height above the bed under which clamps and shims stay, clear of the last pass (mm)
 * @param thicknessLeft greatest thickness left once it is done, from the new face to the highest bump below it (mm)
 */
public record Cut(Face face, Plane plane, double depth, double meanDepth, List<Pass> passes, double removed,
                  double keepBelow, double thicknessLeft) {

    /** Nothing that holds wood from beside is lower than this (mm): our choice. */
    private static final double LOWEST_CLAMP = 1;

    public Cut {
        passes = List.copyOf(passes);
    }

    /** Minutes of cutting with every row from end to end. */
    public double minutes() {
        return passes.stream().mapToDouble(Pass::minutes).sum();
    }

    /** Minutes of cutting with air skipped. */
    public double woodMinutes() {
        return passes.stream().mapToDouble(Pass::woodMinutes).sum();
    }

    /** True if anything can hold the board from beside, clear of the cutter. */
    public boolean leavesRoomForClamps() {
        return keepBelow >= LOWEST_CLAMP;
    }
}
