package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.Place;
import outwind.board.text.BadBoardFile;
import outwind.board.text.TornTail;

class RecordingTest {

    private static final String KEYS = "# units: mm\n# length: 600\n# width: 150\n# thickness: 30 everywhere\n";
    private static final Place NEAR = new Place(20, 15);
    private static final Place MIDDLE = new Place(300, 15);
    private static final Place FAR = new Place(580, 15);

    private static Recording begun(Place... places) throws BadBoardFile {
        return Recording.of("b.csv", KEYS).planning(List.of(places));
    }

    private static String heights(Recording recording) {
        return recording.entries().stream().map(entry -> entry.height().isPresent()
            ? "" + entry.height().getAsDouble() : "left out").collect(Collectors.joining(" "));
    }

    @Test
    void aNewFilePlansItsPlacesAndHoldsWhatIsTouched() throws BadBoardFile {
        Recording recording = begun(NEAR, FAR).touched(NEAR, "-0.30");

        assertEquals(KEYS + TornTail.REMARK + "\nx,y,z,note\n20,15,\n580,15,\n20,15,-0.30\n", recording.text());
        assertEquals(OptionalInt.of(1), recording.next());
        assertEquals(-0.3, recording.board().readings().get(0).z());
    }

    @Test
    void aPlacePlannedTwiceIsTouchedTwice() throws BadBoardFile {
        Recording once = begun(NEAR, FAR, NEAR).touched(NEAR, "1").touched(FAR, "2");

        assertEquals(OptionalInt.of(2), once.next());
        assertTrue(once.plan().get(2).again());
        assertEquals(OptionalInt.empty(), once.touched(NEAR, "1.1").next());
    }

    @Test
    void afterAJumpItGoesOnFromThereAndThenFromTheBeginning() throws BadBoardFile {
        Recording jumped = begun(NEAR, MIDDLE, FAR).touched(MIDDLE, "0");

        assertEquals(OptionalInt.of(2), jumped.next());
        assertEquals(OptionalInt.of(0), jumped.touched(FAR, "0").next());
    }

    @Test
    void whatIsTakenBackCanBeTouchedOrLeftOut() throws BadBoardFile {
        Recording before = begun(NEAR, MIDDLE, FAR).touched(NEAR, "1");

        assertEquals(before.text(), before.touched(MIDDLE, "2").undone().orElseThrow().text());
        assertEquals(before.text(), before.skipped(MIDDLE).undone().orElseThrow().text());
        assertEquals("1.0 left out", heights(before.skipped(MIDDLE)));
        assertEquals(OptionalInt.of(2), before.skipped(MIDDLE).next());
        assertEquals(Optional.empty(), begun(NEAR).undone());
    }

    // One inch is 25.4 mm by definition; 5/64 and 46 1/2 of it by hand.
    @Test
    void fractionsOfInchesStayInTheFileAsTheyAreTyped() throws BadBoardFile {
        Recording recording = Recording.of("b.csv", "# units: in\n# length: 46 1/2\n# width: 8\n# thickness: 1 1/4 everywhere\n")
            .touched(new Place(25.4 * 0.625, 25.4 / 2), "-5/64").touched(new Place(25.4, 25.4), "3mm");

        assertEquals(46.5 * 25.4, recording.board().length());
        assertTrue(recording.text().endsWith("x,y,z,note\n0.625,0.5,-5/64\n1,1,3mm\n"), recording.text());
        assertEquals(-5 / 64.0 * 25.4, recording.board().readings().get(0).z());
        assertEquals(3, recording.board().readings().get(1).z());
    }

    @ParameterizedTest
    @CsvSource({"a knot, a knot", "'two, commas', 'two, commas'", "'so \"quoted\"', 'so \"quoted\"'",
        "'# units: in', 'units: in'", "'  tabs\tand  ', 'tabs and'",
        "a\u0085b, a b", "skipped, skipped", "'\"', '\"'"})
    void aNoteComesBackAsItWasTyped(String typed, String read) throws BadBoardFile {
        Recording noted = begun(NEAR).touched(NEAR, "1").noted(typed).orElseThrow();

        assertEquals(read, noted.entries().get(0).note());
        assertEquals(read, Recording.of("b.csv", noted.text()).board().readings().get(0).note());
    }

    @Test
    void aPlaceOffTheBoardAndAHeightThatIsNoneAreRefused() throws BadBoardFile {
        Recording recording = begun(NEAR);

        assertThrows(BadValue.class, () -> recording.touched(new Place(601, 15), "0"));
        assertThrows(BadValue.class, () -> recording.touched(new Place(600, 150.1), "0"));
        assertThrows(BadValue.class, () -> recording.touched(NEAR, "high"));
    }

