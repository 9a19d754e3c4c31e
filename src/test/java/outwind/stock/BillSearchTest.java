package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import outwind.blanks.CutOrder;
import outwind.blanks.Piece;
import outwind.blanks.Saw;
import outwind.blanks.Sections;
import outwind.blanks.Stops;
import outwind.blanks.TwoStage;

/** Bills against stacks of made-up boards, compared with every pattern there is. */
class BillSearchTest {

    private static final double KERF = 3;

    /** A small board: where each piece may begin. */
    private record SmallBoard(List<Piece> pieces, boolean[][][] good, Stops along, Stops across) {

        static SmallBoard random(SplittableRandom random, List<Piece> pieces) {
            Saw saw = new Saw(KERF, 0, 17);
            Stops along = Stops.of(0, 80 + random.nextInt(70), saw, List.of(), List.of(), List.of());
            Stops across = Stops.of(0, 50 + random.nextInt(40), saw, List.of(), List.of(), List.of());
            boolean[][][] good = new boolean[pieces.size()][along.count()][across.count()];
            for (int p = 0; p < pieces.size(); p++) {
                for (int x = 0; x < along.roomFor(pieces.get(p).along()); x++) {
                    for (int y = 0; y < across.roomFor(pieces.get(p).across()); y++) {
                        good[p][x][y] = random.nextInt(3) > 0;
                    }
                }
            }
            return new SmallBoard(pieces, good, along, across);
        }

        BoardYield yield(double[] areas) {
            float[][][] chance = new float[good.length][along.count()][across.count()];
            for (int p = 0; p < good.length; p++) {
                for (int x = 0; x < along.count(); x++) {
                    for (int y = 0; y < across.count(); y++) {
                        chance[p][x][y] = good[p][x][y] ? 1 : 0;
                    }
                }
            }
            return new BoardYield(pieces, areas, new Sections(pieces, chance, CutOrder.CROSSCUT_FIRST, along, across,
                KERF), new Sections(pieces, chance, CutOrder.RIP_FIRST, along, across, KERF));
        }

        /** Every pattern in either order, as counts of each item. */
        Set<List<Integer>> patterns(int items) {
            Set<List<Integer>> patterns = new HashSet<>();
            for (CutOrder order : CutOrder.values()) {
                Set<List<Integer>> seen = new HashSet<>();
                section(order, 0, new int[items], patterns, seen);
            }
            return patterns;
        }

        private void section(CutOrder order, int u, int[] counts, Set<List<Integer>> patterns,
                Set<List<Integer>> seen) {
            Stops first = order == CutOrder.CROSSCUT_FIRST ? along : across;
            List<Integer> state = new ArrayList<>(Arrays.stream(counts).boxed().toList());
            patterns.add(List.copyOf(state));
            state.add(u);
            if (u >= first.count() || !seen.add(state)) {
                return;
            }
            section(order, u + 1, counts, patterns, seen);
            for (double extent : pieces.stream().mapToDouble(piece -> piece.first(order)).distinct().toArray()) {
                Set<List<Integer>> inside = new HashSet<>();
                fill(order, u, extent, 0, new int[counts.length], inside);
                for (List<Integer> more : inside) {
                    int[] sum = counts.clone();
                    Arrays.setAll(sum, i -> sum[i] + more.get(i));
                    section(order, first.indexFrom(first.at()[u] + extent + KERF), sum, patterns, seen);
                }
            }
        }

        private void fill(CutOrder order, int u, double extent, int v, int[] counts, Set<List<Integer>> inside) {
            Stops second = order == CutOrder.CROSSCUT_FIRST ? across : along;
            inside.add(Arrays.stream(counts).boxed().toList());
            if (v >= second.count()) {
                return;
            }
            fill(order, u, extent, v + 1, counts, inside);
            for (int p = 0; p < pieces.size(); p++) {
                boolean lies = order == CutOrder.CROSSCUT_FIRST ? good[p][u][v] : good[p][v][u];
                if (lies && pieces.get(p).first(order) <= extent) {
                    counts[pieces.get(p).item()]++;
                    fill(order, u, extent, second.indexFrom(second.at()[v] + pieces.get(p).second(order) + KERF),
                        counts, inside);
                    counts[pieces.get(p).item()]--;
                }
            }
        }
    }

    private record Case(List<SmallBoard> boards, double[] cost, int[] wanted, double[] areas) {

        static Case random(SplittableRandom random) {
            return random(random, 0);
        }

