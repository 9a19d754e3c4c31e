package outwind.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.CellHeights;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.PointCloud;
import outwind.board.Reading;
import outwind.board.ScannedFace;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.setup.Moisture;
import outwind.surface.ShapeOf;

class DryingTest {

    // White oak from 12 to 8 %: 4 · 0.00365 less (Wood Handbook, table 13-5).
    private static final double FACTOR = 1 - 0.0146;
    private static final Moisture DRYING = new Moisture(12, 8);

    private static Board board(Underside underside, List<Reading> readings) {
        return new Board("sill", Units.MILLIMETRES, 900, 180, OptionalDouble.of(30), Optional.of("white oak"),
            OptionalDouble.empty(), Optional.empty(), OptionalDouble.of(25), OptionalDouble.empty(), Trim.NONE,
            underside, Optional.empty(), List.of(new Defect(100, 90, 200, 180)), readings,
            List.of(new CaliperReading(10, 180, 30.2, 4)), List.of(), Optional.empty(),
            true);
    }

    private static Reading at(double x, double y, double z, Face face) {
        return new Reading(x, y, z, face, "", 2);
    }

    @Test
    void thicknessAndWidthShrinkAndEverythingAcrossGoesWithThem() {
        Board dried = Drying.of(board(Underside.ALIKE, List.of(at(0, 0, 1, Face.A), at(900, 180, 2, Face.A))), DRYING);

        assertEquals(30 * FACTOR, dried.thickness().orElseThrow(), 1e-12);
        assertEquals(180 * FACTOR, dried.width(), 1e-12);
        assertEquals(900, dried.length());
        assertEquals(dried.width(), dried.readings().get(1).y());
        assertEquals(30.2 * FACTOR, dried.calipers().get(0).thickness(), 1e-12);
        assertEquals(new Defect(100, 90 * FACTOR, 200, dried.width()), dried.defects().get(0));
        assertEquals(25, dried.target().orElseThrow());
    }

    @Test
    void warpIsKeptAndTheRemarkSaysThatItMayChange() {
        Board dried = Drying.of(board(Underside.ALIKE, List.of(at(0, 0, 1, Face.A))), DRYING);

        assertEquals(1, dried.readings().get(0).z());
        assertTrue(dried.remarks().get(0).contains("1.5 % less") && dried.remarks().get(0).contains("white oak")
            && dried.remarks().get(0).contains("may warp"), dried.remarks().toString());
    }

    @Test
    void heightsOverATouchedBedAreThicknessesAndShrink() {
        Board dried = Drying.of(board(Underside.FLAT, List.of(at(0, 0, 31, Face.A), at(900, 180, 30, Face.A),
            at(0, 200, 1, Face.BED))), DRYING);

        assertEquals(30 * FACTOR, dried.readings().get(0).z() - dried.readings().get(2).z(), 1e-12);
    }

    // Where the underside is no plane on the bed, what lies above the bed is warp, which is kept as it was read.
    @Test
    void warpOverATouchedBedIsKept() {
        Board dried = Drying.of(board(Underside.ALIKE, List.of(at(0, 0, 31, Face.A), at(900, 180, 30, Face.A),
            at(0, 200, 1, Face.BED))), DRYING);

        assertEquals(List.of(31.0, 30.0, 1.0), dried.readings().stream().map(Reading::z).toList());
    }

    // A scan of two columns and one row above its bed: places across and heights shrink with the wood.
    @Test
    void aScanDriesWithItsBoard() {
        ScannedFace scan = new ScannedFace(new PointCloud(new double[] {5, 800}, new double[] {10, 170},
            new double[] {30, 31}), new CellHeights(900, 180, 2, 1, new double[] {30, 31}, new double[] {0.1, 0.1},
            new int[] {1, 1}, OptionalDouble.empty()), true);
        Board read = board(Underside.FLAT, List.of(at(225, 90, 30, Face.A), at(675, 90, 31, Face.A)));
        Board scanned = ShapeOf.scanned(read, scan);

        Board dried = Drying.of(scanned, DRYING);

        PointCloud points = dried.scan().orElseThrow().points();
        assertEquals(170 * FACTOR, points.y()[1], 1e-12);
        assertEquals(31 * FACTOR, points.z()[1], 1e-12);
        assertEquals(800, points.x()[1]);
        CellHeights cells = dried.scan().orElseThrow().cells();
        assertEquals(180 * FACTOR, cells.width(), 1e-12);
        assertEquals(30 * FACTOR, cells.height()[0], 1e-12);
        assertEquals(30 * FACTOR, dried.readings().get(0).z(), 1e-12);
    }

    // White oak radially 0.00180 for each percent (Wood Handbook, table 13-5).
    @Test
    void swellingIsReckonedByTheLesserFigure() {
        Board swollen = Drying.of(board(Underside.ALIKE, List.of(at(0, 0, 1, Face.A))), new Moisture(8, 12));

        assertEquals(30 * (1 + 4 * 0.0018), swollen.thickness().orElseThrow(), 1e-12);
    }
}
