package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import outwind.blanks.TwoStage.Spot;

/** Layouts of made-up pieces against enumeration and against an independent integer programme. */
class TwoStageTest {

    static final double KERF = 3;

    /** A small cutting problem; chances are invented, as wood with good and bad places would give them. */
    record Case(List<Piece> pieces, double[] worth, int[] wanted, float[][][] chance, Stops along,
                        Stops across) {

        static Case random(SplittableRandom random, int items, double length, double width, double raster) {
            List<Piece> pieces = new ArrayList<>();
            double[] worth = new double[items];
            int[] wanted = new int[items];
            for (int i = 0; i < items; i++) {
                double along = 20 + random.nextInt(8) * 10;
                double across = 20 + random.nextInt(4) * 10;
                pieces.add(new Piece(i, along, across, false));
                if (random.nextInt(4) == 0 && along != across) {
                    pieces.add(new Piece(i, across, along, true));
                }
                worth[i] = random.nextBoolean() ? along * across : 1 + random.nextInt(20);
                wanted[i] = 1 + random.nextInt(3);
            }
            Saw saw = new Saw(KERF, 0, raster);
            Stops along = Stops.of(0, length, saw, List.of(), List.of(), List.of());
            Stops across = Stops.of(0, width, saw, List.of(), List.of(), List.of());
            float[][][] chance = new float[pieces.size()][along.count()][across.count()];
            for (int p = 0; p < pieces.size(); p++) {
                for (int x = 0; x < along.roomFor(pieces.get(p).along()); x++) {
                    for (int y = 0; y < across.roomFor(pieces.get(p).across()); y++) {
                        chance[p][x][y] = random.nextInt(3) == 0 ? 0 : (float) (0.95 + 0.01 * random.nextInt(6));
                    }
                }
            }
            return new Case(pieces, worth, wanted, chance, along, across);
        }

        TwoStage.Cutting solved(CutOrder order) {
            return priced(order).searched(0);
        }

        TwoStage priced(CutOrder order) {
            return TwoStage.priced(sections(order), worth, wanted);
        }

        Sections sections(CutOrder order) {
            return new Sections(pieces, chance, order, along, across, KERF);
        }

        float chance(int piece, int first, int second, CutOrder order) {
            return order == CutOrder.CROSSCUT_FIRST ? chance[piece][first][second] : chance[piece][second][first];
        }

        Stops first(CutOrder order) {
            return order == CutOrder.CROSSCUT_FIRST ? along : across;
        }

        Stops second(CutOrder order) {
            return order == CutOrder.CROSSCUT_FIRST ? across : along;
        }
    }

    /** Tries everything: at each stop nothing or a section of each extent, filled in every way. */
    static double enumerated(Case c, CutOrder order, int first, int[] left) {
        if (first >= c.first(order).count()) {
            return 0;
        }
        double best = enumerated(c, order, first + 1, left);
        for (double extent : c.pieces.stream().mapToDouble(piece -> piece.first(order)).distinct().toArray()) {
            int next = c.first(order).indexFrom(c.first(order).at()[first] + extent + KERF);
            if (c.first(order).at()[first] + extent <= c.first(order).to()) {
                best = Math.max(best, filled(c, order, first, extent, 0, left, next));
            }
        }
        return best;
    }

    private static double filled(Case c, CutOrder order, int first, double extent, int second, int[] left, int next) {
        if (second >= c.second(order).count()) {
            return enumerated(c, order, next, left);
        }
        double best = filled(c, order, first, extent, second + 1, left, next);
        for (int p = 0; p < c.pieces.size(); p++) {
            Piece piece = c.pieces.get(p);
            float chance = c.chance(p, first, second, order);
            if (piece.first(order) <= extent && chance > 0 && left[piece.item()] > 0) {
                left[piece.item()]--;
                int behind = c.second(order).indexFrom(c.second(order).at()[second] + piece.second(order) + KERF);
                best = Math.max(best, c.worth[piece.item()] * chance
                    + filled(c, order, first, extent, behind, left, next));
                left[piece.item()]++;
            }
        }
        return best;
    }