        /** @param boards how many; two to four where that is zero */
        static Case random(SplittableRandom random, int boards) {
            int items = 2 + random.nextInt(2);
            List<Piece> pieces = new ArrayList<>();
            double[] areas = new double[items];
            for (int i = 0; i < items; i++) {
                double along = 30 + random.nextInt(7) * 10;
                double across = 20 + random.nextInt(3) * 10;
                pieces.add(new Piece(i, along, across, false));
                areas[i] = along * across;
            }
            List<SmallBoard> small = IntStream.range(0, boards > 0 ? boards : 2 + random.nextInt(3))
                .mapToObj(j -> SmallBoard.random(random, pieces)).toList();
            return new Case(small, small.stream().mapToDouble(b -> 5 + random.nextInt(20)).toArray(),
                IntStream.range(0, items).map(i -> 1 + random.nextInt(boards > 4 ? 12 : 4)).toArray(), areas);
        }

        Optional<BillSearch.Answer> cheapest() {
            return BillSearch.cheapest(yields(), cost, wanted, areas, Optional.empty());
        }

        List<BoardYield> yields() {
            return boards.stream().map(board -> board.yield(areas)).toList();
        }

        double costOf(BillSearch.Answer answer) {
            return answer.patterns().keySet().stream().mapToDouble(j -> cost[j]).sum();
        }

        /**
         * The same by trying every pattern of every board after every other: exact, and the same each time. ojAlgo once
         * in some hundred runs calls an answer optimal that is not.
         */
        OptionalDouble byTryingAll(boolean mayBeShort) {
            Map<List<Integer>, Double> costs = new HashMap<>();
            costs.put(Arrays.stream(wanted).boxed().toList(), 0.0);
            for (int j = 0; j < boards.size(); j++) {
                Map<List<Integer>, Double> next = new HashMap<>(costs);
                for (List<Integer> pattern : boards.get(j).patterns(wanted.length)) {
                    double more = mayBeShort ? 0 : cost[j];
                    costs.forEach((left, spent) -> next.merge(IntStream.range(0, wanted.length)
                        .mapToObj(i -> Math.max(0, left.get(i) - pattern.get(i))).toList(), spent + more, Math::min));
                }
                costs = next;
            }
            return costs.entrySet().stream()
                .map(end -> new double[] {IntStream.range(0, wanted.length)
                    .mapToDouble(i -> end.getKey().get(i) * areas[i]).sum(), end.getValue()})
                .filter(end -> mayBeShort || end[0] == 0).mapToDouble(end -> mayBeShort ? end[0] : end[1]).min();
        }

        /** The integer programme over every pattern: least cost, or least area that is short whatever it costs. */
        OptionalDouble byIntegerProgramme(boolean mayBeShort) {
            ExpressionsBasedModel model = new ExpressionsBasedModel();
            Expression[] items = new Expression[wanted.length];
            for (int i = 0; i < items.length; i++) {
                items[i] = model.newExpression("item" + i).lower(wanted[i]);
                if (mayBeShort) {
                    items[i].set(model.newVariable("short" + i).lower(0).weight(areas[i]), 1);
                }
            }
            for (int j = 0; j < boards.size(); j++) {
                Expression once = model.newExpression("once" + j).upper(1);
                int p = 0;
                for (List<Integer> pattern : boards.get(j).patterns(wanted.length)) {
                    Variable x = model.newVariable("x" + j + "_" + p++).binary().weight(mayBeShort ? 0 : cost[j]);
                    once.set(x, 1);
                    for (int i = 0; i < items.length; i++) {
                        items[i].set(x, pattern.get(i));
                    }
                }
            }
            Optimisation.Result result = model.minimise();
            return result.getState().isFeasible() ? OptionalDouble.of(result.getValue()) : OptionalDouble.empty();
        }
    }

    private static void assertMeets(Case c, Map<Integer, Yield.Pattern> patterns, int run) {
        int[] cut = new int[c.wanted.length];
        patterns.forEach((j, pattern) -> {
            assertTrue(c.boards.get(j).patterns(cut.length).contains(Arrays.stream(pattern.counts()).boxed().toList()),
                "run " + run);
            Arrays.setAll(cut, i -> cut[i] + pattern.counts()[i]);
        });
        for (int i = 0; i < cut.length; i++) {
            assertTrue(cut[i] >= c.wanted[i], "run " + run + " " + Arrays.toString(cut));
        }
    }

