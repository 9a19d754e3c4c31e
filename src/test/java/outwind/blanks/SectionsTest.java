package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which stops count, by hand, and the two nested programmes against a plain recursion over all stops. */
class SectionsTest {

    private static Stops everyTen(double to) {
        return new Stops(0, to, IntStream.range(0, (int) to / 10).mapToDouble(i -> 10 * i).toArray());
    }

    private static int[] stops(Sections sections) {
        return IntStream.range(0, sections.places()).map(sections::stop).toArray();
    }

    /** Blanks of 30 mm over 100 mm, without kerfs, with these chances in percent at stops 10 mm apart. */
    private static Sections along(int... percent) {
        float[][] chance = new float[10][1];
        for (int i = 0; i < percent.length; i++) {
            chance[i][0] = percent[i] / 100f;
        }
        return new Sections(List.of(new Piece(0, 30, 10, false)), new float[][][] {chance}, CutOrder.CROSSCUT_FIRST,
            everyTen(100), everyTen(10), 0);
    }

    /** The same across the one section of a board. */
    private static int[] across(int... percent) {
        float[][] chance = new float[1][10];
        for (int i = 0; i < percent.length; i++) {
            chance[0][i] = percent[i] / 100f;
        }
        return new Sections(List.of(new Piece(0, 10, 30, false)), new float[][][] {chance}, CutOrder.CROSSCUT_FIRST,
            everyTen(10), everyTen(100), 0).kinds().get(0).stops();
    }

    // Worked by hand. Equally sure everywhere, only what follows on from the near end counts: 0, 30, 60 and 90 mm. A stop
    // where a blank becomes surer than at the one before counts too, and what follows on from it; one that is less sure or
    // as sure does not.
    @Test
    void onlyStopsReachedFromSurerOnesCount() {
        int[][] percents = {
            {90, 90, 90, 90, 90, 90, 90, 90},
            {90, 90, 90, 90, 95, 95, 95, 95},
            {95, 95, 90, 90, 90, 90, 90, 90},
            {90, 90, 0, 0, 0, 90, 90, 90},
            {0, 90, 90, 90, 90, 90, 90, 90},
            {0, 0, 0, 0, 0, 0, 0, 90}};
        int[][] count = {{0, 3, 6, 9}, {0, 3, 4, 6, 7, 9}, {0, 3, 6, 9}, {0, 3, 5, 8}, {0, 1, 4, 7}, {0, 7}};
        for (int i = 0; i < percents.length; i++) {
            assertArrayEquals(count[i], stops(along(percents[i])), "row " + i);
            assertArrayEquals(count[i], across(percents[i]), "row " + i);
        }
    }

    // Worked by hand: of two blanks one becomes surer at 20 mm while the other becomes less sure.
    @Test
    void aStopCountsIfAnyBlankIsSurerThere() {
        float[][] falling = {{0.95f, 0.9f}, {0.95f, 0.9f}, {0.9f, 0.9f}, {0.9f, 0.9f}};
        float[][] rising = {{0.9f, 0.9f}, {0.9f, 0.9f}, {0.95f, 0.9f}, {0.95f, 0.9f}};
        List<Piece> pieces = List.of(new Piece(0, 30, 10, false), new Piece(1, 30, 10, false));

        Sections sections = new Sections(pieces, new float[][][] {falling, rising}, CutOrder.CROSSCUT_FIRST,
            everyTen(40), everyTen(20), 0);

        assertArrayEquals(new int[] {0, 2, 3}, stops(sections));
        assertEquals(2, sections.kinds().size());
        assertEquals(sections.kindAt(0, 1), sections.kindAt(0, 2));
    }

    // Worked by hand: sections of 30 and of 50 mm. The latter are of use only where the longer blank goes, at 0 mm.
    @Test
    void aLongerSectionIsOfUseOnlyWhereALongerBlankGoes() {
        float[][] shorter = {{1}, {1}, {1}, {1}, {1}, {1}, {0}, {0}};
        float[][] longer = {{1}, {0}, {0}, {0}, {0}, {0}, {0}, {0}};
        List<Piece> pieces = List.of(new Piece(4, 30, 10, false), new Piece(2, 50, 10, false));

        Sections sections = new Sections(pieces, new float[][][] {shorter, longer}, CutOrder.CROSSCUT_FIRST,
            everyTen(80), everyTen(10), 0);

        assertEquals(2, sections.classes());
        assertArrayEquals(new int[] {0, 3, 5, 6}, stops(sections));
        assertTrue(sections.kindAt(1, 0) >= 0);
        assertEquals(-1, sections.kindAt(1, 1));
        assertEquals(-1, sections.kindAt(1, 2));
        assertTrue(sections.kindAt(0, 2) >= 0);
        assertEquals(-1, sections.kindAt(0, 3));
        assertEquals(2, sections.behind(1, 0));
        assertEquals(1, sections.behind(0, 0));
        assertEquals(4, sections.item(0));
        // A section for the longer blank may hold the shorter one.
        assertArrayEquals(new int[] {0, 1}, sections.kinds().get(sections.kindAt(1, 0)).piece());
        assertArrayEquals(new int[] {0}, sections.kinds().get(sections.kindAt(0, 0)).piece());
    }

