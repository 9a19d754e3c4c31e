package outwind.board;

import java.util.Objects;

/**
 * Face A as it was scanned.
 *
 * @param points   on the face, in the board's own axes (mm), stray ones left out
 * @param cells    the same in cells
 * @param aboveBed true if the bed was scanned as well, so that heights are measured from it
 */
public record ScannedFace(PointCloud points, CellHeights cells, boolean aboveBed) {

    public ScannedFace {
        Objects.requireNonNull(points, "points");
        Objects.requireNonNull(cells, "cells");
    }
}