    // Reference: every pattern of every board, listed by enumeration, and every way to combine them. ojAlgo,
    // ExpressionsBasedModel.minimise, is held to the same patterns below.
    @Tag("long")
    @Test
    void smallStacksAreCutAsAnIntegerProgrammeOverEveryPatternCutsThem() {
        SplittableRandom random = new SplittableRandom(41);
        int met = 0;
        int best = 0;
        int proven = 0;
        for (int run = 0; run < 100; run++) {
            Case c = Case.random(random);
            OptionalDouble expected = c.byTryingAll(false);

            Optional<BillSearch.Answer> answer = c.cheapest();

            if (expected.isEmpty()) {
                assertEquals(Optional.empty(), answer, "run " + run);
                continue;
            }
            met++;
            assertTrue(answer.isPresent(), "run " + run);
            assertMeets(c, answer.get().patterns(), run);
            double cost = c.costOf(answer.get());
            assertTrue(answer.get().bound() <= expected.getAsDouble() + 1e-6, "run " + run);
            assertTrue(cost >= expected.getAsDouble() - 1e-6, "run " + run);
            best += cost <= expected.getAsDouble() + 1e-6 ? 1 : 0;
            proven += cost <= answer.get().bound() + 1e-6 ? 1 : 0;
        }
        // Each lies within the gap that is stated; that hardly any lies above the least is what the search is for.
        assertTrue(met > 40, met + " met");
        assertTrue(best >= 0.97 * met, best + " of " + met + " cost least");
        assertTrue(proven >= 0.95 * met, proven + " of " + met + " are proven");
    }

    // Reference: as above. The search alone answered one small stack in 26 dearer than need be, and left gaps open.
    @Test
    void aFewBoardsAreAlwaysCutAtLeastCostAndForTheMost() {
        SplittableRandom random = new SplittableRandom(46);
        int met = 0;
        for (int run = 0; run < 150; run++) {
            Case c = Case.random(random);
            SmallStack small = SmallStack.of(c.yields(), c.wanted, c.areas).orElseThrow();

            Map<Integer, Yield.Pattern> cheapest = small.cheapest(c.wanted, c.cost).orElseThrow();
            int[] left = small.most(c.areas).orElseThrow().left();

            OptionalDouble expected = c.byTryingAll(false);
            assertEquals(expected.isPresent(), !cheapest.isEmpty(), "run " + run);
            if (expected.isPresent()) {
                met++;
                assertMeets(c, cheapest, run);
                assertEquals(expected.getAsDouble(), cheapest.keySet().stream().mapToDouble(j -> c.cost[j]).sum(),
                    1e-6, "run " + run);
            }
            double missed = IntStream.range(0, left.length).mapToDouble(i -> left[i] * c.areas[i]).sum();
            assertEquals(c.byTryingAll(true).orElseThrow(), missed, 1e-4, "run " + run);
            assertTrue(c.byIntegerProgramme(true).orElseThrow() >= missed - 1e-4, "run " + run);
            assertTrue(c.byIntegerProgramme(false).orElse(Double.MAX_VALUE) >= expected.orElse(0) - 1e-6, "run " + run);
        }
        assertTrue(met > 60, met + " met");
    }

    // A stack was cut worse than its boards one by one: in 9 of 30 bills on one board, and once it found no way at all.
    @Tag("long")
    @Test
    void noStackIsCutWorseThanItsBoardsOneByOne() {
        SplittableRandom random = new SplittableRandom(47);
        int met = 0;
        for (int run = 0; run < 120; run++) {
            Case c = Case.random(random, run % 3 == 0 ? 1 : 8 + random.nextInt(3));
            StackPlan.Found found = StackPlan.found(c.yields(), c.cost, c.wanted, c.areas, c.areas);

            int[] left = c.wanted.clone();
            double cost = 0;
            for (int j = 0; j < c.boards.size() && Arrays.stream(left).sum() > 0; j++) {
                Yield.Pattern pattern = asAloneCut(c, j, left);
                cost += pattern.spots().isEmpty() ? 0 : c.cost[j];
                Arrays.setAll(left, i -> Math.max(0, left[i] - pattern.counts()[i]));
            }

            int[] open = c.wanted.clone();
            found.patterns().values().forEach(pattern -> Arrays.setAll(open, i -> Math.max(0, open[i]
                - pattern.counts()[i])));
            assertTrue(sum(open, c.areas) <= sum(left, c.areas) + 1e-9, "run " + run);
            if (Arrays.stream(left).sum() == 0) {
                met++;
                assertTrue(found.patterns().keySet().stream().mapToDouble(j -> c.cost[j]).sum() <= cost + 1e-9,
                    "run " + run);
            }
        }
        assertTrue(met > 50, met + " met");
    }

    private static double sum(int[] left, double[] areas) {
        return IntStream.range(0, left.length).mapToDouble(i -> left[i] * areas[i]).sum();
    }

    /** The better of both orders, each searched to the end, as for a board by itself. */
    private static Yield.Pattern asAloneCut(Case c, int board, int[] left) {
        Yield.Pattern best = null;
        SmallBoard small = c.boards.get(board);
        for (CutOrder order : CutOrder.values()) {
            float[][][] chance = new float[small.good.length][small.along.count()][small.across.count()];
            for (int p = 0; p < chance.length; p++) {
                for (int x = 0; x < chance[p].length; x++) {
                    for (int y = 0; y < chance[p][x].length; y++) {
                        chance[p][x][y] = small.good[p][x][y] ? 1 : 0;
                    }
                }
            }
            List<TwoStage.Spot> spots = TwoStage.priced(new Sections(small.pieces, chance, order, small.along,
                small.across, KERF), c.areas, left).searched(0).spots();
            Yield.Pattern pattern = Yield.Pattern.of(order, spots, spots.stream()
                .map(spot -> small.pieces.get(spot.piece()).item()).toList(), left.length);
            best = best == null || pattern.worth(c.areas) > best.worth(c.areas) ? pattern : best;
        }
        return best;
    }

