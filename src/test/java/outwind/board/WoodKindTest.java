package outwind.board;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WoodKindTest {

    private static WoodKind kind(String species, String grade) {
        return new WoodKind(Optional.ofNullable(species), Optional.ofNullable(grade));
    }

    // Worked by hand: an empty cell of the bill takes any board, a filled one only boards that say the same.
    @ParameterizedTest
    @CsvSource({"White  Oak, , white oak, , true", "oak, , white oak, , false", ", , oak, , false", "oak, , , , true",
        ", , , , true", "oak, select, oak, Select, true", "oak, , oak, select, false", "oak, select, oak, , true",
        "oak, select, , common, false"})
    void aBoardServesWhatItIsKnownToBe(String species, String grade, String wanted, String sorted, boolean serves) {
        assertEquals(serves, kind(species, grade).serves(kind(wanted, sorted)));
    }
}
