package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Defect;
import outwind.surface.Region;

/** Chances on boards known exactly, of 960 x 160 mm: faces are bilinear between lines 40 mm apart along and 20 mm across. */
class ChanceTableTest {

    private static final Piece PIECE = new Piece(0, 120, 160, false);

    /** As thick as the board k = 499 of those that differ by 0.01 mm, where nothing warps. */
    private static final double THIN = 30 - 4.99 - 0.005;

    private static BlankThickness wood(KnownBoards boards) {
        return BlankThickness.of(boards, new Region(0, 0, 960, 160), 0, 1);
    }

    /** A board that twists from 120 mm on by so much over 40 mm; board k is thinner by 0.01·k mm. */
    private static BlankThickness twisting(double rise) {
        return wood(KnownBoards.twisting(160, x -> Math.max(0, (x - 120) / 40 * rise), 0.01));
    }

    private static Stops along(double... at) {
        return new Stops(0, 960, at);
    }

    private static Stops across(double... at) {
        return new Stops(0, 160, at);
    }

    private static Saw raster(double raster) {
        return new Saw(3, 0, raster);
    }

    /** Chances at stops along, for a piece of the board's whole width. */
    private static float[] row(BlankThickness wood, double thickness, double sure, double enough, double raster,
            double... at) {
        float[][] chance = new ChanceTable(wood, along(at), across(0), sure, enough, raster(raster))
            .of(PIECE, thickness, List.of());
        float[] row = new float[at.length];
        for (int i = 0; i < at.length; i++) {
            row[i] = chance[i][0];
        }
        return row;
    }

    // Worked by hand: a twist of 0.4 mm over what begins at 40 mm costs 40 of 500 boards, or 8 %. The rectangle around both
    // has the same twist; that is enough at 92 %, and is looked into at 93 %.
    @Test
    void wherePositionsAroundAreEnoughTheyAreNotLookedInto() {
        BlankThickness wood = twisting(0.4);

        assertArrayEquals(new float[] {0.92f, 0.92f}, row(wood, THIN, 0.5, 0.92, 1, 0, 40));
        assertArrayEquals(new float[] {1, 0.92f}, row(wood, THIN, 0.5, 0.93, 1, 0, 40));
        assertArrayEquals(new float[] {1, 0}, row(wood, THIN, 0.925, 1, 1, 0, 40));
    }

    // Worked by hand: 0.09 mm cost 9 of 500 boards, or 1.8 %, which is close; 0.11 mm cost 2.2 %.
    @Test
    void closeChancesAreTakenForTheLeastOfThem() {
        assertArrayEquals(new float[] {0.982f, 0.982f}, row(twisting(0.09), THIN, 0.5, 1, 1, 0, 40));
        assertArrayEquals(new float[] {1, 0.978f}, row(twisting(0.11), THIN, 0.5, 1, 1, 0, 40));
        // Not sure enough is not close to sure, whatever the difference.
        assertArrayEquals(new float[] {1, 0}, row(twisting(0.09), THIN, 0.99, 1, 1, 0, 40));
    }

    // Worked by hand: from 0 to 124 mm the board twists by 2 mm, to 128 mm by 4 mm; 3 mm are allowed. Stops that lie less
    // than the raster apart stand or fall together.
    @Test
    void stopsWithinOneRasterAreJudgedTogether() {
        BlankThickness wood = twisting(20);

        assertArrayEquals(new float[] {1, 1, 0}, row(wood, 27 - 4.995, 1, 1, 8, 0, 4, 8));
        assertArrayEquals(new float[] {0, 0, 0}, row(wood, 27 - 4.995, 1, 1, 8.01, 0, 4, 8));
    }

    // The same across the board.
    @Test
    void stopsWithinOneRasterAcrossAreJudgedTogether() {
        BlankThickness wood = wood(KnownBoards.alike((k, x, y) -> (2 * x / 960 - 1) * Math.max(0, y - 60) / 2, 0.01));
        Piece piece = new Piece(0, 960, 60, false);
        for (double raster : new double[] {8, 8.01}) {
            float[][] chance = new ChanceTable(wood, along(0), across(0, 4, 8), 1, 1, raster(raster))
                .of(piece, 27 - 4.995, List.of());

            assertArrayEquals(raster == 8 ? new float[] {1, 1, 0} : new float[3], chance[0]);
        }
    }

