package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShrinkageTest {

    // Wood Handbook FPL-GTR-190, tables 4-3 (shrinkage green to ovendry, percent) and 13-5 (change of dimension for one
    // percent of moisture). The two tables tell the same wood: at 10 %, halfway along the range of 13-5, the line of
    // 4-3 has the slope of 13-5, to the five decimals that are printed. Woods whose figures stand there for both cuts.
    @ParameterizedTest
    @CsvSource({
        "black walnut, 7.8, 0.00274", "American beech, 11.9, 0.00431", "black cherry, 7.1, 0.00248",
        "white ash, 7.8, 0.00274", "yellow birch, 9.5, 0.00338"})
    void lineThroughSaturationAgreesWithTheHandbooksChangeForOnePercent(String wood, double shrinks, double change) {
        Shrinkage line = new Shrinkage(shrinks / 100, 0.03, OptionalDouble.empty(), OptionalDouble.empty(),
            Optional.empty());

        assertEquals(change, (line.factor(new Moisture(10, 9)) - 1) / -1, 6e-6);
        assertEquals(shrinks / 100, Shrinkage.of(Optional.of(wood)).tangential(), 1e-12);
        assertEquals(change, Shrinkage.of(Optional.of(wood)).change().orElseThrow(), 1e-12);
    }

    // The same tables: white oak changes by 0.00365 of its width along the rings for each percent. Worked by hand: from
    // 12 to 8 % that is 0.0146.
    @Test
    void whiteOakLosesWhatTheHandbookSaysBetweenTwelveAndEightPercent() {
        assertEquals(1 - 0.0146, Shrinkage.of(Optional.of("White Oak")).factor(new Moisture(12, 8)), 1e-12);
    }

    // The same tables, at the ends of the range that 13-5 holds in: 0.00365 along the rings and 0.00180 across them,
    // for eight percent. Past that range the other table speaks.
    @Test
    void whiteOakChangesByTheHandbooksFiguresFromSixToFourteenPercent() {
        Shrinkage oak = Shrinkage.of(Optional.of("white oak"));

        assertEquals(1 - 8 * 0.00365, oak.factor(new Moisture(14, 6)), 1e-12);
        assertEquals(1 + 8 * 0.00180, oak.factor(new Moisture(6, 14)), 1e-12);
        assertEquals((1 - 0.105 * 24.1 / 30) / (1 - 0.105 * 16 / 30), oak.factor(new Moisture(14, 5.9)), 1e-12);
        assertEquals((1 - 0.105 * 24 / 30) / (1 - 0.105 * 15.9 / 30), oak.factor(new Moisture(14.1, 6)), 1e-12);
    }

    // Table 4-3: of the woods here American beech shrinks most along the rings, 11.9 %, eastern white pine least across
    // them, 2.1 %.
    @Test
    void woodThatIsNotKnownShrinksAsBeechAndSwellsAsWhitePine() {
        Shrinkage unknown = Shrinkage.of(Optional.empty());

        assertEquals(1 - 0.119, unknown.factor(new Moisture(30, 0)), 1e-12);
        assertEquals(1 / (1 - 0.021), unknown.factor(new Moisture(0, 30)), 1e-12);
    }

    // By definition of the two columns of table 4-3.
    @Test
    void greenToOvendryLosesTheWholeShrinkage() {
        assertEquals(1 - 0.105, Shrinkage.of(Optional.of("white oak")).factor(new Moisture(60, 0)), 1e-12);
    }

    // Wood Handbook, chapter 4: above fibre saturation wood does not shrink.
    @Test
    void wetterThanSaturatedItKeepsItsSize() {
        assertEquals(1, Shrinkage.of(Optional.of("cherry")).factor(new Moisture(80, 35)), 0);
    }

    // Identity: shrinking in two steps is shrinking in one, outside the table of one percent each.
    @Test
    void twoStepsAreOne() {
        Shrinkage pine = Shrinkage.of(Optional.of("ponderosa pine"));

        assertEquals(pine.factor(new Moisture(25, 5)),
            pine.factor(new Moisture(25, 15)) * pine.factor(new Moisture(15, 5)), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(strings = {"walnut", "oak", "maple", "redwood", "pine"})
    void woodThatIsNotKnownShrinksMoreAndSwellsLessThanAnyOther(String wood) {
        Moisture drying = new Moisture(20, 8);
        Moisture swelling = new Moisture(8, 20);

        assertTrue(Shrinkage.of(Optional.empty()).factor(drying)
            <= Shrinkage.of(Optional.of(wood)).factor(drying));
        assertTrue(Shrinkage.of(Optional.of("unheard-of")).factor(swelling)
            <= Shrinkage.of(Optional.of(wood)).factor(swelling));
    }

    // A name that several woods share stands for the one that shrinks most: white oak 10.5 %, northern red oak 8.6 %.
    @Test
    void oakAloneIsTheOakThatShrinksMost() {
        assertEquals(0.105, Shrinkage.of(Optional.of("oak")).tangential(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"-1, 8", "201, 8", "20, 201", "20, -1", "NaN, 8", "8, NaN"})
    void moistureNoWoodCanHaveIsRefused(double from, double to) {
        Exception refused = assertThrows(IllegalArgumentException.class, () -> new Moisture(from, to));

        assertEquals("moisture of wood is from 0 to 200 %, got " + from + " and " + to, refused.getMessage());
    }

    @Test
    void woodDriesWhereItEndsUpWithLessWater() {
        assertTrue(new Moisture(200, 0).dries());
        assertFalse(new Moisture(0, 200).dries());
        assertFalse(new Moisture(12, 12).dries());
    }
}
