package outwind.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.report.words.Figures;
import outwind.report.words.Support;
import outwind.surface.ShapeOf;

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
        assertEquals(judgement.planned() == Planned.NONE, BenchWords.steps(judgement, figures).isEmpty());
        assertEquals(judgement.plannedCuts().size(), BenchWords.cuts(judgement, figures).size());
    }

    @Test
    void whatIsDoneHasTheOrderInWhichItIsDone() throws Exception {
        Judgement judgement = judged("hall-table.csv", 26);
        Figures figures = new Figures(Units.MILLIMETRES);

        List<BenchWords.Step> steps = BenchWords.steps(judgement, figures);

        List<Support> supports = Support.round(judgement);
        List<String> ids = steps.stream().map(BenchWords.Step::id).toList();
        assertEquals(List.of("care", "lay"), ids.subList(0, 2));
        assertEquals(List.of("hold", "face-a", "turn"), ids.subList(ids.size() - 3, ids.size()));
        assertEquals(supports.size(), ids.size() - 5);
        for (int i = 0; i < supports.size(); i++) {
            BenchWords.Step step = steps.get(2 + i);
            Support support = supports.get(i);
            assertEquals(support.isShimmed(), step.text().startsWith("Shim " + support.label() + ": "));
            assertTrue(plain(step.text()).contains("x " + figures.place(support.shim().x()) + " y "
                + figures.place(support.shim().y())), step.text());
            assertEquals(support.isShimmed() ? figures.shim(support.shim().height()) + " mm" : "", plain(step.size()));
        }
    }

    // A bow lies on both its ends however it is lifted; of a twist, levelling takes off half at most on either face.
    @Test
    void whatLevellingGainsIsTheDifferenceOfBothThicknesses() throws Exception {
        Figures figures = new Figures(Units.MILLIMETRES);
        Judgement twisted = judged("hall-table.csv", 26);
        Board level = ShapeOf.board().read(5, 3, (x, y) -> 0);

        double measured = twisted.outlook().asMeasured().median();
        double levelled = twisted.outlook().levelled().median();
        assertEquals("Levelling gains " + figures.gain(measured, levelled) + " of thickness: " + figures.precise(measured)
            + " as measured, " + figures.precise(levelled) + " levelled.", BenchWords.gain(twisted, figures));
        String flat = BenchWords.gain(Judgement.of(level, JudgeOptions.usual(level)), figures);
        assertTrue(flat.startsWith("Levelling gains nothing: "), flat);
    }

    private static String plain(String words) {
        return words.replace('\u00a0', ' ');
    }
}
