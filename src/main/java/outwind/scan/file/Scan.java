package outwind.scan.file;

import java.util.List;
import outwind.board.PointCloud;

/**
 * What a scan file holds.
 *
 * @param header     the lines {@code # key: value} of the file and then those of the file beside it, as written
 * @param points     the measured points in the order of the file, in the file's own unit
 * @param unmeasured points left out because a coordinate is blank, NaN or infinite: many cameras write so where
 *                   nothing came back
 */
public record Scan(List<HeaderLine> header, PointCloud points, long unmeasured) {

    /** Fewer points than this fill too few cells to see anything that touching off would not. */
    public static final int FEWEST = 1_000;

    public Scan {
        header = List.copyOf(header);
    }
}
