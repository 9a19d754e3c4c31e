package outwind.scan.find;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.PointCloud;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.scan.file.HeaderLine;
import outwind.scan.file.MadeScan;
import outwind.scan.file.Scan;
import outwind.surface.MeasuredShape;
import outwind.surface.trend.Fits;
import outwind.surface.trend.Warp;

class ScannedBoardTest {

    private static final double LENGTH = 900;
    private static final double WIDTH = 180;
    private static final double NOISE = 0.04;

    /** Twist of 4 mm from corner to corner, bow of 1 mm. */
    private static double warped(double x, double y) {
        double u = 2 * x / LENGTH - 1;
        double v = 2 * y / WIDTH - 1;
        return u * v + u * u;
    }

    private static MadeScan scan(DoubleBinaryOperator face) {
        return MadeScan.of(face, LENGTH, WIDTH, 40_000, NOISE, 3);
    }

    private static Board sized(MadeScan scan) {
        return scan.sized(LENGTH, WIDTH, 30);
    }

    /** Five standard deviations of a cell's mean, which one of 1600 cells passes in one of a thousand scans. */
    private static double noiseOf(CellHeights cells, int k) {
        return 5 * NOISE / Math.sqrt(cells.count()[k]);
    }

    // A bow of 1 mm over 900 mm curves by less than 0.001 mm within a cell.
    @Test
    void aScanInTheBoardsOwnAxesIsNotMoved() {
        MadeScan made = scan(ScannedBoardTest::warped);

        Board board = sized(made);

        assertEquals(40_000, board.pointsOnFaceA(), 5);
        CellHeights cells = board.scan().orElseThrow().cells();
        for (int k = 0; k < cells.size(); k++) {
            assertEquals(warped(cells.x(k), cells.y(k)), cells.height()[k], noiseOf(cells, k) + 0.001);
        }
        double[] x = board.scan().orElseThrow().points().x().clone();
        double[] given = made.points().x().clone();
        Arrays.sort(x);
        Arrays.sort(given);
        assertEquals(given[20_000], x[20_000], 0.1);
        assertFalse(board.remarks().stream().anyMatch(remark -> remark.contains("turned")), "" + board.remarks());
    }

    // Identity: the same wood, however it lay. Points near an edge may fall to the other side of it and cells are cut
    // otherwise, so that twist and bow agree to a tenth of the noise of a cell and not to the last bit.
    @ParameterizedTest
    @ValueSource(doubles = {0.004, 0.6, 1.3, 2.2, -0.9, 3.1})
    void howTheBoardLayInTheScanDoesNotMatter(double angle) {
        Warp asMade = warp(sized(scan(ScannedBoardTest::warped)));

        Board turned = sized(scan(ScannedBoardTest::warped).moved(angle, 4000, -700, 55));

        Warp warp = warp(turned);
        assertEquals(asMade.twist().orElseThrow().value(), warp.twist().orElseThrow().value(), 0.005);
        assertEquals(asMade.bow().orElseThrow().value(), warp.bow().orElseThrow().value(), 0.005);
        assertEquals(40_000, turned.pointsOnFaceA(), 60);
        // Half a turn is the most that may be left, and it maps the warp on to itself.
        MeasuredShape shape = MeasuredShape.of(turned);
        for (double x : new double[] {0, 300, 900}) {
            double straight = Math.abs(warped(x, 30) + 55 - shape.topAt(x, 30));
            double over = Math.abs(warped(x, 30) + 55 - shape.topAt(LENGTH - x, WIDTH - 30));
            assertEquals(0, Math.min(straight, over), 0.05);
        }
    }

    // Identity: what the scanner wrote where nothing came back is no part of the board.
    @Test
    void pointsOutOfAllReachAreLeftOutAndSaid() {
        PointCloud points = scan(ScannedBoardTest::warped).points();
        PointCloud spoiled = new PointCloud(points.x().clone(), points.y().clone(), points.z().clone());
        for (int i = 0; i < points.size(); i += 100) {
            spoiled.x()[i] = 1e30;
            spoiled.y()[i] = -1e9;
            spoiled.z()[i] = -1e300;
        }

        Board board = sized(new MadeScan(spoiled));

        assertEquals(39_600, board.pointsOnFaceA(), 5);
        assertTrue(board.remarks().stream().anyMatch(remark -> remark.startsWith("Of 40\u00a0000 points left out: ")
            && remark.contains("400 far away")), "" + board.remarks());
        assertEquals(warp(sized(scan(ScannedBoardTest::warped))).twist().orElseThrow().value(),
            warp(board).twist().orElseThrow().value(), 0.02);
    }

