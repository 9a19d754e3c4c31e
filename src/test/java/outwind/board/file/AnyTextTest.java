package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Fault;
import outwind.board.text.BadBoardFile;

/** Whatever the text, the answer is a board or a list of faults. */
class AnyTextTest {

    private static final int CASES = 4_000;

    private static final String VALID = """
        # board: shelf
        # units: mm
        # length: 1000
        # width: 200
        # thickness: 30
        # price: $9.50 per bf
        # skim: 0.3
        # trim: 20 x 5
        # turned: along
        # defect: 300 40 420 90
        x,y,z,thickness,face,note
        15,20,-0.4,31,A,"knot, loose"
        500,20,-1.10,,,
        985,180,1/4in,,B,
        985,180,0.1,30.5,,
        15,180,1e-1,30.4,a,
        985,20,0,30.9,,
        15,20,0.3,,B,
        985,20,-0.2,,B,
        -50,20,-31,,bed,
        """;

    private static final String CELLS = """
        # length: 1000,5
        # width: 200
        # thickness: 30
        y\\x;15,5;500;985
        20;-0,4;;0,1
        180;0,3;-1,1;
        """;

    private static final String POINTS =
        "# thickness: 30\n0 0 -0.4\n1000 200 0.1\n500.5 100 -1.1\n7 9 0\n";

    private static final List<String> PIECES = List.of("", ",", ";", "\t", " ", "\n", "\r", "\"", "\"\"", "#", ":",
        "# length: ", "# units: in\n", "# trim: ", "# defect: 1 1 1 1\n", "# skim: 1e3\n", "-", "/", "0", "9", "1 1/2",
        "1/0", "1e308", "-1e309", "1e-320", "99999999999999999999", "NaN", "Infinity", "x", "y\\x", "z (in)", "note",
        "bed", "mm", "per", "$", "\u0000", "\ufeff", "\u00a0", "\ud83d", "²", "٣");

    @ParameterizedTest
    @ValueSource(strings = {"shelf.csv", "cells.csv", "points.xyz"})
    void mutatedFileIsReadOrRefusedInWords(String fileName) {
        String valid = switch (fileName) {
            case "shelf.csv" -> VALID;
            case "cells.csv" -> CELLS;
            default -> POINTS;
        };
        Random random = new Random(20);
        int read = 0;
        int refused = 0;

        for (int i = 0; i < CASES; i++) {
            String text = mutated(valid, random);
            try {
                Board board = BoardFile.parse(fileName, text, Defaults.NOTHING);
                assertTrue(board.readingsOf(Face.A).size() >= 3, text);
                read++;
            } catch (BadBoardFile bad) {
                assertPlacesLieIn(text, bad);
                refused++;
            } catch (RuntimeException | StackOverflowError ours) {
                fail("case " + i + " of " + fileName + ":\n" + text, ours);
            }
        }

        // Both outcomes must be common, or the mutations test only one side.
        assertTrue(read > CASES / 50 && refused > CASES / 50, "read " + read + ", refused " + refused);
    }

    private static void assertPlacesLieIn(String text, BadBoardFile bad) {
        String[] lines = text.replaceFirst("^\ufeff", "").split("\r\n|\r|\n", -1);
        for (Fault fault : bad.faults()) {
            assertTrue(fault.line() >= 1 && fault.line() <= lines.length, () -> fault + "\n" + text);
            assertTrue(fault.column() >= 1 && fault.column() <= lines[fault.line() - 1].length() + 1,
                () -> fault + "\n" + text);
            assertEquals(2, fault.message().lines().count(), () -> fault.toString());
        }
    }

    /** The text with one to three pieces cut out, put in, doubled or swapped for others. */
    private static String mutated(String text, Random random) {
        StringBuilder mutated = new StringBuilder(text);
        int edits = 1 + random.nextInt(3);
        for (int i = 0; i < edits && mutated.length() > 0; i++) {
            int from = random.nextInt(mutated.length());
            int to = Math.min(mutated.length(), from + random.nextInt(random.nextInt(8) == 0 ? 60 : 4));
            String piece = random.nextInt(6) == 0
                ? mutated.substring(from, to).repeat(2)
                : PIECES.get(random.nextInt(PIECES.size()));
            mutated.replace(from, to, piece);
        }
        return mutated.toString();
    }
}
