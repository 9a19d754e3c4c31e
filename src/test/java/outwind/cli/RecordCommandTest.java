package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.Reading;
import outwind.board.TouchGrid;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.report.words.Figures;

/** Guided entry as it is typed: lines in; questions, a file and an exit code out. */
class RecordCommandTest {

    private static final String[] SIZES = {"--length", "1180", "--width", "212", "--thickness", "31.5", "--target",
        "26"};

    @TempDir
    private Path folder;

    private Path file;

    private record Run(int code, String out, String err) { }

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("board.csv");
    }

    private Run typed(String lines, String... options) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] args = Stream.concat(Stream.of("record", file.toString()), Arrays.stream(options))
            .toArray(String[]::new);
        int code = Main.run(new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)), new PrintWriter(out),
            new PrintWriter(err), args);
        return new Run(code, out.toString(), err.toString());
    }

    private String written() throws IOException {
        return Files.readString(file);
    }

    private List<Double> heights() throws IOException, BadBoardFile {
        return BoardFile.read(file, Defaults.NOTHING).readings().stream().map(Reading::z).toList();
    }

    /** Heights of a board with a little twist, at the places asked for; made up. */
    private static double height(double x, double y) {
        return Math.rint(100 * (1.5 * (x / 590 - 1) * (y / 106 - 1) + 0.4 * Math.pow(x / 590 - 1, 2))) / 100;
    }

    @Test
    void aDifferenceNeedsATouchOffBefore() throws IOException {
        Run run = typed("by 0.3\n1.5\nby 0.3\ndone\n", SIZES);

        assertTrue(run.out().contains("There is no reading to add to"), run.out());
        assertEquals(1, run.code(), "what a pipe typed was not all taken");
    }

    // A log whose last height is a slip, with an empty line after it or without.
    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "\n\n"})
    void aLogIsLookedAtHoweverItEnds(String end) {
        String log = tour().stream().map(spot -> spot.x() + " " + spot.y() + " " + height(spot.x(), spot.y()))
            .collect(Collectors.joining("\n"));

        Run run = typed(log + "\n590 106 4.7" + end, SIZES);

        assertTrue(run.out().replace('\n', ' ').contains("4.70"), run.out());
        assertTrue(run.out().contains("So far"), run.out());
    }

    @Test
    void whatWasNotTakenIsToldEvenQuietly() {
        Run run = typed("15 15 O.2\n15 106 0.2\n", Stream.concat(Arrays.stream(SIZES), Stream.of("--quiet"))
            .toArray(String[]::new));

        assertEquals(1, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains("O.2"), run.err());
    }

    /** A grid of five columns and three rows with the first three touched again. */
    private static List<TouchGrid.Spot> tour() {
        List<TouchGrid.Spot> tour = new ArrayList<>(new TouchGrid(1180, 212, 5, 3, 15).tour());
        tour.addAll(tour.subList(0, 3));
        return tour;
    }

    private static List<String> answers() {
        return tour().stream().map(spot -> String.valueOf(height(spot.x(), spot.y()))).toList();
    }

    @Test
    void aWholeBoardIsAskedForAndCanBeJudged() throws IOException, BadBoardFile {
        Run run = typed("\n1180\n212\n31.5 everywhere\n26\nwhite oak\n" + String.join("\n", answers()) + "\ndone\n");

        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertTrue(run.out().startsWith("""
            Unit, mm or in (Enter for mm):
            Length along the grain, mm:
            Width, mm:
            Rough thickness by caliper, mm:
            Thickness wanted, mm (Enter for none):
            Wood (Enter if it does not matter):
            18 places to measure. Heights in mm. Type help for what else you can type.
            1 of 18, x 15 y 15:
            """), run.out());
        TouchGrid.Spot third = tour().get(2);
        assertTrue(run.out().contains("18 of 18, x " + (int) third.x() + " y " + (int) third.y() + " again:\n"),
            run.out());
        assertTrue(run.out().contains("So far YES, chance of 26.0 mm over 99 %; about "), run.out());
        assertTrue(run.out().contains("That settles it: more readings would hardly change the verdict."),
            run.out());
        Board board = BoardFile.read(file, Defaults.NOTHING);
        assertEquals(18, board.readings().size());
        assertEquals("white oak", board.species().orElseThrow());
        // Every repeat was alike: the usual 0.08 mm counts for four, so sqrt(4 * 0.08² / (4 + 3)) by hand is 0.0605.
        assertTrue(written().contains("\n# repeatability: 0.06\n"), written());
        assertFalse(written().contains(",\n"), written());
        assertEquals(0, Main.run(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()), "judge",
            "--no-chart", "--out", folder.toString(), file.toString()));
    }

    @Test
    void nothingIsWiderThanATerminal() {
        Run run = typed(String.join("\n", answers()) + "\nlist\nwhy\nhelp\nnonsense\ndone\n", SIZES);

        run.out().lines().filter(line -> !line.contains(file.toString()))
            .forEach(line -> assertTrue(line.length() <= 80, line));
    }

    @Test
    void whatOptionsStateIsNotAskedFor() throws IOException {
        Run run = typed("", "--length", "46 1/2", "--width", "8", "--thickness", "1 1/4", "--units", "in", "--species",
            "ash", "--columns", "2", "--rows", "2", "--repeats", "0");

        assertTrue(run.out().startsWith("4 places to measure. Heights in inches."), run.out());
        assertTrue(written().startsWith("# units: in\n# length: 46 1/2\n# width: 8\n# thickness: 1 1/4\n"
            + "# species: ash\n"), written());
    }

    @Test
    void fractionsAndDifferencesAreTaken() throws IOException, BadBoardFile {
        typed("-5/64\nby 1/64\nb -1/32\n3/64 in\n", "--length", "46 1/2", "--width", "8", "--thickness", "1 1/4",
            "--units", "in");

        // By hand: -5/64, -4/64, -6/64 and 3/64 of 25.4 mm.
        double[] expected = {-1.984375, -1.5875, -2.38125, 1.190625};
        assertArrayEquals(expected, heights().stream().mapToDouble(z -> z).toArray(), 1e-12);
    }

    @Test
    void itGoesOnWhereTheInputEnded() throws IOException, BadBoardFile {
        typed("1\n1.1\n", SIZES);
        Run run = typed("1.2\nu\nu\n1.3\n1.4\n", SIZES);

        assertTrue(run.out().replace('\n', ' ').startsWith("2 readings are in " + file + ", 16 places to measure."),
            run.out());
        assertEquals(List.of(1.0, 1.3, 1.4), heights());
    }

    @Test
    void aHeightFarFromWhatTheOthersPredictIsAskedForAgain() throws IOException, BadBoardFile {
        List<String> lines = new ArrayList<>(answers());
        double right = Double.parseDouble(lines.get(12));
        lines.set(12, (right + 9) + "\n" + (right + 8) + "\n" + (right + 8));

        Run run = typed(String.join("\n", lines) + "\n", SIZES);

        assertEquals(2, run.out().split("I expected between ", -1).length - 1, run.out());
        assertTrue(run.out().replace('\n', ' ').contains("mm. If it is right, type it again; then an earlier one may be"
            + " wrong. 13 of 18,"), run.out());
        assertEquals(right + 8, heights().get(12));
        assertEquals(18, heights().size());
        assertTrue(run.out().replace('\n', ' ').contains("looks wrong: the other readings point to"), run.out());
    }

    @Test
    void aRepeatThatContradictsTheFirstTouchIsToldWithWhatWasRead() {
        List<String> lines = new ArrayList<>(answers());
        lines.set(15, "3.5");

        Run run = typed(String.join("\n", lines), SIZES);

        assertTrue(run.out().replace('\n', ' ').contains("You read " + Figures.decimals(height(15, 15), 2)
            + " mm here before. I expected between"), run.out());
    }

    @Test
    void placesAreSkippedJumpedToTouchedAgainAndNoted() throws IOException {
        typed("s\n0.1\nagain\n0.12\nagain 2\n0.13\nnote a knot, sound\ng 18\n0.2\nlist\n", SIZES);

        List<String> places = tour().stream().map(spot -> (int) spot.x() + "," + (int) spot.y() + ",").toList();
        List<String> lines = Files.readAllLines(file);
        assertEquals(List.of(places.get(0) + ",skipped", places.get(1) + "0.1", places.get(1) + "0.12",
            places.get(1) + "0.13,\"a knot, sound\"", places.get(17) + "0.2"), lines.subList(lines.size() - 5,
            lines.size()));
    }

    @Test
    void rowsOfAMachinesLogAreTakenAsTheyAre() throws IOException, BadBoardFile {
        String log = Files.readAllLines(Path.of("sample-probes/hall-table.csv")).stream()
            .filter(line -> line.matches("[\\d.]+,.*"))
            .map(line -> line.replace(',', ' ')).collect(Collectors.joining("\n"));

        Run run = typed(log, SIZES);

        assertEquals(15, heights().size());
        assertEquals(List.of(0.5, -0.3, -0.71), heights().subList(0, 3));
        assertTrue(run.out().contains("So far YES"), run.out());
        assertFalse(run.out().contains("I expected"), run.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"20,15,-0.3", "20;15;-0.3", "20\t15\t-0.3", "  20   15 -0.3 ", "20, 15, -0.3"})
    void aRowMayBeSeparatedAsItLikes(String row) throws IOException {
        typed(row + "\n", SIZES);

        assertTrue(written().endsWith("\n20,15,-0.3\n"), written());
    }

    // At the prompt a comma parts nothing, so that it can only be a decimal mark.
    @ParameterizedTest
    @ValueSource(strings = {"-0,3", "15 15 -0,3", "15;15;-0,3", "15,0 15,0 -0,3"})
    void aDecimalCommaIsReadAtThePrompt(String line) throws IOException {
        typed(line + "\n", SIZES);

        assertTrue(written().endsWith("\n15,15,-0.3\n"), written());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1300 15 0.2", "20 213 0.2", "1,165 15 0.2", "x", "1 2 3 4", "5/64", "by", "go 40", "go", "note",
        "undo", "by up"})
    void whatCannotBeTakenIsSaidAndNothingIsWritten(String line) throws IOException {
        typed("", SIZES);
        String before = written();

        Run run = typed(line + "\n", SIZES);

        assertEquals(before, written());
        assertEquals(2, run.out().split("1 of 18, x 15 y 15:\n", -1).length - 1, run.out());
        assertFalse(run.out().contains("Exception"), run.out());
        assertEquals("", run.err());
    }

    @Test
    void onceAllIsTouchedItGoesWhereOneMoreTellsMost() throws IOException {
        Files.writeString(file, Files.readString(Path.of("sample-probes/hall-table.csv")).replace("target: 26",
            "target: 28.75"));

        Run run = typed("-1.4\n");

        Matcher place = Pattern.compile("The best one to add is x (\\d+) y (\\d+). It narrows")
            .matcher(run.out());
        assertTrue(place.find(), run.out());
        assertTrue(written().endsWith("\n" + place.group(1) + "," + place.group(2) + ",-1.4\n"), written());
    }

    @Test
    void aFinishedFileIsGoneOnWithAndKeepsItsHeader() throws IOException, BadBoardFile {
        String before = Files.readString(Path.of("sample-probes/window-sill-semicolon.csv"));
        Files.writeString(file, before);
        int readings = heights().size();

        Run run = typed("100 20 0.5\n110,5 20 0,4\n120;20;0,45\n");

        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(0.5, 0.4, 0.45), heights().subList(readings, readings + 3));
        before.lines().forEach(line -> assertTrue(writtenLines().contains(line), line));
    }

    private List<String> writtenLines() {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void aFormWithEmptyHeightsIsFilledInPlaceByPlace() throws IOException, BadBoardFile {
        Files.writeString(file, "# length: 600\n# width: 150\nx,y,z,thickness\n"
            + "20,15,,\n580,15,,\n580,135,,\n20,15,,\n");

        Run run = typed("30\n\n\n0.1\n0.2\n0.3\n0.1\ndone\n");

        assertTrue(run.out().contains("4 of 4, x 20 y 15 again:"), run.out());
        assertEquals(List.of(0.1, 0.2, 0.3, 0.1), heights());
        assertEquals(30, BoardFile.read(file, Defaults.NOTHING).thickness().getAsDouble());
    }

    @Test
    void theSameCommandLineTwicePlansNothingTwice() throws IOException {
        String[] options = Stream.concat(Arrays.stream(SIZES), Stream.of("--columns", "5", "--rows", "3"))
            .toArray(String[]::new);
        typed("0.1\n", options);
        String before = written();

        typed("", options);

        assertEquals(before, written());
    }

    @Test
    void withoutSizesNothingIsWritten() {
        Run run = typed("\n1180\nwide\n");

        assertEquals(1, run.code());
        assertEquals(file + ": nothing is written before the board's length, width and thickness are known\n",
            run.err());
        assertTrue(run.out().contains("expected width in mm but found \"wide\""), run.out());
        assertFalse(Files.exists(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--columns=many", "--columns=1", "--length=long", "--inset=wide", "--repeats=few",
        "--length=0mm"})
    void aBadCommandLineExitsWithTwo(String option) {
        Run run = typed("1\n", "--width", "212", "--thickness", "31.5", option,
            option.startsWith("--length") ? "--target=26" : "--length=1180");

        assertEquals(2, run.code(), run.err());
        assertFalse(Files.exists(file));
    }

    @Test
    void aFileThatIsNoBoardExitsWithOneAndIsLeftAsItIs() throws IOException {
        Files.writeString(file, "# lenght: 1180\n");

        Run run = typed("1\n", SIZES);

        assertEquals(1, run.code());
        assertTrue(run.err().contains("Did you mean length?"), run.err());
        assertEquals("# lenght: 1180\n", written());
    }

    @Test
    void impossibleHeightsAreSaidAndKept() throws IOException, BadBoardFile {
        Run run = typed("0\n0\n0\n0\n0\n0\n0\n0\n", "--length", "1180", "--width", "212", "--thickness", "0.1");

        assertEquals(8, heights().size());
        assertEquals("", run.err());
    }
}
