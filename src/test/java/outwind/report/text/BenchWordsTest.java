package outwind.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.words.Figures;

/** What the page says to a person who types no commands. */
class BenchWordsTest {

    private static Judgement judged(String file, double target) throws Exception {
        Board board = BoardFile.read(Path.of("sample-probes", file), Defaults.NOTHING).withTarget(target);
        return Judgement.of(board, JudgeOptions.usual(board));
    }

    @ParameterizedTest
    @CsvSource({"hall-table.csv, 40", "gate-stile-twist.csv, 60", "shelf-bow.csv, 20", "hall-table.csv, 26"})
    void noOptionIsNamed(String file, double target) throws Exception {
        Judgement judgement = judged(file, target);
        Figures figures = new Figures(judgement.board().units());

        List<String> said = BenchWords.verdict(judgement, figures);

        assertEquals(judgement.planned() == Planned.NONE,
            said.contains("To see a plan all the same, set a smaller thickness under See."));
        assertFalse(said.isEmpty());
        assertTrue(said.stream().noneMatch(words -> words.contains("--")), said.toString());
        assertTrue(BenchWords.steps(judgement, figures).stream().noneMatch(step -> step.text().contains("--")));
        assertTrue(BenchWords.cuts(judgement, figures).stream().noneMatch(words -> words.contains("--")));
    }
}
