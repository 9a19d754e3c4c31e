package outwind.scan;

import java.util.List;
import outwind.board.PointCloud;

/**
 * What a scan file holds.
 *
 * @param header     the lines that state keys, of the file itself and then of the text file beside it
 * @param points     in the file's own unit, in its order
 * @param unmeasured points left out because one of their numbers is missing, infinite or no number: many cameras write
 *                   such where nothing came back
 */
public record Scan(List<HeaderLine> header, PointCloud points, int unmeasured) {

    public Scan {
        header = List.copyOf(header);
    }
}