    // Reference: enumeration of every layout, 160 problems, both orders.
    @Test
    void smallProblemsAreSolvedAsEnumerationSolvesThem() {
        SplittableRandom random = new SplittableRandom(11);
        for (int run = 0; run < 80; run++) {
            Case c = Case.random(random, 2 + random.nextInt(2), 90 + random.nextInt(60), 60 + random.nextInt(40), 17);
            for (CutOrder order : CutOrder.values()) {
                double expected = enumerated(c, order, 0, c.wanted.clone());

                TwoStage.Cutting cutting = c.solved(order);

                assertTrue(cutting.isExact(), run + " " + order);
                assertEquals(expected, cutting.value(), 1e-6 * (1 + expected), run + " " + order);
                assertIsLayout(c, order, cutting, run);
            }
        }
    }

    // Reference: ojAlgo, ExpressionsBasedModel.maximise, with one binary variable for each section and each blank.
    @Test
    @Tag("long")
    void middlingProblemsAreSolvedAsAnIntegerProgrammeSolvesThem() {
        SplittableRandom random = new SplittableRandom(12);
        for (int run = 0; run < 40; run++) {
            Case c = Case.random(random, 3 + random.nextInt(2), 130 + random.nextInt(80), 70 + random.nextInt(40), 16);
            CutOrder order = CutOrder.values()[run % 2];
            double expected = byIntegerProgramme(c, order);

            TwoStage.Cutting cutting = c.solved(order);

            assertTrue(cutting.isExact(), run + " " + order);
            // The other solver stops within 1e-4 of its best (its default gap is relative).
            assertEquals(expected, cutting.value(), 1e-4 * (1 + expected), run + " " + order);
        }
    }

