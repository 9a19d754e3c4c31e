package outwind.scan.find;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.PointCloud;
import outwind.board.ScannedFace;
import outwind.board.file.Defaults;
import outwind.board.file.ScanHeader;
import outwind.board.text.BadBoardFile;
import outwind.numeric.plane.Plane;
import outwind.scan.file.HeaderLine;
import outwind.scan.file.Scan;

/**
 * Finds the board in a scan.
 *
 * <ol>
 * <li>The points are converted to mm.
 * <li>Where the bed was scanned too, the scan is turned so that the bed is level at height 0 ({@link BedPlane}).
 * <li>Face A is what hangs together in height above it, or about a plane through most points ({@link FaceBand}).
 * <li>Where the face does not lie between 0 and the stated length and width already, it is laid square to the axes
 *     ({@link Alignment}, {@link Outline}).
 * <li>What lies beyond the board's rectangle is cropped, what flies is dropped ({@link FlyingPoints}), and the rest is
 *     described in {@link Cells}.
 * </ol>
 */
public final class ScannedBoard {

    /** A scan without a bed that slopes more than this was not taken from above; it is laid level. */
    private static final double STEEP = 0.1;

    /** The least plane trimmed down to this share of the points is the face's, clamps or not. */
    private static final double MOST_OF_IT = 0.75;

    /** Least share that the places' smaller variance has of the larger; a strip of 1 : 1000 has a hundred times it. */
    private static final double NO_SPREAD = 1e-8;

    /** Of the points, may lie out of all reach; with more of them the unit is wrong, or it is no scan. */
    private static final double MOST_ASTRAY = 0.05;

    /** Least share of the cells that must hold points, or the sizes and the points are not of one board. */
    private static final double LEAST_COVERED = 0.5;

    private final PointCloud points;
    private final int astray;
    private final long unmeasured;
    private final ScanHeader header;

    private ScannedBoard(OutlierCrop reach, long unmeasured, ScanHeader header) {
        this.points = reach.points();
        this.astray = reach.astray();
        this.unmeasured = unmeasured;
        this.header = header;
    }

    /**
     * Finds the board.
     *
     * @param fileName how faults name the file; its last part gives the board's name where the header states none
     * @param given    what is stated beside the file, for a file that does not say
     * @throws BadBoardFile if the header is at fault, or there is no board to be found
     */
    public static Board in(Scan scan, String fileName, Defaults given) throws BadBoardFile {
        List<HeaderLine> lines = scan.header();
        // Faults name one file: that in which the keys stand, or else the scan.
        boolean oneFile = lines.stream().map(HeaderLine::file).distinct().count() == 1;
        ScanHeader header = ScanHeader.read(fileName, oneFile ? lines.get(0).file() : fileName,
            lines.stream().map(HeaderLine::said).toList(), given);
        return new ScannedBoard(OutlierCrop.of(scan.points(), header.units().toMillimetres(1)), scan.unmeasured(),
            header).find();
    }

    private Board find() throws BadBoardFile {
        if (points.size() + astray < Scan.FEWEST) {
            throw header.fault("a scan of at least " + Scan.FEWEST + " points", String.valueOf(points.size() + astray),
                "Scan more finely, or write the points as touch-offs into a board file with the header x,y,z.");
        }
        if (astray > MOST_ASTRAY * (points.size() + astray)) {
            throw header.fault("points within 1 km of each other", astray + " further away",
                "Crop the scan to the board, and check its units.");
        }
        Placement inMillimetres = Placement.scaledBy(header.units().toMillimetres(1));
        PointCloud sample = Sample.of(points, inMillimetres);
        requireSpread(sample);
        Optional<BedPlane> bed = BedPlane.in(sample);
        if (bed.isEmpty() && header.thickness().isEmpty()) {
            throw header.fault("the board's thickness", "nothing", "Give --thickness, or add a line such as"
                + " \"# thickness: 31.5\", or scan the bed beside the board as well.");
        }
        Plane most = bed.map(BedPlane::plane).orElseGet(() -> throughMost(sample));
        boolean levelled = bed.isPresent() || Math.hypot(most.slopeX(), most.slopeY()) > STEEP;
        Placement level = levelled ? inMillimetres.then(Placement.levelling(most)) : inMillimetres;
        FaceBand band = band(Sample.of(points, level), levelled ? new Plane(0, 0, 0) : most,
            bed.map(BedPlane::clear).orElse(Double.NEGATIVE_INFINITY));

        double[][] face = placesOn(band, level);
        requireArea(face);
        Alignment squared = Alignment.of(face[0], face[1], header.length(), header.width());
        CellGrid grid = CellGrid.bearing(face[0].length, squared.length(), squared.width());
        face = null;
        return boardOf(level, levelled, bed.isPresent(), band, squared, grid);
    }

