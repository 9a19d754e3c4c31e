package outwind.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.words.Figures;

class DetailsReportTest {

    /** Bowed by 2 mm and twisted by 1 mm. */
    private static final String READINGS = "x,y,z\n0,0,0\n250,0,1.5\n500,0,2\n750,0,1.5\n1000,0,0\n0,160,0.5\n"
        + "250,160,1.8\n500,160,2\n750,160,1.3\n1000,160,-0.5\n";

    // 0.3 mm takes the usual saw marks off (common practice); a planed board has none.
    @ParameterizedTest
    @CsvSource({"30, 0.3, ''", "30, '', ''", "30 everywhere, 0, ''", "30, 0.15, 0.15 mm", "30, 0, 0.0 mm"})
    void aSkimThatMayLeaveSawMarksSaysSo(String thickness, String skim, String said) throws Exception {
        var board = BoardFile.parse("board.csv", "# length: 1000\n# width: 160\n# thickness: " + thickness + "\n"
            + (skim.isEmpty() ? "" : "# skim: " + skim + "\n") + READINGS, Defaults.NOTHING);

        String report = DetailsReport.of(Judgement.of(board, JudgeOptions.usual(board)), new Figures(Units.MILLIMETRES))
            .replaceAll("\\s+", " ");

        List<String> found = Pattern.compile("Saw marks deeper than the skim of ([\\d.]+ mm) stay on")
            .matcher(report).results().map(match -> match.group(1)).toList();
        assertEquals(said.isEmpty() ? List.of() : List.of(said), found);
    }
}