    private static double byIntegerProgramme(Case c, CutOrder order) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Expression[] items = new Expression[c.wanted.length];
        for (int i = 0; i < items.length; i++) {
            items[i] = model.newExpression("item" + i).upper(c.wanted[i]);
        }
        int stops = c.first(order).count();
        Expression[] over = new Expression[stops];
        Arrays.setAll(over, t -> model.newExpression("over" + t).upper(1));
        double[] extents = c.pieces.stream().mapToDouble(piece -> piece.first(order)).distinct().toArray();
        for (int e = 0; e < extents.length; e++) {
            for (int u = 0; u < stops; u++) {
                double begin = c.first(order).at()[u];
                if (begin + extents[e] > c.first(order).to()) {
                    continue;
                }
                Variable section = model.newVariable("s" + e + "_" + u).binary().weight(0);
                for (int t = u; t < c.first(order).indexFrom(begin + extents[e] + KERF); t++) {
                    over[t].set(section, 1);
                }
                addBlanks(model, c, order, items, section, extents[e], u);
            }
        }
        Optimisation.Result result = model.maximise();
        assertTrue(result.getState().isOptimal(), result.toString());
        return result.getValue();
    }

    private static void addBlanks(ExpressionsBasedModel model, Case c, CutOrder order, Expression[] items,
            Variable section, double extent, int u) {
        Stops second = c.second(order);
        Expression[] within = new Expression[second.count()];
        for (int t = 0; t < within.length; t++) {
            within[t] = model.newExpression(section.getName() + "w" + t).upper(0).set(section, -1);
        }
        for (int p = 0; p < c.pieces.size(); p++) {
            Piece piece = c.pieces.get(p);
            for (int v = 0; v < second.count() && piece.first(order) <= extent; v++) {
                float chance = c.chance(p, u, v, order);
                if (chance > 0) {
                    Variable blank = model.newVariable(section.getName() + "b" + p + "_" + v).binary()
                        .weight(c.worth[piece.item()] * chance);
                    items[piece.item()].set(blank, 1);
                    for (int t = v; t < second.indexFrom(second.at()[v] + piece.second(order) + KERF); t++) {
                        within[t].set(blank, 1);
                    }
                }
            }
        }
    }

    private static void assertIsLayout(Case c, CutOrder order, TwoStage.Cutting cutting, int run) {
        int[] cut = new int[c.wanted.length];
        double value = 0;
        int section = -1;
        double sectionEnd = Double.NEGATIVE_INFINITY;
        double end = 0;
        double blankEnd = 0;
        for (TwoStage.Spot spot : cutting.spots()) {
            Piece piece = c.pieces.get(spot.piece());
            double begin = c.first(order).at()[spot.first()];
            if (spot.first() != section) {
                section = spot.first();
                sectionEnd = end;
                blankEnd = Double.NEGATIVE_INFINITY;
                assertTrue(begin >= sectionEnd + (value > 0 ? KERF : 0), "sections meet in " + run);
            }
            double across = c.second(order).at()[spot.second()];
            assertTrue(across >= blankEnd + KERF, "blanks meet in " + run);
            blankEnd = across + piece.second(order);
            end = Math.max(end, begin + piece.first(order));
            value += c.worth[piece.item()] * c.chance(spot.piece(), spot.first(), spot.second(), order);
            cut[piece.item()]++;
        }
        assertEquals(cutting.value(), value, 1e-9 * (1 + value), "value of " + run);
        for (int i = 0; i < cut.length; i++) {
            assertTrue(cut[i] <= c.wanted[i], "too much of item " + i + " in " + run);
        }
    }

    // Identity: no order of search may promise less than it holds, nor call exact what it did not prove. With a floor
    // only what is above it matters: then the answer is the same, or both answer and bound lie below the floor.
    @Test
    void aFloorNeverHidesABetterAnswer() {
        SplittableRandom random = new SplittableRandom(13);
        for (int run = 0; run < 40; run++) {
            Case c = Case.random(random, 3, 150, 80, 16);
            double value = c.solved(CutOrder.RIP_FIRST).value();
            double floor = value * (0.8 + 0.4 * random.nextDouble());

            TwoStage.Cutting cutting = c.priced(CutOrder.RIP_FIRST).searched(floor);

            assertTrue(cutting.bound() >= value * (1 - 1e-9), run + "");
            assertTrue(floor > value || cutting.value() >= value * (1 - 1e-9), run + "");
        }
    }

    // Chances strewn at random over many stops: more than can be searched to the end.
    @Test
    void theBoundIsNeverBelowTheValue() {
        Case c = Case.random(new SplittableRandom(14), 8, 500, 150, 10);

        TwoStage.Cutting cutting = c.solved(CutOrder.RIP_FIRST);

        assertTrue(cutting.bound() > cutting.value());
    }

    @Test
    void nothingIsCutWhereNothingIsSure() {
        Case c = Case.random(new SplittableRandom(1), 2, 100, 60, 20);
        float[][][] none = new float[c.pieces.size()][c.along.count()][c.across.count()];

        TwoStage.Cutting cutting = TwoStage.priced(new Sections(c.pieces, none, CutOrder.RIP_FIRST, c.along, c.across,
            KERF), c.worth, c.wanted).searched(0);

        assertEquals(List.of(), cutting.spots());
        assertTrue(cutting.isExact());
    }

    /** Room for three blanks, one behind the other, all of item 0 or 1; chances of item 0 as given. */
    private static Sections threeInARow(double... chances) {
        float[][] first = new float[3][1];
        float[][] second = new float[3][1];
        for (int i = 0; i < 3; i++) {
            first[i][0] = (float) chances[i];
            second[i][0] = 1;
        }
        return new Sections(List.of(new Piece(0, 100, 100, false), new Piece(1, 100, 100, false)),
            new float[][][] {first, second}, CutOrder.CROSSCUT_FIRST, new Stops(0, 300, new double[] {0, 100, 200}),
            new Stops(0, 100, new double[] {0}), 0);
    }

    private static TwoStage priced(double[] from, int steps) {
        return TwoStage.priced(threeInARow(1, 1, 1), new double[] {10, 3}, new int[] {1, 1}, from, steps);
    }

    // Worked by hand: item 0 is worth 10 and item 1 is worth 3, of each one is wanted, and three blanks fit. The step is
    // (bound − value)/Σ excess², with 10 as the value of the first answer:
    //   prices 0 and 0:         three of item 0, bound 30; excess 2 and, since it is free, 0; step 20/4 = 5
    //   prices 10 and 0:        three of item 1, bound 3·3 + 10 = 19; excess −1 and 2; step 9/5
    //   prices 8.2 and 3.6:     three of item 0, bound 3·1.8 + 11.8 = 17.2; excess 2 and −1; step 7.2/5
    //   prices 11.08 and 2.16:  three of item 1, bound 3·0.84 + 13.24 = 15.76
    @Test
    void pricesFollowTheExcess() {
        double[][] prices = {{0, 0}, {10, 0}, {8.2, 3.6}, {11.08, 2.16}};
        double[] bounds = {30, 19, 17.2, 15.76};
        for (int steps = 1; steps <= 4; steps++) {
            TwoStage stage = priced(new double[2], steps);

            assertArrayEquals(prices[steps - 1], stage.prices(), 1e-9);
            assertEquals(bounds[steps - 1], stage.first().bound(), 1e-9);
            assertEquals(10, stage.first().value(), 1e-9);
            assertEquals(10, stage.firstValue(), 1e-9);
            assertEquals(List.of(new Spot(0, 0, 0, 1)), stage.first().spots());
        }
    }

    // Worked by hand: from those prices the same goes on, with 3 as the value of the first answer: a step of 16/5.
    @Test
    void pricesThatServedForSomethingAlikeComeFirst() {
        TwoStage first = priced(new double[] {10, 0}, 1);
        TwoStage second = priced(new double[] {10, 0}, 2);

        assertArrayEquals(new double[] {10, 0}, first.prices(), 1e-9);
        assertEquals(19, first.first().bound(), 1e-9);
        assertEquals(3, first.firstValue(), 1e-9);
        // Prices 6.8 and 6.4 are a worse bound, 3 · 3.2 + 13.2 = 22.8: the first ones stay.
        assertArrayEquals(new double[] {10, 0}, second.prices(), 1e-9);
        assertEquals(19, second.first().bound(), 1e-9);
    }

    // Worked by hand: one of each is worth 13, and by prices of 10 and 3 no answer is worth more.
    @Test
    void pricesCloseInOnTheirBestBound() {
        TwoStage stage = TwoStage.priced(threeInARow(1, 1, 1), new double[] {10, 3}, new int[] {1, 1});

        assertEquals(13, stage.first().bound(), 0.01);
        assertEquals(13, stage.searched(0).value(), 1e-9);
        assertEquals(13, stage.searched(0).bound(), 1e-9);
        assertEquals(13, stage.glimpsed().value(), 1e-9);
    }

    // Worked by hand: where nothing is cut too often the first answer is the best one, and one step shows it.
    @Test
    void enoughWantedOfEverythingNeedsNoPrices() {
        TwoStage stage = TwoStage.priced(threeInARow(0.96, 1, 0.98), new double[] {10, 3}, new int[] {3, 3}, new double[2], 1);

        assertEquals(10 * (0.96 + 1 + 0.98), stage.firstValue(), 1e-5);
        assertEquals(stage.firstValue(), stage.first().bound(), 0);
        assertArrayEquals(new double[2], stage.prices(), 0);
    }

    // Worked by hand: of three blanks that are cut two are wanted, and the surest two stay, in the order of their places.
    @Test
    void theSurestStayOfWhatIsTooMuch() {
        TwoStage.Cutting first = TwoStage.priced(threeInARow(0.98, 0.96, 1), new double[] {10, 3}, new int[] {2, 1},
            new double[2], 1).first();

        assertEquals(List.of(new Spot(0, 0, 0, 0.98f), new Spot(0, 2, 0, 1)), first.spots());
        assertEquals(19.8, first.value(), 1e-5);
        assertEquals(29.4, first.bound(), 1e-5);
    }

    @Test
    void pricesHandedOutAreACopy() {
        TwoStage stage = priced(new double[2], 2);

        stage.prices()[0] = 99;

        assertEquals(10, stage.prices()[0], 1e-9);
    }

    // Worked by hand: blanks lie in the order of their sections, then of their places within; 0.5 · 3 + 2 · 0.25 · 10 are 6.5.
    @Test
    void blanksArePutInOrder() {
        TwoStage.Cutting cutting = TwoStage.Cutting.of(List.of(new Spot(1, 2, 0, 0.5f), new Spot(0, 0, 1, 0.25f),
            new Spot(0, 0, 0, 0.25f)), threeInARow(1, 1, 1), new double[] {10, 3});

        assertEquals(List.of(0, 0, 2), cutting.spots().stream().map(Spot::first).toList());
        assertEquals(List.of(0, 1, 0), cutting.spots().stream().map(Spot::second).toList());
        assertEquals(6.5, cutting.value(), 1e-9);
        assertTrue(cutting.isExact());
        assertFalse(new TwoStage.Cutting(List.of(), 6.5, 6.6).isExact());
    }

    // Worked by hand: two blanks worth 1e9 are wanted, so that a gain of 2e9 · 1e-9 = 2 is rounding; the third place is left
    // free for 1.5, and taken for 2.5.
    @Test
    void gainsBelowRoundingAreNone() {
        double[] small = {1.5, 2.5};
        double[] expected = {2e9, 2e9 + 2.5};
        for (int i = 0; i < 2; i++) {
            TwoStage stage = TwoStage.priced(threeInARow(1, 1, 1), new double[] {1e9, small[i]}, new int[] {2, 1});

            TwoStage.Cutting cutting = stage.searched(0);

            assertEquals(expected[i], cutting.value(), 1e-3);
            assertTrue(cutting.isExact());
        }
    }
}
