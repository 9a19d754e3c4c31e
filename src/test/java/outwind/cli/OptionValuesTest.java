package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import outwind.board.Board;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.json.JsonReport;
import outwind.report.text.DetailsReport;
import outwind.report.text.TextReport;
import outwind.report.words.Figures;
import outwind.setup.Push;
import outwind.shop.BedSize;
import outwind.shop.Cutter;
import outwind.shop.Shop;
import outwind.shop.Wedge;

/**
 * Every option of judge that has a value: in its unit it reaches the report, the details and the JSON.
 *
 * <p>The board is in inches, so that a bare number taken for mm shows. What is expected is asked for in code.
 */
class OptionValuesTest {

    private static final String BOARD = """
        # units: in
        # length: 40
        # width: 7
        # thickness: 1.25 everywhere
        # target: 1
        x,y,z
        0.5,0.5,0.08
        20,0.5,0
        39.5,0.5,-0.07
        0.5,6.5,-0.08
        20,6.5,0
        39.5,6.5,0.09
        """;

    @TempDir
    private static Path folder;

    /** A board, judged as it would be asked for in code. */
    private interface Expected extends Function<Board, Judgement> { }

    private static Arguments stated(String options, UnaryOperator<Board> stated) {
        return Arguments.of(options, (Expected) board -> Judgement.of(stated.apply(board),
            JudgeOptions.usual(stated.apply(board))));
    }

    private static Arguments asked(String options, UnaryOperator<JudgeOptions> asked) {
        return Arguments.of(options, (Expected) board -> Judgement.of(board, asked.apply(JudgeOptions.usual(board))));
    }

    private static Arguments cutter(String options, Cutter cutter) {
        return asked(options, usual -> usual.in(Shop.UNKNOWN.with(List.of(cutter))));
    }

    static Stream<Arguments> options() {
        return Stream.of(
            stated("--target 0.9", board -> board.withTarget(22.86)),
            stated("--target 22mm", board -> board.withTarget(22)),
            stated("--skim 0.02", board -> board.withSkim(0.508)),
            asked("--push 20lbf", usual -> usual.standing(new Push(20 * (0.45359237 * 9.80665), Push.USUAL.give()))),
            asked("--push 90", usual -> usual.standing(new Push(90, Push.USUAL.give()))),
            asked("--max-flex 0.01", usual -> usual.standing(new Push(Push.USUAL.force(), 0.254))),
            asked("--max-flex 0.2mm --push 70", usual -> usual.standing(new Push(70, 0.2))),
            asked("--max-lift 0.02", usual -> usual.liftingAtMost(0.508)),
            asked("--stop-at 1.1", usual -> usual.stoppingAt(27.94)),
            asked("--clamp 1.2", usual -> usual.withClamps(30.48)),
            asked("--tapered-shim 6x1/2", usual -> usual.withWedges(new Wedge(152.4, 12.7))),
            asked("--bed 30x6", usual -> usual.in(Shop.UNKNOWN.with(new BedSize(762, 152.4)))),
            asked("--seed 7", usual -> usual.withSeed(7)),
            cutter("--cutter 1 --deepest-pass 0.05 --feed 80", Cutter.usual("cutter of 1", 25.4, 1.27, 2032,
                OptionalDouble.empty(), OptionalDouble.empty())),
            cutter("--cutter 1in --deepest-pass 0.1 --feed 2m --rows 0.4 --last-pass 0.02 --overrun 0.75",
                new Cutter("cutter of 1in", 25.4, 2.54, 0.508, 10.16, 2000, 19.05)));
    }

    private record Written(String text, String details, String json) { }

    private static Written plain;

    @BeforeAll
    static void withoutOptions() throws IOException {
        plain = written("");
    }

    private static Written written(String options) throws IOException {
        Path out = folder.resolve("out");
        Path file = Files.writeString(folder.resolve("board.csv"), BOARD);
        List<String> arguments = new ArrayList<>(List.of("judge", "--no-chart", "--json", "--out", out.toString()));
        arguments.addAll(Arrays.stream(options.split(" ")).filter(word -> !word.isEmpty()).toList());
        arguments.add(file.toString());
        StringWriter err = new StringWriter();
        assertEquals(0, Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err),
            arguments.toArray(String[]::new)), err.toString());
        return new Written(Files.readString(out.resolve("board.txt")), Files.readString(out.resolve("board-details.txt")),
            Files.readString(out.resolve("board.json")));
    }

    @ParameterizedTest
    @MethodSource("options")
    void theValueReachesTheResult(String options, Expected expected) throws IOException, BadBoardFile {
        Judgement judgement = expected.apply(BoardFile.parse("board.csv", BOARD, Defaults.NOTHING));
        Figures figures = new Figures(Units.INCHES);

        Written written = written(options);

        assertEquals(JsonReport.of(judgement), written.json());
        assertEquals(DetailsReport.of(judgement, figures), written.details());
        assertEquals(TextReport.of(judgement, figures, "board-details.txt"), written.text());
        assertNotEquals(plain, written, "nothing changes with " + options);
    }
}