    private static BadBoardFile refused(double[] x, double[] y, double[] z) {
        return assertThrows(BadBoardFile.class, () -> ScannedBoard.in(new Scan(List.of(
            MadeScan.said("scan.csv", 1, 1, "thickness", "30")), new PointCloud(x, y, z), 0), "scan.csv",
            Defaults.NOTHING));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.2, -3})
    void pointsAtOnePlaceOrInOneLineAreNoFace(double slope) {
        double[] x = new double[2_000];
        double[] y = new double[2_000];
        Arrays.setAll(x, i -> slope == 0 ? 7 : i);
        Arrays.setAll(y, i -> 50 + slope * x[i]);

        BadBoardFile bad = refused(x, y, new double[2_000]);

        assertTrue(bad.getMessage().startsWith("scan.csv:1:1: expected points over the whole of a face but found points"
            + " at one place or in one line"), bad.getMessage());
    }

    @Test
    void aScanOfManyKilometresIsNone() {
        double[] x = new double[2_000];
        Arrays.setAll(x, i -> i * 1e6);

        BadBoardFile bad = refused(x, new double[2_000], new double[2_000]);

        assertTrue(bad.getMessage().startsWith("scan.csv:1:1: expected points within 1 km of each other but found 1997"
            + " further away"), bad.getMessage());
    }

    private static Warp warp(Board board) {
        return Warp.of(board, Fits.of(board));
    }

    @Test
    void sizesThatNobodyStatedComeFromTheOutline() {
        Board board = scan(ScannedBoardTest::warped).moved(0.5, 100, 100, 0).read("thickness: 30", "units: mm");

        // 40 000 points at random: the outermost of them are within a few tenths of a mm of each side.
        assertEquals(LENGTH, board.length(), 1);
        assertEquals(WIDTH, board.width(), 1);
        assertTrue(String.join(" ", board.remarks()).contains("No length is stated: "), "" + board.remarks());
    }

    @Test
    void flyingPointsChangeNothing() {
        MadeScan clean = scan(ScannedBoardTest::warped);
        Board board = sized(clean);

        Board spoiled = sized(clean.withFlying(0.02, 6, 5));

        // 2 % of 40 000 are 800; those thrown no further than six times the noise, 0.24 of 6 mm, cannot be seen: 4 %.
        assertEquals(40_000 - 800, spoiled.pointsOnFaceA(), 100);
        CellHeights cells = spoiled.scan().orElseThrow().cells();
        CellHeights before = board.scan().orElseThrow().cells();
        assertEquals(before.columns(), cells.columns(), 2);
        for (int k = 0; k < cells.size(); k++) {
            assertEquals(warped(cells.x(k), cells.y(k)), cells.height()[k], noiseOf(cells, k) + 0.001);
        }
    }

    @Test
    void theStepOfAKnotIsNoFlyingPoint() {
        Board board = sized(scan((x, y) -> Math.hypot(x - 300, y - 90) < 12 ? 1.5 : 0));

        // A circle of 12 mm radius holds 452 mm² of 40 000 points on 162 000 mm²: 112 of them.
        double[] z = board.scan().orElseThrow().points().z();
        assertEquals(112, Arrays.stream(z).filter(height -> height > 1).count(), 30);
        assertEquals(1.5, MeasuredShape.of(board).topAt(300, 90), 0.1);
    }

    @Test
    void bedAndClampsAreTold() {
        double thickness = 30;
        MadeScan face = scan((x, y) -> thickness + 1.2 + warped(x, y));
        MadeScan bed = MadeScan.of((x, y) -> 0, 1500, 150, 20_000, NOISE, 7).moved(0, -300, 195, 0);
        MadeScan clamp = MadeScan.of((x, y) -> 55, 60, 25, 1_000, NOISE, 8).moved(0, 200, 0, 0);

        Board board = sized(face.and(bed).and(clamp).moved(2, -50, 800, 700));

        assertEquals(40_000, board.pointsOnFaceA(), 100);
        assertTrue(board.isToldFromBed());
        // The bed is known to 0.04/√20000, its tilt over 900 mm to about ten times that.
        CellHeights cells = board.scan().orElseThrow().cells();
        double middle = cells.height()[cells.at(LENGTH / 2, WIDTH / 2)];
        assertEquals(thickness + 1.2, middle, 0.05);
        String remarks = String.join(" ", board.remarks()).replace('\u00a0', ' ');
        assertTrue(remarks.contains("20 000 on the bed or below the face"), remarks);
        assertTrue(remarks.contains("1 000 well above it, such as clamps"), remarks);
    }

    // Worked by hand: the lowest height of u·v + u² + 31.2 over the board is 31.2 − 1/4 (at |u| = 1/2, v = ∓1).
    @Test
    void aThicknessThatNobodyStatedComesFromTheBed() {
        MadeScan face = scan((x, y) -> 31.2 + warped(x, y));
        MadeScan bed = MadeScan.of((x, y) -> 0, 1500, 150, 20_000, NOISE, 7).moved(0, -300, 195, 0);

        Board board = face.and(bed).read("length: 900", "width: 180");

        assertEquals(31.2 - 0.25, board.thickness().orElseThrow(), 0.04);
    }

    @Test
    void withoutThicknessAndBedTheScanCannotBeJudged() {
        Scan scan = new Scan(List.of(MadeScan.said("made.xyz", 1, 11, "length", "900")),
            scan(ScannedBoardTest::warped).points(), 0);

        BadBoardFile fault = assertThrows(BadBoardFile.class,
            () -> ScannedBoard.in(scan, "made.xyz", Defaults.NOTHING));

        assertEquals("made.xyz:1:1: expected the board's thickness but found nothing\n  Give --thickness, or add a line"
            + " such as \"# thickness: 31.5\", or scan the bed beside the board as well.", fault.getMessage());
    }

    @Test
    void aWrongKeyIsToldByItsLine() {
        Scan scan = new Scan(List.of(MadeScan.said("made.txt", 4, 11, "lenght", "900")),
            scan(ScannedBoardTest::warped).points(), 0);

        BadBoardFile fault = assertThrows(BadBoardFile.class,
            () -> ScannedBoard.in(scan, "made.xyz", Defaults.NOTHING));

        assertTrue(fault.getMessage().startsWith("made.txt:4:3: expected a key but found \"lenght\""),
            fault.getMessage());
    }

    @Test
    void inchesAreTurnedIntoMillimetres() {
        MadeScan made = scan(ScannedBoardTest::warped);
        double[] x = Arrays.stream(made.points().x()).map(v -> v / 25.4).toArray();
        double[] y = Arrays.stream(made.points().y()).map(v -> v / 25.4).toArray();
        double[] z = Arrays.stream(made.points().z()).map(v -> v / 25.4).toArray();

        Board board = new MadeScan(new PointCloud(x, y, z)).read("units: in", "length: 900mm",
            "width: 180mm", "thickness: 30mm");

        assertEquals(sized(made).scan().orElseThrow().cells().height()[7],
            board.scan().orElseThrow().cells().height()[7], 1e-9);
    }

    // A scan in m with its sizes in mm: all points in one corner, and everywhere else only the trend.
    @Test
    void aScanInMetresBesideSizesInMillimetresIsRefused() {
        MadeScan made = scan(ScannedBoardTest::warped);
        PointCloud metres = new PointCloud(thousandth(made.points().x()), thousandth(made.points().y()),
            thousandth(made.points().z()));

        for (Defaults sizes : List.of(given("900", "180"), given(null, null))) {
            BadBoardFile refused = assertThrows(BadBoardFile.class,
                () -> ScannedBoard.in(new Scan(List.of(), metres, 0), "board.xyz", sizes));

            assertTrue(refused.getMessage().contains("Check the units, which are read as mm"), refused.getMessage());
        }
    }

    @Test
    void mostPointsLeftOutIsRefused() {
        MadeScan made = scan(ScannedBoardTest::warped);
        int n = made.points().size();
        double[] x = Arrays.copyOf(made.points().x(), 4 * n);
        double[] y = Arrays.copyOf(made.points().y(), 4 * n);
        double[] z = Arrays.copyOf(made.points().z(), 4 * n);
        for (int i = n; i < 4 * n; i++) {
            x[i] = x[i % n];
            y[i] = y[i % n] + 400.0 * (i / n);
            z[i] = z[i % n];
        }

        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> ScannedBoard.in(
            new Scan(List.of(), new PointCloud(x, y, z), 0), "board.xyz", given("900", "180")));

        assertTrue(refused.getMessage().contains("most of the points on one face"), refused.getMessage());
    }

    @Test
    void pointsWithoutAWholePlaceAreCounted() throws BadBoardFile {
        MadeScan made = scan(ScannedBoardTest::warped);

        Board board = ScannedBoard.in(new Scan(List.of(), made.points(), 1_234), "board.xyz", given("900", "180"));

        assertTrue(board.remarks().stream().anyMatch(remark -> remark.contains(
            "points left out: 1\u00a0234 without a whole x, y and z")), "" + board.remarks());
    }

    private static double[] thousandth(double[] millimetres) {
        return Arrays.stream(millimetres).map(mm -> mm / 1000).toArray();
    }

    private static Defaults given(String length, String width) {
        return new Defaults(Optional.empty(), Optional.ofNullable(length), Optional.ofNullable(width),
            Optional.of("30"));
    }
}
