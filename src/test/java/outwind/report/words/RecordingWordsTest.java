package outwind.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Units;
import outwind.board.file.Recording;
import outwind.surface.PredictedHeight;

/** What is said while a board is touched off, each figure worked by hand. */
class RecordingWordsTest {

    private final RecordingWords words = new RecordingWords(new Figures(Units.MILLIMETRES));

    @TempDir
    private Path folder;

    private static String plain(String said) {
        return said.replaceAll("[\\s\u00a0]+", " ");
    }

    private Recording recording(int readings, int places) throws Exception {
        StringBuilder file = new StringBuilder("# length: 900\n# width: 180\n# thickness: 30\nx,y,z\n");
        for (int k = 0; k < places; k++) {
            file.append(100 * k).append(",20,").append(k < readings ? "0." + k : "").append('\n');
        }
        return Recording.read(Files.writeString(folder.resolve("board.csv"), file));
    }

    // 1.2 ± 3 · 0.1 mm.
    @Test
    void whatIsUnexpectedLiesOutsideTheBoundOnBothSides() {
        PredictedHeight predicted = new PredictedHeight(1.2, 0.1);

        assertEquals("I expected between 0.90 and 1.50 mm. If it is right, type it again; then an earlier one may be wrong.",
            plain(words.unexpected(predicted, 3, OptionalDouble.empty())));
        assertTrue(plain(words.unexpected(predicted, 3, OptionalDouble.of(0.75))).startsWith("You read 0.75 mm here"
            + " before. I expected"));
    }

    @ParameterizedTest
    @CsvSource({"0, '4 places to measure. '", "1, '1 reading is in b.csv, 3 places to measure. '",
        "4, '4 readings are in b.csv. '"})
    void aRecordingBeginsWithWhatIsLeft(int readings, String begun) throws Exception {
        assertEquals(begun + "Heights in millimetres. Type help for what else you can type.",
            plain(words.beginning(recording(readings, 4), "b.csv")).replace("Heights in mm.", "Heights in millimetres."));
    }

    // Three readings are the fewest that a plane goes through.
    @ParameterizedTest
    @CsvSource({"1, 1 reading is, false", "2, 2 readings are, false", "3, 3 readings are, true"})
    void itEndsWithHowToGoOn(int readings, String count, boolean judged) throws Exception {
        assertEquals(count + " in b.csv.\n" + (judged ? "Judge it: outwind judge b.csv\n" : "")
            + "Go on: outwind record b.csv", words.ending(recording(readings, 4), "b.csv"));
    }
}
