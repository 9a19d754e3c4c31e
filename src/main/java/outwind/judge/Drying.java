package outwind.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.CellHeights;
import outwind.board.Defect;
import outwind.board.PointCloud;
import outwind.board.Reading;
import outwind.board.ScannedFace;
import outwind.board.Underside;
import outwind.setup.Moisture;
import outwind.setup.Shrinkage;

/**
 * A board computed as it will be at another moisture: thinner and narrower by what its wood shrinks, as long as before.
 *
 * <p>What lies across the board moves with its width. Warp is kept as it was read: how a board warps again while it
 * dries nobody can predict from its shape, and the remark says so.
 */
public final class Drying {

    private Drying() { }

    /**
     * The board at the new moisture, with a remark on what was done.
     *
     * @throws IllegalArgumentException if its skim then leaves no wood
     */
    public static Board of(Board board, Moisture moisture) {
        Shrinkage shrinkage = Shrinkage.of(board.species());
        double factor = shrinkage.factor(moisture);
        double width = board.width() * factor;
        // Over a bed that was touched or scanned, heights on face A are thicknesses.
        double rise = board.underside() == Underside.FLAT && board.isToldFromBed() ? factor : 1;
        List<Reading> readings = board.readings().stream().map(r -> new Reading(r.x(),
            across(r.y(), board, factor), r.z() * rise, r.face(), r.note(), r.line())).toList();
        List<CaliperReading> calipers = board.calipers().stream().map(c -> new CaliperReading(c.x(),
            across(c.y(), board, factor), c.thickness() * factor, c.line())).toList();
        List<Defect> defects = board.defects().stream().map(d -> new Defect(d.x1(), across(d.y1(), board, factor),
            d.x2(), across(d.y2(), board, factor))).toList();
        List<String> remarks = new ArrayList<>(board.remarks());
        remarks.add(remark(moisture, shrinkage, factor));
        OptionalDouble thickness = board.thickness().isPresent()
            ? OptionalDouble.of(board.thickness().getAsDouble() * factor) : OptionalDouble.empty();
        return new Board(board.name(), board.units(), board.length(), width, thickness, board.species(),
            board.repeatability(), board.price(), board.target(), board.skim(), board.trim(), board.underside(),
            board.turned(), defects, readings, calipers, remarks,
            board.scan().map(scan -> dried(scan, width, factor, rise)), board.unevenness(), board.grade());
    }

    /** What was done to many boards, as a sentence. */
    public static String ofMany(Moisture moisture) {
        return "For later, at " + plain(moisture.to()) + " % moisture; measured at " + plain(moisture.from())
            + " %. Thickness and width are changed by each wood's figures. Measure again then: boards may warp.";
    }

    private static ScannedFace dried(ScannedFace scan, double width, double factor, double rise) {
        PointCloud points = scan.points();
        CellHeights cells = scan.cells();
        return new ScannedFace(new PointCloud(points.x(), times(points.y(), factor), times(points.z(), rise)),
            new CellHeights(cells.length(), width, cells.columns(), cells.rows(), times(cells.height(), rise),
                cells.scatter(), cells.count(), cells.noise()), scan.aboveBed());
    }

    private static double[] times(double[] values, double factor) {
        return Arrays.stream(values).map(value -> value * factor).toArray();
    }

    /** A place across the board; the far edge stays the far edge whatever rounding does. */
    private static double across(double y, Board board, double factor) {
        return y == board.width() ? board.width() * factor : y * factor;
    }

    /** What was done, as a sentence. */
    private static String remark(Moisture moisture, Shrinkage shrinkage, double factor) {
        String wood = shrinkage.wood().orElse("wood not known, so the most cautious figures on record");
        return String.format(Locale.ROOT, "For later, at %s %% moisture; measured at %s %%. Thickness and width are"
                + " %.1f %% %s than today (%s). Let it settle, then measure again before you cut: it may warp as it %s.", plain(moisture.to()),
            plain(moisture.from()), Math.abs(1 - factor) * 100, factor <= 1 ? "less" : "more", wood,
            moisture.dries() ? "dries" : "swells");
    }

    private static String plain(double percent) {
        return percent == Math.rint(percent) ? String.valueOf((long) percent) : String.valueOf(percent);
    }
}
