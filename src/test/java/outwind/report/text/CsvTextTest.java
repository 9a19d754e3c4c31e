package outwind.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTextTest {

    // OWASP, CSV Injection: cells that begin with one of these are taken for formulas.
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum", "\tx"})
    void aTextThatLooksLikeAFormulaIsKeptFromBeingOne(String text) {
        assertEquals("'" + text, CsvText.cell(text));
    }

    @Test
    void otherTextsStayAsTheyAre() {
        assertEquals("oak 3", CsvText.cell("oak 3"));
        assertEquals("\"oak, \"\"best\"\"\"", CsvText.cell("oak, \"best\""));
        assertEquals("\"'=a,b\"", CsvText.cell("=a,b"));
        assertEquals("", CsvText.cell(""));
    }

    @Test
    void lettersBeyondAsciiAreAnnounced() {
        assertEquals("oak,9.50\n", CsvText.table("oak,9.50\n"));
        assertEquals("\ufeffm\u00f6bel,\u00a39.50\n", CsvText.table("m\u00f6bel,\u00a39.50\n"));
    }
}
