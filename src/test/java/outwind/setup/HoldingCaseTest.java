package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.Units;

class HoldingCaseTest {

    private static Board board(double length, double width) {
        return Board.untouched("board", Units.MILLIMETRES, length, width, OptionalDouble.of(30), OptionalDouble.empty());
    }

    private static List<HoldingCase> cases(double length, double width, double finished, OptionalDouble cup) {
        return HoldingCase.of(board(length, width), finished, cup, OptionalDouble.of(40));
    }

    // Common practice, round figures.
    @ParameterizedTest
    @CsvSource({"1200, 200, 26, 0, ''", "1700, 200, 26, 0, LONG_AND_THIN", "600, 200, 11, 0, THIN",
        "250, 200, 20, 0, SMALL", "600, 60, 20, 0, SMALL", "1200, 200, 26, -1.5, CUPPED"})
    void eachCaseHasItsBound(double length, double width, double finished, double cup, String expected) {
        assertEquals(expected.isEmpty() ? List.of() : List.of(HoldingCase.valueOf(expected)),
            cases(length, width, finished, OptionalDouble.of(cup)));
    }

    @Test
    void aCupThatIsNotKnownIsNoCase() {
        assertEquals(List.of(), cases(1200, 200, 26, OptionalDouble.empty()));
    }
}
