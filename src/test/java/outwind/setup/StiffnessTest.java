package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.numeric.plate.Rigidity;

class StiffnessTest {

    // Wood Handbook (FPL-GTR-190), as copied in species.csv with the evidence for each figure there: modulus of
    // elasticity at 12 % (MPa) and the lesser of its ratios across.
    @ParameterizedTest
    @CsvSource({"black walnut, black walnut, 11600, 0.056", "Walnut, black walnut, 11600, 0.056",
        "White Oak, white oak, 12300, 0.072", "red oak, northern red oak, 12500, 0.082",
        "oak, white oak, 12300, 0.072", "Ash, white ash, 12000, 0.080", "cherry, black cherry, 10300, 0.086",
        "Quercus rubra, northern red oak, 12500, 0.082", "hard maple, sugar maple (hard), 12600, 0.065",
        "maple, red maple (soft), 11300, 0.067", "yellow poplar, yellow-poplar, 10900, 0.043",
        "DOUGLAS FIR, Douglas-fir (coast), 13400, 0.050", "red cedar, western redcedar, 7700, 0.055",
        "redwood, redwood (old-growth), 9200, 0.087", "slash pine, slash pine (southern), 13700, 0.045"})
    void woodsAreFoundByTheNamesPeopleUse(String asked, String wood, double along, double ratio) {
        Stiffness found = Stiffness.of(Optional.of(asked));

        assertEquals(Optional.of(wood), found.wood());
        assertEquals(along, found.along());
        assertEquals(ratio * along, found.across(), 1e-9 * along);
    }

    // The table has neither ratio for beech; the cautious 0.05 is ours.
    @Test
    void woodWithoutRatioOnRecordGetsTheCautiousOne() {
        Stiffness beech = Stiffness.of(Optional.of("beech"));

        assertEquals(0.05 * 11900, beech.across(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "purpleheart", "white", "?"})
    void unknownWoodIsTakenAsSofterThanUsual(String asked) {
        Stiffness cautious = Stiffness.of(Optional.of(asked));

        assertTrue(cautious.wood().isEmpty());
        assertEquals(9000, cautious.along());
        assertEquals(cautious, Stiffness.of(Optional.empty()));
    }

    // Worked by hand: gravity 0.68 on ovendry weight and volume at 12 % is 680·1.12 = 761.6 kg/m³ with its water.
    @Test
    void densityCountsTheWater() {
        assertEquals(761.6, Stiffness.of(Optional.of("white oak")).density(), 1e-9);
    }

    // Worked by hand: h³/12 = 2250 for 30 mm; E 9000, 450, G 540 MPa; 1 − 0.45²·0.05 = 0.989875.
    @Test
    void boardIsAPlate() {
        Rigidity plate = Stiffness.of(Optional.empty()).plate(30);

        assertEquals(9000 * 2250 / 0.989875, plate.dx(), 1e-3);
        assertEquals(450 * 2250 / 0.989875, plate.dy(), 1e-3);
        assertEquals(0.45 * 450 * 2250 / 0.989875, plate.d1(), 1e-3);
        assertEquals(540 * 2250, plate.dxy(), 1e-3);
    }

    @Test
    void woodWithoutStiffnessIsRefused() {
        Exception refused = assertThrows(IllegalArgumentException.class,
            () -> new Stiffness(0, 450, 540, 0.45, 450, Optional.empty()));

        assertEquals("wood needs positive moduli and density, got along=0.0, across=450.0, shear=540.0, poisson=0.45,"
            + " density=450.0", refused.getMessage());
    }

    // ν_LT·ν_TL = ν²·across/along must stay under 1, or some bending would take no work.
    @ParameterizedTest
    @CsvSource({"9000, 0, 540, 0.45, 450", "9000, 450, 0, 0.45, 450", "9000, 450, 540, 0.45, 0",
        "9000, 450, 540, 4.5, 450", "9000, 36000, 540, 0.5, 450", "NaN, 450, 540, 0.45, 450"})
    void woodThatGivesWithoutAForceIsRefused(double along, double across, double shear, double poisson,
            double density) {
        assertThrows(IllegalArgumentException.class,
            () -> new Stiffness(along, across, shear, poisson, density, Optional.empty()));
    }

    // Plies crossed so that it is stiffer across: 0.45²·10000 = 2025, under 9000.
    @Test
    void woodMayBeStifferAcrossThanAlong() {
        assertEquals(10_000, new Stiffness(9000, 10_000, 540, 0.45, 450, Optional.empty()).across());
    }
}
