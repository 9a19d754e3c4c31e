package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Length;
import outwind.board.Price;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;

/** Which thickness a board is best used for, against arithmetic by hand and enumeration. */
class UsesTest {

    private static final double AREA = 0.5e6;

    /** A board whose finished thickness is one of these, each as likely (mm). */
    private static PricedBoard board(String name, double... thicknesses) {
        return new PricedBoard(name, name, WoodKind.ANY, Verdict.NONE, OptionalDouble.empty(), OptionalDouble.empty(),
            new ThicknessRange(thicknesses), new BoardFeet(2500, 200, 30), AREA * 30, AREA * 25, AREA, OptionalDouble.empty(),
            Optional.empty(), Optional.empty());
    }

    private static Uses.Aim aim(double thickness, String price) {
        return new Uses.Aim(thickness, Optional.ofNullable(price).map(text -> Price.parse(text, false)));
    }

    // Worked by hand, wood per m²: half a chance of 26 mm is worth 13 mm, less than a sure 19; two in three are worth
    // 17.3, and so is less; three in four are 19.5 and more. A board that is sure to miss both is no use.
    @Test
    void withoutPricesMostWoodIsBest() {
        Uses uses = new Uses(new Stack(List.of(board("half", 25, 27), board("three of four", 25, 27, 27, 27),
            board("thin", 18, 18.5)), ""), List.of(aim(26, null), aim(19, null)));

        for (PricedBoard board : uses.stack().boards()) {
            assertEquals(switch (board.name()) {
                case "half" -> Optional.of(19.0);
                case "three of four" -> Optional.of(26.0);
                default -> Optional.<Double>empty();
            }, uses.best(board).map(Uses.Aim::thickness), board.name());
        }
        assertEquals(1, uses.bestFor(aim(26, null)));
        assertEquals((0.5 + 0.75) * 26 * AREA, uses.wood(aim(26, null)), 1e-6);
        assertEquals((19 + 0.75 * 26) * AREA, uses.bestWood(), 1e-6);
        assertEquals(19, uses.bestForAll().thickness());
    }

    // Worked by hand: 0.5 m² at 80 EUR, half a chance: 20 EUR, against 0.5 m² at 36: 18 EUR. By wood 19 mm is best.
    @Test
    void withPricesMostMoneyIsBest() {
        Uses.Aim thick = aim(26, "80 EUR per m2");
        Uses.Aim thin = aim(19, "36 EUR per m2");
        Uses uses = new Uses(new Stack(List.of(board("half", 25, 27)), "EUR"), List.of(thick, thin));

        assertEquals(20, uses.money(thick), 1e-9);
        assertEquals(18, uses.money(thin), 1e-9);
        assertEquals(Optional.of(thick), uses.best(uses.stack().boards().get(0)));
        assertEquals(20, uses.bestMoney(), 1e-9);
        assertTrue(uses.wood(thin) > uses.wood(thick));
    }

    // Worked by hand: 0.5 m² x 25.4 mm are 0.0127 m³, over 144 · 25.4³ mm³ 5.3820 board feet, at 12 each.
    @Test
    void aPriceCountsFinishedBoards() {
        Uses uses = new Uses(new Stack(List.of(board("sure", 28, 29)), ""), List.of(aim(25.4, "12 per bf")));

        assertEquals(64.58, uses.money(aim(25.4, "12 per bf")), 0.005);
    }

    // Reference: commons-math3 binomial, for boards alike.
    @Test
    void theRangeOfEachThicknessIsItsOwn() {
        Uses uses = new Uses(new Stack(IntStream.range(0, 12).mapToObj(i -> board("b" + i, 25, 27)).toList(), ""),
            List.of(aim(26, null), aim(19, null)));
        BinomialDistribution half = new BinomialDistribution(null, 12, 0.5);

        assertEquals(half.inverseCumulativeProbability(0.05), uses.fewest(aim(26, null)));
        assertEquals(half.inverseCumulativeProbability(0.95), uses.most(aim(26, null)));
        assertEquals(12, uses.fewest(aim(19, null)));
    }