    // Worked by hand: stops 4 mm apart along and 60 mm apart across do not lie within one raster of 10 mm: the latter are
    // looked at apart, and there the former lie within it.
    @Test
    void stopsMustLieWithinTheRasterBothWays() {
        BlankThickness wood = wood(KnownBoards.alike((k, x, y) -> y > 100 ? (2 * x / 960 - 1) * (y - 100) / 2 : 0, 0));
        float[][] chance = new ChanceTable(wood, along(0, 4), across(0, 60), 1, 1, raster(10))
            .of(new Piece(0, 950, 100, false), 29, List.of());
        float[][] turned = new ChanceTable(twisting(20), along(0, 60), across(0, 4), 1, 1, raster(10))
            .of(new Piece(0, 120, 150, false), 30 - 4.995, List.of());

        assertArrayEquals(new float[][] {{1, 0}, {1, 0}}, chance);
        assertArrayEquals(new float[][] {{1, 1}, {0, 0}}, turned);
    }

    /** Twists from x = 120 mm on by {@code along} over 40 mm, and from y = 60 mm on by {@code across} over 20 mm. */
    private static BlankThickness both(double along, double across) {
        return wood(KnownBoards.alike((k, x, y) -> (y / 80 - 1) * Math.max(0, (x - 120) / 40 * along)
            + (x / 80 - 1) * Math.max(0, (y - 60) / 20 * across), 0.01));
    }

    private static double chance(BlankThickness wood, double x1, double y1, double x2, double y2) {
        return wood.chance(new Region(x1, y1, x2, y2), THIN, 0.5);
    }

    // By definition of the halves: what lies further apart for its size is parted first. If parted along, rows across are
    // close and take the chance of what lies around them; if parted across, rows along do.
    @Test
    void aBlockIsPartedWhereItIsLongerForThePiece() {
        BlankThickness wood = both(0.11, 0.1);
        double[][] parts = {{40, 19}, {39, 20}};
        for (double[] apart : parts) {
            double x = apart[0];
            double y = apart[1];
            float[][] chance = new ChanceTable(wood, along(0, x), across(0, y), 0.5, 1, raster(1))
                .of(new Piece(0, 120, 60, false), THIN, List.of());
            double all = chance(wood, 0, 0, x + 120, y + 60);
            assertTrue(chance(wood, x, y, 120, 60) - all > 0.02, "the whole block is not close");
            double near;
            double far;
            if (x / 120 >= y / 60) {
                near = chance(wood, 0, 0, 120, y + 60);
                far = chance(wood, x, 0, x + 120, y + 60);
                assertTrue(chance(wood, 0, y, 120, 60) - near <= 0.02, "rows across are close");
                assertTrue(chance(wood, x, y, x + 120, 60) - far <= 0.02, "rows across are close");
                assertArrayEquals(new float[][] {{(float) near, (float) near}, {(float) far, (float) far}}, chance);
            } else {
                near = chance(wood, 0, 0, x + 120, 60);
                far = chance(wood, 0, y, x + 120, y + 60);
                assertTrue(chance(wood, x, 0, 120, 60) - near <= 0.02, "rows along are close");
                assertTrue(chance(wood, x, y, 120, y + 60) - far <= 0.02, "rows along are close");
                assertArrayEquals(new float[][] {{(float) near, (float) far}, {(float) near, (float) far}}, chance);
            }
            assertTrue(near > far, near + " " + far);
        }
    }