    // Reference: as above, by what is short, weighed by area.
    @Tag("long")
    @Test
    void whereTheBillCannotBeMetAsMuchAsPossibleIs() {
        SplittableRandom random = new SplittableRandom(42);
        int shorts = 0;
        int best = 0;
        for (int run = 0; run < 60; run++) {
            Case c = Case.random(random);
            double expected = c.byTryingAll(true).orElseThrow();

            BillSearch.Answer answer = BillSearch.most(c.yields(), c.wanted, c.areas);

            double missed = 0;
            for (int i = 0; i < c.wanted.length; i++) {
                int item = i;
                int cut = answer.patterns().values().stream().mapToInt(pattern -> pattern.counts()[item]).sum();
                missed += c.areas[i] * Math.max(0, c.wanted[i] - cut);
            }
            assertTrue(answer.bound() <= expected + 1e-6, "run " + run);
            assertTrue(missed >= expected - 1e-6, "run " + run);
            shorts += expected > 1 ? 1 : 0;
            best += missed <= expected + 1e-6 ? 1 : 0;
        }
        assertTrue(shorts > 12, shorts + " short");
        assertTrue(best >= 58, best + " of 60 are short of least");
    }

    // Identity: boards enough for the bill each by itself; the cheapest of them is the answer, and that is proven.
    @Test
    void whereOneBoardWillDoTheCheapestIsTaken() {
        SplittableRandom random = new SplittableRandom(43);
        int alone = 0;
        for (int run = 0; run < 60; run++) {
            Case c = Case.random(random);
            Arrays.setAll(c.wanted, i -> i == 0 ? 1 : 0);
            double[] able = IntStream.range(0, c.cost.length).filter(j -> c.boards.get(j).patterns(c.wanted.length)
                .stream().anyMatch(pattern -> pattern.get(0) > 0)).mapToDouble(j -> c.cost[j]).toArray();
            Optional<BillSearch.Answer> answer = c.cheapest();

            assertEquals(able.length > 0, answer.isPresent(), "run " + run);
            if (answer.isPresent()) {
                alone++;
                assertEquals(1, answer.get().patterns().size(), "run " + run);
                assertEquals(Arrays.stream(able).min().getAsDouble(), c.costOf(answer.get()), "run " + run);
                assertEquals(c.costOf(answer.get()), answer.get().bound(), 1e-6, "run " + run);
            }
        }
        assertTrue(alone > 30, alone + " to look at");
    }

    // Identity: every board twice at the same cost and the bill twice cost no more than twice as much, by the bound.
    @Tag("long")
    @Test
    void twiceTheBillFromTwiceTheStackCostsAtMostTwiceAsMuch() {
        SplittableRandom random = new SplittableRandom(44);
        int met = 0;
        for (int run = 0; run < 40; run++) {
            Case c = Case.random(random);
            Optional<BillSearch.Answer> once = c.cheapest();
            List<SmallBoard> boards = new ArrayList<>(c.boards);
            boards.addAll(c.boards);
            double[] cost = IntStream.range(0, boards.size()).mapToDouble(j -> c.cost[j % c.cost.length]).toArray();

            Optional<BillSearch.Answer> twice = new Case(boards, cost,
                Arrays.stream(c.wanted).map(d -> 2 * d).toArray(), c.areas).cheapest();

            if (once.isPresent()) {
                met++;
                assertTrue(twice.isPresent(), "run " + run);
                assertTrue(twice.get().bound() <= 2 * c.costOf(once.get()) + 1e-6, "run " + run);
            }
        }
        assertTrue(met > 15, met + " to look at");
    }

    @Test
    void theSameAnswerComesOutTwice() {
        SplittableRandom random = new SplittableRandom(45);
        Case c = Case.random(random);
        while (c.cheapest().isEmpty()) {
            c = Case.random(random);
        }

        BillSearch.Answer once = c.cheapest().orElseThrow();
        BillSearch.Answer twice = c.cheapest().orElseThrow();

        assertEquals(once.patterns().keySet(), twice.patterns().keySet());
        once.patterns().forEach((j, pattern) -> assertEquals(pattern.spots(), twice.patterns().get(j).spots()));
        assertEquals(once.bound(), twice.bound(), 0);
    }
}