    // Reference: enumeration of every way to give each of six boards one of three thicknesses.
    @Test
    void noOtherSortingBringsMore() {
        SplittableRandom random = new SplittableRandom(3);
        for (int run = 0; run < 20; run++) {
            List<PricedBoard> boards = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                boards.add(board("b" + i, random.doubles(9, 17, 30).sorted().toArray()));
            }
            List<Uses.Aim> aims = List.of(aim(26, "60 per m2"), aim(22, "900 per m3"), aim(18, "3 per bf"));
            Uses uses = new Uses(new Stack(boards, ""), aims);
            double most = 0;
            for (int way = 0; way < 729; way++) {
                double money = 0;
                int rest = way;
                for (PricedBoard board : uses.stack().boards()) {
                    money += uses.money(board, aims.get(rest % 3));
                    rest /= 3;
                }
                most = Math.max(most, money);
            }

            // What is left out as no use is worth less than a twentieth of a board.
            assertEquals(most, uses.bestMoney(), 0.05 * 6 * 60 * AREA / 1e6);
            assertTrue(uses.bestMoney() <= most + 1e-9 && uses.bestMoney() >= uses.money(uses.bestForAll()) - 2);
        }
    }

    // Source: the columns S2S_in of hardwood_thickness.csv and dry_in of softwood_ps20.csv; see the README beside them.
    @ParameterizedTest
    @CsvSource({"HARDWOOD, hardwood_thickness.csv, 3", "SOFTWOOD, softwood_ps20.csv, 2"})
    void standardThicknessesAreThoseOfTheRules(Surfaced standard, String file, int column) throws IOException {
        List<Double> expected = Files.readAllLines(Path.of("src/test/resources/lumber", file)).stream().skip(1)
            .filter(row -> !row.startsWith("width")).map(row -> Length.parse(row.split(",")[column], Units.INCHES)).toList();

        assertEquals(expected.size(), standard.thicknesses().size());
        for (int i = 0; i < expected.size(); i++) {
            assertEquals(expected.get(i), standard.thicknesses().get(i), 1e-9);
        }
    }

    // Worked by hand: 26 mm are 1.024 in: 13/16 is the thickest hardwood size below, 1 in the thickest softwood size.
    @Test
    void theThickestThatSomeBoardMakesAreCompared() {
        Stack stack = new Stack(List.of(board("a", 20, 21), board("b", 26, 26)), "");

        assertEquals(List.of(13.0 / 16, 9.0 / 16, 7.0 / 16, 5.0 / 16), Surfaced.HARDWOOD.within(stack).stream()
            .map(mm -> mm / 25.4).toList());
        assertEquals(25.4, Surfaced.SOFTWOOD.within(stack).get(0), 1e-9);
        assertEquals(1, Surfaced.SOFTWOOD.within(new Stack(List.of(board("shaving", 2, 3)), "")).size());
    }

    /** The same board judged for a thickness. */
    private static PricedBoard judged(PricedBoard board, double target, double chance) {
        return new PricedBoard(board.name(), board.file(), board.kind(), Verdict.of(chance), OptionalDouble.of(chance),
            OptionalDouble.of(target), board.finished(), board.feet(), board.roughVolume(), board.finishedVolume(),
            board.finishedArea(), board.minutes(), board.wood(), board.cost());
    }

    // Worked by hand: judged for 26 mm its chance is the verdict's, which knows more; for others it is half of its
    // range.
    @Test
    void theThicknessThatABoardWasJudgedForHasItsChance() {
        PricedBoard board = judged(board("judged", 25, 27), 26, 0.6);
        Uses uses = new Uses(new Stack(List.of(board), ""), List.of(aim(26, null), aim(25.5, null)));

        assertEquals(0.6, uses.chance(board, aim(26, null)), 0);
        assertEquals(0.5, uses.chance(board, aim(25.5, null)), 0);
        assertEquals(0.5, uses.chance(board("free", 25, 27), aim(26, null)), 0);
    }

    @Test
    void aStackIsJudgedForTheFirstThicknessIfEveryBoardIs() {
        PricedBoard first = judged(board("first", 25, 27), 26, 0.6);
        PricedBoard other = judged(board("other", 25, 27), 19, 0.6);
        List<Uses.Aim> aims = List.of(aim(26, null), aim(19, null));

        assertTrue(new Uses(new Stack(List.of(first, first), ""), aims).isJudgedForFirst());
        assertFalse(new Uses(new Stack(List.of(first, other), ""), aims).isJudgedForFirst());
        assertFalse(new Uses(new Stack(List.of(first, board("free", 25, 27)), ""), aims).isJudgedForFirst());
        assertFalse(new Uses(new Stack(List.of(other), ""), aims).isJudgedForFirst());
    }

    // Worked by hand: half of 0.5 m² brings 20 EUR at 26 mm, all of it 18 EUR at 19 mm; of wood there is more at 19 mm.
    @Test
    void thatWhichBringsMostIsBestForAll() {
        Uses.Aim thick = aim(26, "80 EUR per m2");
        Uses.Aim thin = aim(19, "36 EUR per m2");
        Stack stack = new Stack(List.of(board("half", 25, 27)), "EUR");

        assertEquals(thick, new Uses(stack, List.of(thin, thick)).bestForAll());
        assertEquals(aim(19, null), new Uses(stack, List.of(aim(26, null), aim(19, null))).bestForAll());
        assertEquals(thin, new Uses(stack, List.of(aim(26, null), thin)).bestForAll());
    }

    @Test
    void tooManyThicknessesAreRefused() {
        List<Uses.Aim> aims = IntStream.range(0, 5).mapToObj(i -> aim(20 + i, null)).toList();

        Stack stack = new Stack(List.of(board("b", 25)), "");

        assertEquals("between 1 and 4 targets can be compared, got 5",
            assertThrows(IllegalArgumentException.class, () -> new Uses(stack, aims)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> new Uses(stack, List.of()));
        assertEquals(4, new Uses(stack, aims.subList(0, 4)).aims().size());
    }
}