    @Test
    void aFinishedFileIsGoneOnWithAndItsHeaderAndRemarksStay() throws BadBoardFile {
        String file = "# board: lid\r\n# a remark\r\n# length: 600\r\n"
            + "# width: 150\r\n# thickness: 30 everywhere\r\n\r\nz;y;x;face\r\n0,5;15;20;\r\n# halfway\r\n0,7;15;580;A";

        Recording more = Recording.of("b.csv", file).touched(MIDDLE, "0,6").noted("by hand").orElseThrow();

        assertEquals("# board: lid\r\n# a remark\r\n# length: 600\r\n# width: 150\r\n# thickness: 30 everywhere\r\n\r\n"
            + TornTail.REMARK + "\r\nz;y;x;face;note\r\n0,5;15;20;\r\n# halfway\r\n0,7;15;580;A\r\n"
            + "0,6;15;300;;by hand\r\n", more.text());
        assertEquals("0.5 0.7 0.6", heights(more));
    }

    @Test
    void undoStopsAtALineWithACaliperReading() throws BadBoardFile {
        Recording recording = Recording.of("b.csv", KEYS + "x,y,z,thickness\n20,15,0.1,30.2\n");

        assertEquals(Optional.empty(), recording.undone());
        assertTrue(recording.touched(FAR, "1").undone().isPresent());
    }

    @Test
    void aCaliperReadingAloneIsNoPlan() throws BadBoardFile {
        assertTrue(Recording.of("b.csv", KEYS + "x,y,z,thickness\n20,15,,30.2\n").plan().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"b.csv, 'y\\x,10,240\n10,0.28,-0.06\n', a table with the columns x",
        "b.xyz, '1 2 3\n', a file with a table"})
    void aFileThatTakesNoMoreRowsIsRefused(String name, String table, String expected) {
        BadBoardFile refused = assertThrows(BadBoardFile.class, () -> Recording.of(name, KEYS + table));

        assertTrue(refused.getMessage().contains("expected " + expected), refused.getMessage());
    }

    @Test
    void whatIsDoneLeavesThePlanAndTheRestStays() throws BadBoardFile {
        Recording recording = begun(NEAR, MIDDLE, FAR).touched(NEAR, "1").skipped(MIDDLE).tidied();

        assertTrue(recording.text().endsWith("x,y,z,note\n580,15,\n20,15,1\n300,15,,skipped\n"), recording.text());
        assertEquals(OptionalInt.of(0), recording.next());
    }

    @Test
    void aTornLineIsLeftOutOfARecordAndReadInAnyOtherFile(@TempDir Path folder) throws Exception {
        String rows = "x,y,z\n20,15,1\n580,15,2\n300,130,3\n300,15,-1.1";
        Path recorded = Files.writeString(folder.resolve("r.csv"), KEYS + TornTail.REMARK + "\n" + rows);
        Path other = Files.writeString(folder.resolve("o.csv"), KEYS + rows);

        Board torn = BoardFile.read(recorded, Defaults.NOTHING);

        assertEquals(3, torn.readings().size());
        assertEquals(List.of("The file's last line, \"300,15,-1.1\", does not end, as when the power fails while it is"
            + " written: it is left out. If it is whole, press Enter behind it in an editor."), torn.remarks());
        assertEquals("1.0 2.0 3.0", heights(Recording.read(recorded)));
        assertEquals(4, BoardFile.read(other, Defaults.NOTHING).readings().size());
    }

    @Test
    void aLineTornWithinALetterIsLeftOut(@TempDir Path folder) throws Exception {
        byte[] text = (KEYS + TornTail.REMARK + "\nx,y,z,note\n20,15,1\n580,15,2\n300,130,3\n300,15,1,\u00e9")
            .getBytes(StandardCharsets.UTF_8);
        Path file = Files.write(folder.resolve("r.csv"), Arrays.copyOf(text, text.length - 1));

        assertEquals(3, BoardFile.read(file, Defaults.NOTHING).readings().size());
    }

    @Test
    void theKeysOfATextAreKnownBeforeItIsWhole() {
        String form = "# units: in\n# length: 46 1/2\nx,y,z,thickness\n1,1,,\n";

        assertEquals("{length=46 1/2, units=in}", Recording.statedIn(form).toString());
        assertEquals("{length=46 1/2, thickness=, units=in}", Recording.statedIn(form + "2,1,,1 1/8\n").toString());
    }
}