    /** Best value over all stops, by the definition alone. */
    private static double over(TwoStageTest.Case c, double[] price, CutOrder order) {
        Stops first = c.first(order);
        double[] best = new double[first.count() + 1];
        for (int u = first.count() - 1; u >= 0; u--) {
            best[u] = best[u + 1];
            for (Piece widest : c.pieces()) {
                double end = first.at()[u] + widest.first(order);
                if (end <= first.to()) {
                    best[u] = Math.max(best[u], within(c, price, order, u, widest.first(order))
                        + best[first.indexFrom(end + TwoStageTest.KERF)]);
                }
            }
        }
        return best[0];
    }

    private static double within(TwoStageTest.Case c, double[] price, CutOrder order, int u, double extent) {
        Stops second = c.second(order);
        double[] best = new double[second.count() + 1];
        for (int v = second.count() - 1; v >= 0; v--) {
            best[v] = best[v + 1];
            for (int p = 0; p < c.pieces().size(); p++) {
                Piece piece = c.pieces().get(p);
                float chance = c.chance(p, u, v, order);
                if (piece.first(order) <= extent && chance > 0) {
                    int next = second.indexFrom(second.at()[v] + piece.second(order) + TwoStageTest.KERF);
                    best[v] = Math.max(best[v], c.worth()[piece.item()] * chance - price[piece.item()] + best[next]);
                }
            }
        }
        return best[0];
    }

    // Reference: the recursion of the definition over all stops, on 100 made-up boards at made-up prices, both orders.
    @Test
    void theProgrammesAreExactAtAnyPrices() {
        SplittableRandom random = new SplittableRandom(41);
        for (int run = 0; run < 50; run++) {
            TwoStageTest.Case c = TwoStageTest.Case.random(random, 3, 150 + random.nextInt(100), 80 + random.nextInt(60), 11);
            double[] price = IntStream.range(0, 3).mapToDouble(i -> random.nextDouble() * c.worth()[i] * random.nextInt(2))
                .toArray();
            for (CutOrder order : CutOrder.values()) {
                Sections sections = c.sections(order);
                double expected = over(c, price, order);

                Sections.Filled filled = sections.filled(c.worth(), price);

                assertEquals(expected, filled.value(), 1e-9 * (1 + expected), run + " " + order);
                double gained = 0;
                for (TwoStage.Spot spot : sections.spots(filled)) {
                    Piece piece = c.pieces().get(spot.piece());
                    assertEquals(c.chance(spot.piece(), spot.first(), spot.second(), order), spot.chance());
                    gained += c.worth()[piece.item()] * spot.chance() - price[piece.item()];
                }
                assertEquals(expected, gained, 1e-6 * (1 + expected), run + " " + order);
            }
        }
    }

    // Identity: what is gained before a place and from it on is never more than the whole. At both ends it is as much.
    @Test
    void whatLiesBeforeAPlaceAndBehindItIsNeverMoreThanTheWhole() {
        SplittableRandom random = new SplittableRandom(42);
        for (int run = 0; run < 20; run++) {
            TwoStageTest.Case c = TwoStageTest.Case.random(random, 3, 200, 100, 11);
            Sections sections = c.sections(CutOrder.RIP_FIRST);
            Sections.Filled filled = sections.filled(c.worth(), new double[3]);

            double[] before = sections.before(filled);

            assertEquals(0, before[0]);
            assertEquals(filled.value(), before[sections.places()], 1e-9 * (1 + filled.value()));
            for (int i = 0; i <= sections.places(); i++) {
                double both = before[i] + filled.over().best()[i];
                assertTrue(both <= filled.value() * (1 + 1e-9), run + " " + i);
                assertTrue(i == 0 || before[i] >= before[i - 1], run + " " + i);
            }
        }
    }
}