    private Board boardOf(Placement level, boolean levelled, boolean overBed, FaceBand band, Alignment squared,
            CellGrid grid) throws BadBoardFile {
        FaceBand moved = new FaceBand(squared.moved(band.plane()), band.low(), band.high());
        CellPoints.Sorted sorted = CellPoints.sorted(grid, points, level.then(squared.placement()), (x, y, z) -> {
            int side = moved.side(x, y, z);
            boolean inside = x >= 0 && x <= grid.length() && y >= 0 && y <= grid.width();
            return side < 0 ? CellPoints.BELOW : side > 0 ? CellPoints.ABOVE : inside ? grid.quarter(x, y)
                : CellPoints.BEYOND;
        });
        CellPoints kept = FlyingPoints.removedFrom(sorted.points());
        CellHeights cells = Cells.of(kept);
        requireSense(squared, cells);
        int onBed = overBed ? sorted.leftOut()[-CellPoints.BELOW] : 0;
        requireMost(kept.size(), points.size() + astray - onBed);
        FindingNotes notes = new FindingNotes(header, overBed);
        double thickness = header.thickness().orElseGet(() -> lowest(cells));
        notes.onPlace(squared, levelled && !overBed);
        notes.onThickness(lowest(cells));
        notes.onPoints(points.size() + astray + unmeasured, unmeasured, astray, sorted.leftOut(), sorted.points().size() - kept.size());
        notes.onCells(cells);
        return header.board(squared.length(), squared.width(), thickness,
            new ScannedFace(kept.points(), cells, overBed), notes.sentences());
    }

    /** Points and sizes in different units leave nearly all of the face empty, or make a board thicker than long. */
    private void requireSense(Alignment squared, CellHeights cells) throws BadBoardFile {
        String checkUnits = "Check the units, which are read as " + header.units().symbol() + ", and the length and"
            + " width that are stated.";
        if (header.thickness().isPresent() && squared.length() < header.thickness().getAsDouble()) {
            throw header.fault("a board longer than thick", header.shown(squared.length()) + " by "
                + header.shown(squared.width()) + " and " + header.shown(header.thickness().getAsDouble()) + " thick",
                checkUnits);
        }
        if (cells.measuredShare() < LEAST_COVERED) {
            throw header.fault("points over most of a face of " + header.shown(squared.length()) + " by "
                + header.shown(squared.width()), String.format(Locale.ROOT, "points on %.1f %% of it",
                100 * cells.measuredShare()), checkUnits);
        }
    }

    /** Where most points must be left out, it was not the board that was found. */
    private void requireMost(int kept, int all) throws BadBoardFile {
        if (2L * kept < all) {
            throw header.fault("most of the points on one face", kept + " of " + all,
                "The others lie above, below or beyond it: crop the scan to the board, and check its units.");
        }
    }

    private static double lowest(CellHeights cells) {
        return Arrays.stream(cells.height()).filter(height -> !Double.isNaN(height)).min().orElseThrow();
    }

    private static Plane throughMost(PointCloud sample) {
        return TrimmedPlane.through(sample, TrimmedPlane.through(sample, new Plane(0, 0, 0), 1), MOST_OF_IT);
    }

    private static FaceBand band(PointCloud sample, Plane plane, double from) {
        double[] heights = new double[sample.size()];
        for (int i = 0; i < heights.length; i++) {
            heights[i] = sample.z()[i] - plane.at(sample.x()[i], sample.y()[i]);
        }
        return FaceBand.of(plane, heights, from);
    }

    /** Where the points of the face lie: x and y of each (mm). */
    private double[][] placesOn(FaceBand band, Placement level) {
        double[] x = new double[points.size()];
        double[] y = new double[points.size()];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            double px = points.x()[i];
            double py = points.y()[i];
            double pz = points.z()[i];
            x[count] = level.x(px, py, pz);
            y[count] = level.y(px, py, pz);
            count += band.side(x[count], y[count], level.z(px, py, pz)) == 0 ? 1 : 0;
        }
        return new double[][] {Arrays.copyOf(x, count), Arrays.copyOf(y, count)};
    }

    /** Points at one place, or in one line seen from above, show no face: the moments of their places tell. */
    private void requireSpread(PointCloud sample) throws BadBoardFile {
        double meanX = Arrays.stream(sample.x()).average().orElseThrow();
        double meanY = Arrays.stream(sample.y()).average().orElseThrow();
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < sample.size(); i++) {
            double dx = sample.x()[i] - meanX;
            double dy = sample.y()[i] - meanY;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }
        if (xx * yy - xy * xy <= NO_SPREAD * (xx + yy) * (xx + yy)) {
            throw header.fault("points over the whole of a face", "points at one place or in one line",
                "Save the scan again with x along the board, y across it and z up, and all of the face in view.");
        }
    }

    private void requireArea(double[][] face) throws BadBoardFile {
        if (face[0].length < Scan.FEWEST) {
            throw header.fault("a face with at least " + Scan.FEWEST + " points", String.valueOf(face[0].length),
                "The other points lie too far above and below it: crop the scan to the board, and check its units.");
        }
    }
}