    // Reference: each place by itself. Nothing that is sure is left out, and no chance is more than 2 % below its own.
    @Test
    void chancesAreThoseOfEachPlaceByItself() {
        double[] heights = {0, 0.3, 0.9, 1.4, 1.2, 0.4, 0, -0.2, 0.5, 1.5, 3, 2, 1, 0, 0, 0.1, 0.2, 1, 0.9, 0.8, 0.5, 0, 0, 2, 4};
        BlankThickness wood = wood(KnownBoards.twisting(160,
            x -> heights[(int) (x / 40)], 0.01));
        double[] at = IntStream.range(0, 42).mapToDouble(i -> 20 * i).toArray();

        float[] row = row(wood, 26.5, 0.5, 0.8, 1, at);

        int sure = 0;
        for (int i = 0; i < at.length; i++) {
            double alone = wood.chance(new Region(at[i], 0, at[i] + 120, 160), 26.5, 0.5);
            assertTrue(row[i] <= alone + 1e-6, i + ": " + row[i] + " of " + alone);
            assertTrue(row[i] >= Math.min(alone, 0.8) - 0.02 - 1e-6, i + ": " + row[i] + " of " + alone);
            assertEquals(alone > 0, row[i] > 0, i + ": " + row[i] + " of " + alone);
            sure += alone > 0 ? 1 : 0;
        }
        assertTrue(sure >= 10 && sure <= 32, sure + " of 42 are sure");
    }

    // Worked by hand: there is room up to where a piece ends with the board. A larger piece has none.
    @Test
    void onlyWhereThereIsRoomIsThereAChance() {
        BlankThickness wood = wood(KnownBoards.thinnerBy(0));
        ChanceTable table = new ChanceTable(wood, along(0, 400, 840, 841), across(0, 60, 61), 0.95, 1, raster(1));

        assertArrayEquals(new float[][] {{1, 1, 0}, {1, 1, 0}, {1, 1, 0}, {0, 0, 0}},
            table.of(new Piece(0, 120, 100, false), 29, List.of()));
        assertArrayEquals(new float[4][3], table.of(new Piece(0, 961, 100, false), 29, List.of()));
        assertArrayEquals(new float[4][3], table.of(new Piece(0, 120, 161, false), 29, List.of()));
    }

    // Worked by hand: a defect reaches from 520 to 600 mm along and from 100 to 120 mm across. A piece lies clear of it
    // where it ends at 520 mm, begins at 600 mm, or lies below 100 mm.
    @Test
    void nothingLiesOverADefect() {
        BlankThickness wood = wood(KnownBoards.thinnerBy(0));
        ChanceTable table = new ChanceTable(wood, along(0, 400, 401, 599, 600), across(0, 1, 60), 0.95, 1, raster(1));

        assertArrayEquals(new float[][] {{1, 1, 1}, {1, 1, 1}, {1, 0, 0}, {1, 0, 0}, {1, 1, 1}},
            table.of(new Piece(0, 120, 100, false), 29, List.of(new Defect(520, 100, 600, 120))));
        assertArrayEquals(new float[][] {{0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}},
            table.of(new Piece(0, 120, 100, false), 29, List.of(new Defect(0, 0, 960, 60))));
    }

    // Worked by hand: a wave rises by 2 mm in 40 mm and falls as fast. A piece of 20 mm rises by no more than 0.81 mm where
    // it reaches at most 16 mm before a crest and 16 mm behind: 7 of 20 stops. There are too many to look at each.
    @Test
    void whatIsNotLookedAtIsNeverPromised() {
        BlankThickness wood = wood(KnownBoards.twisting(160, x -> (int) (x / 40) % 2 == 0 ? x % 40 / 20 : 2 - x % 40 / 20, 0));
        double[] at = IntStream.range(0, 460).mapToDouble(i -> 2 * i).toArray();
        float[][] chance = new ChanceTable(wood, along(at), across(0), 1, 1, raster(1))
            .of(new Piece(0, 20, 160, false), 29.19, List.of());

        int sure = 0;
        int found = 0;
        for (int i = 0; i < at.length; i++) {
            double alone = wood.chance(new Region(at[i], 0, at[i] + 20, 160), 29.19, 1);
            assertTrue(chance[i][0] <= alone, "at " + at[i]);
            sure += alone > 0 ? 1 : 0;
            found += chance[i][0] > 0 ? 1 : 0;
        }
        assertEquals(460 * 7 / 20, sure, 3);
        assertTrue(found > sure / 4 && found < sure, found + " of " + sure);
    }
}
