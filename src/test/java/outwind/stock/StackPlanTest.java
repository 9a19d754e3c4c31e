package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.blanks.BlankPlan;
import outwind.blanks.BlankPlanTest;
import outwind.blanks.Saw;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.shop.SawLimits;
import outwind.surface.ShapeOf;

class StackPlanTest {

    private static final double SURE = 0.95;

    private static BillItem item(String name, double length, double width, double thickness, int quantity) {
        return new BillItem(name, length, width, thickness, quantity, OptionalDouble.empty(), false);
    }

    private static Board flat(double length, double width, Defect... defects) {
        ShapeOf shape = new ShapeOf(length, width, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        return BlankPlanTest.with(shape.read(5, 3, (x, y) -> 0), defects);
    }

    private static StackPlan.Candidate candidate(Board board, String cost) {
        double rough = board.length() * board.width() * 30;
        PricedBoard priced = new PricedBoard("board", "board.csv", WoodKind.ANY, Verdict.NONE, OptionalDouble.empty(),
            OptionalDouble.empty(), new ThicknessRange(new double[] {29}), new BoardFeet(board.length(), board.width(), 30), rough, rough, 1,
            OptionalDouble.of(1),
            Optional.ofNullable(cost).map(BigDecimal::new), Optional.of(new BigDecimal("1000")));
        return new StackPlan.Candidate(board, priced, Saw.usual(board), 0.3);
    }

    private static StackPlan plan(List<StackPlan.Candidate> stack, BillItem... items) {
        return StackPlan.of(stack, new CuttingBill(List.of(items)), SURE, 1);
    }

    // Worked by hand: each board gives one; the bill takes two, the cheapest are 10.10 and 10.25.
    @Test
    void theCheapestBoardsAreTakenAndTheirCostAddsUp() {
        StackPlan plan = plan(List.of(candidate(flat(500, 100), "30"), candidate(flat(500, 100), "10.10"),
            candidate(flat(500, 100), "12.40"), candidate(flat(500, 100), "10.25")), item("a", 500, 90, 20, 2));

        assertTrue(plan.isMet());
        assertEquals(new BigDecimal("20.35"), plan.cost());
        assertEquals(new BigDecimal("20.35"), plan.least());
        assertEquals(0, plan.gap(), 0);
    }

    private static Board of(String species, Board board) {
        return new Board(board.name(), board.units(), board.length(), board.width(), board.thickness(),
            Optional.ofNullable(species), board.repeatability(), board.price(), board.target(), board.skim(),
            board.trim(), board.underside(), board.turned(), board.defects(), board.readings(), board.calipers(),
            board.remarks());
    }

    private static BillItem in(String species, String name, double length, int quantity) {
        return new BillItem(name, length, 45, 20, quantity, OptionalDouble.empty(), false,
            new WoodKind(Optional.ofNullable(species), Optional.empty()));
    }

    // Worked by hand: the one ash board is cut to ash, the cheaper of the others to the row that takes any; walnut is
    // nowhere, and a board of unknown wood is no oak.
    @Test
    void aBoardServesOnlyItsOwnKind() {
        StackPlan plan = plan(List.of(candidate(of("ash", flat(500, 50)), "30"), candidate(of(null, flat(500, 50)), "8"),
            candidate(of("Oak", flat(500, 50)), "9"), candidate(of("oak", flat(500, 50)), "12")),
            in("ash", "rail", 480, 1), in("oak", "leg", 480, 2), in(null, "slat", 480, 1), in("walnut", "knob", 50, 3));

        assertEquals(new BigDecimal("59"), plan.cost());
        assertEquals(List.of(1, 2, 1, 0), List.of(plan.cut(0), plan.cut(1), plan.cut(2), plan.cut(3)));
        assertEquals(Optional.of(BlankPlan.Missing.OTHER_WOOD), plan.missing().get(3));
        for (StackPlan.BoardCut cut : plan.cuts()) {
            cut.layout().blanks().forEach(blank -> assertTrue(cut.board().kind().serves(
                plan.bill().items().get(blank.item()).kind())));
        }
    }

    // An identity: where every row names its wood, the mixed bill costs what the bills of each wood alone cost.
    @Tag("long")
    @Test
    void aMixedBillCostsWhatItsWoodsCostAlone() {
        SplittableRandom random = new SplittableRandom(606);
        for (int run = 0; run < 12; run++) {
            Map<String, List<StackPlan.Candidate>> stacks = new TreeMap<>();
            Map<String, List<BillItem>> bills = new TreeMap<>();
            for (String species : List.of("ash", "oak")) {
                for (int j = 0; j < 3; j++) {
                    stacks.computeIfAbsent(species, s -> new ArrayList<>()).add(candidate(of(species,
                        flat(400 + random.nextInt(500), 60 + random.nextInt(80))), "" + (10 + random.nextInt(20))));
                }
                for (int i = 0; i < 2; i++) {
                    bills.computeIfAbsent(species, s -> new ArrayList<>()).add(in(species, species + i,
                        150 + random.nextInt(250), 1 + random.nextInt(2)));
                }
            }
            BigDecimal apart = BigDecimal.ZERO;
            int cut = 0;
            for (String species : stacks.keySet()) {
                StackPlan alone = plan(stacks.get(species), bills.get(species).toArray(BillItem[]::new));
                apart = apart.add(alone.cost());
                cut += alone.cut();
            }

            StackPlan mixed = plan(stacks.values().stream().flatMap(List::stream).toList(),
                bills.values().stream().flatMap(List::stream).toArray(BillItem[]::new));

            assertEquals(cut, mixed.cut(), "run " + run);
            assertEquals(apart, mixed.cost(), "run " + run);
        }
    }

    // Worked by hand as in RecutTest: two stages leave seven pegs of fourteen beside the two rails, the offcut holds them.
    // No more boards are bought for it, and no claim is made that would hold for two stages alone.
    @Test
    void offcutsOfTheBoardsThatAreBoughtAreCutAgain() {
        Board board = flat(400, 124);
        BillItem[] items = {item("long rail", 390, 60, 20, 1), item("short rail", 150, 60, 20, 1), item("peg", 28, 18, 20, 14)};
        StackPlan.Candidate two = candidate(board, "10");
        StackPlan.Candidate again = new StackPlan.Candidate(board, two.priced(), new Saw(4, 0, 5, SawLimits.NONE, true), 0.3);
        StackPlan.Candidate once = new StackPlan.Candidate(board, two.priced(), new Saw(4, 0, 5), 0.3);

        StackPlan plan = plan(List.of(again), items);

        assertEquals(9, plan(List.of(once), items).cut());
        assertTrue(plan(List.of(once), items).isProvenShort());
        assertFalse(plan(List.of(once), items).recuts());
        assertEquals(16, plan.cut());
        assertTrue(plan.isMet());
        assertTrue(plan.recuts());
        assertFalse(plan.isProvenShort());
        assertEquals(new BigDecimal("10"), plan.cost());
        assertEquals(List.of(Optional.empty(), Optional.empty(), Optional.empty()), plan.missing());
        BlankPlanTest.assertIsCuttable(board, plan.cuts().get(0).layout(), 0);
    }

    // The same by two: with both long rails on one board all 18 pegs come out of the other, and offcuts hold more.
    @Test
    void nothingIsCutOutOfOffcutsBeyondWhatIsWanted() {
        Board board = flat(400, 124);
        StackPlan.Candidate again = new StackPlan.Candidate(board, candidate(board, "10").priced(),
            new Saw(4, 0, 5, SawLimits.NONE, true), 0.3);

        StackPlan plan = plan(List.of(again, again), item("long rail", 390, 60, 20, 2), item("short rail", 150, 60, 20, 2),
            item("peg", 28, 18, 20, 18));

        assertEquals(List.of(2, 2, 18), List.of(plan.cut(0), plan.cut(1), plan.cut(2)));
        assertTrue(plan.isMet());
    }

    // Worked by hand: without every price, wood counts: the smaller board does.
    @Test
    void withoutEveryPriceRoughWoodIsCounted() {
        StackPlan plan = plan(List.of(candidate(flat(900, 100), "1"), candidate(flat(600, 100), null)),
            item("a", 500, 90, 20, 1));

        assertEquals(StackPlan.Measure.ROUGH_WOOD, plan.measure());
        assertEquals(600 * 100 * 30, plan.cost().doubleValue(), 1e-6);
        assertEquals(1, plan.cuts().size());
    }

    // Worked by hand: two boards give one long blank each, three are wanted; the one that no board holds is listed apart.
    @Test
    void whatIsShortIsSaidWhy() {
        StackPlan plan = plan(List.of(candidate(flat(500, 100), "10"), candidate(flat(500, 100), "10")),
            item("long", 480, 90, 20, 3), item("too long", 501, 90, 20, 1), item("too thick", 200, 50, 31, 2));

        assertEquals(List.of(Optional.of(BlankPlan.Missing.NO_ROOM), Optional.of(BlankPlan.Missing.TOO_LARGE),
            Optional.of(BlankPlan.Missing.TOO_THICK)), plan.missing());
        assertEquals(2, plan.cut());
        assertFalse(plan.isMet());
        assertTrue(plan.isProvenShort());
        assertEquals(0, plan.more(), 1e-9);
    }

    // Properties, on twisted and kinked boards with defects: every blank is sure, every layout can be cut, nothing is
    // cut that is not wanted.
    @Test
    void noBlankFailsItsThicknessOrLiesOverADefectOrMeetsAnother() {
        SplittableRandom random = new SplittableRandom(51);
        int cut = 0;
        for (int run = 0; run < 4; run++) {
            List<StackPlan.Candidate> stack = new ArrayList<>();
            for (int j = 0; j < 5; j++) {
                double twist = 3 * random.nextDouble();
                double kink = 6 * random.nextDouble();
                ShapeOf shape = new ShapeOf(900, 180, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
                    ShapeOf.board().trim());
                double x = 800 * random.nextDouble();
                stack.add(candidate(BlankPlanTest.with(shape.read(6, 3, (u, v) -> shape.twist(twist).applyAsDouble(u, v)
                    + kink * Math.max(0, u / 900 - 0.6)), new Defect(x, 40, x + 60, 90)), "" + (10 + j)));
            }
            BillItem[] items = {item("a", 420, 80, 27.5, 4), item("b", 260, 60, 26 + 2.5 * random.nextDouble(), 6),
                item("c", 120, 45, 24, 8)};

            StackPlan plan = plan(stack, items);

            for (StackPlan.BoardCut board : plan.cuts()) {
                BlankPlanTest.assertIsCuttable(board.board(), board.layout(), run);
                cut += board.layout().blanks().size();
            }
            for (int i = 0; i < items.length; i++) {
                assertTrue(plan.cut(i) <= items[i].quantity(), "run " + run);
                assertEquals(plan.cut(i) == items[i].quantity(), plan.missing().get(i).isEmpty(), "run " + run);
            }
            assertTrue(plan.least().compareTo(plan.cost()) <= 0, "run " + run);
        }
        assertTrue(cut > 40, "only " + cut + " blanks to look at");
    }

    private static StackPlan.Found found(List<? extends Yield> boards, int... wanted) {
        double[] cost = IntStream.range(0, boards.size()).mapToDouble(j -> 3 + j).toArray();
        double[] areas = IntStream.range(0, wanted.length).mapToDouble(i -> 7).toArray();
        double[] worth = IntStream.range(0, wanted.length).mapToDouble(i -> 10).toArray();
        return StackPlan.found(boards, cost, wanted, areas, worth);
    }

    private static List<ListedBoard> boards(int count, int... way) {
        return Collections.nCopies(count, ListedBoard.of(way));
    }

    private static int[] counts(StackPlan.Found found) {
        return found.patterns().values().stream().mapToInt(pattern -> pattern.counts()[0]).toArray();
    }

    // Worked by hand, for a stack whose choices are all looked at and for a larger one: boards cost 3, 4, 5 and so on,
    // and each gives two blanks. Three blanks come out of the first two, and the third is cut to one.
    @ParameterizedTest
    @ValueSource(ints = {4, 9})
    void aBillThatComesOutIsCutFromTheCheapestBoards(int count) {
        StackPlan.Found found = found(boards(count, 2), 3);

        assertEquals(Set.of(0, 1), found.patterns().keySet());
        assertArrayEquals(new int[] {2, 1}, counts(found));
        assertEquals(7, found.bound(), 1e-9);
        assertEquals(0, found.more(), 0);
    }

    // Worked by hand: all boards together give one blank each, and cost 3 + 4 + … as many.
    @ParameterizedTest
    @CsvSource({"4, 18", "9, 63"})
    void ofABillThatDoesNotComeOutAsMuchAsDoesIsCut(int count, double cost) {
        StackPlan.Found found = found(boards(count, 1), 11);

        assertEquals(count, found.patterns().size());
        assertEquals(cost, found.bound(), 5e-4 * cost);
        assertTrue(found.bound() <= cost);
        assertEquals(0, found.more(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 9})
    void whereNothingIsWantedOrComesOutNothingIsCut(int count) {
        assertEquals(new StackPlan.Found(Map.of(), 0, 0), found(boards(count, 1), 0));
        assertEquals(new StackPlan.Found(Map.of(), 0, 0), found(boards(count, 0), 5));
    }

    // Worked by hand: nine boards give a blank each and claim that each might give 1.25. Of 12 that are wanted then
    // 11.25 might come out: the 2.25 beyond nine are worth 22.50. Of 11 all might: two more, for 20.
    @Test
    void whatMightComeOutBesideIsWhatTheBoundsLeaveOpen() {
        List<AskedBoard> loose = boards(9, 1).stream().map(board ->
            new AskedBoard(board, new ConcurrentLinkedQueue<>(), 1.25, false)).toList();

        assertEquals(22.5, found(loose, 12).more(), 1e-6);
        assertEquals(20, found(loose, 11).more(), 1e-6);
        assertEquals(9, found(loose, 11).patterns().size());
    }

    // Worked by hand: the search sees no way to cut these boards. One by one they give four blanks of six and four of
    // four. Nine boards give nine of the ten at most, so that one more may come out, for 10.
    @Test
    void whatIsCutOneByOneIsKeptWhereTheSearchFindsLess() {
        List<AskedBoard> blind = IntStream.range(0, 9).mapToObj(j -> new AskedBoard(
            ListedBoard.of(j < 4 ? new int[] {1, 0} : new int[] {0, 1}), new ConcurrentLinkedQueue<>(), 1, true))
            .toList();

        StackPlan.Found found = found(blind, 6, 4);

        assertEquals(Set.of(0, 1, 2, 3, 4, 5, 6, 7), found.patterns().keySet());
        assertEquals(10, found.more(), 1e-6);
    }

    // Worked by hand: one of three blanks is missing, a third of the bill's worth.
    @Test
    void shortIsProvenWhereLessMightComeOutThanIsMissing() {
        StackPlan plan = plan(List.of(candidate(flat(500, 100), "10"), candidate(flat(500, 100), "10")),
            item("long", 480, 90, 20, 3));

        assertTrue(with(plan, "18", 0.333).isProvenShort());
        assertFalse(with(plan, "18", 1.0 / 3).isProvenShort());
        assertFalse(with(plan, "18", 0.334).isProvenShort());
        assertEquals(0.1, with(plan, "18", 0).gap(), 1e-12);
    }

    private static StackPlan with(StackPlan plan, String least, double more) {
        return new StackPlan(plan.bill(), plan.sure(), plan.offered(), plan.cuts(), plan.measure(),
            new BigDecimal(least), plan.missing(), more);
    }

    // Worked by hand: nothing is bought, so that nothing can be saved.
    @Test
    void aStackOfWhichNothingIsCutHasNoGap() {
        StackPlan plan = plan(List.of(candidate(flat(500, 100), "10")), item("too long", 501, 90, 20, 1));

        assertEquals(List.of(), plan.cuts());
        assertEquals(0, plan.gap(), 0);
        assertEquals(0, plan.cost().signum());
    }

    // Worked by hand: boards that are all free are told apart by their wood.
    @Test
    void whereEveryBoardIsFreeRoughWoodIsCounted() {
        StackPlan plan = plan(List.of(candidate(flat(900, 100), "0"), candidate(flat(600, 100), "0.00")),
            item("a", 500, 90, 20, 1));

        assertEquals(StackPlan.Measure.ROUGH_WOOD, plan.measure());
        assertEquals(600 * 100 * 30, plan.cost().doubleValue(), 1e-6);
        assertEquals(StackPlan.Measure.MONEY, plan(List.of(candidate(flat(900, 100), "0"),
            candidate(flat(600, 100), "1")), item("a", 500, 90, 20, 1)).measure());
    }

    @Test
    void aChanceOutOfRangeIsRefused() {
        List<StackPlan.Candidate> stack = List.of(candidate(flat(500, 100), "10"));
        CuttingBill bill = new CuttingBill(List.of(item("a", 100, 50, 20, 1)));

        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class,
            () -> StackPlan.of(stack, bill, 0.2, 1));

        assertEquals("sure must be from 50 to 100 %, got 20.0 %", refused.getMessage());
    }
}
