package outwind.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import outwind.board.Units;

class PageTest {

    private static final Figures IN = new Figures(Units.INCHES);

    @Test
    void aFractionIsNotBrokenAtTheEndOfALine() {
        Page page = new Page();

        page.paragraph("a".repeat(75) + " " + IN.number(30.1625) + " and on");

        assertEquals("a".repeat(75) + "\n1 3/16 and on\n", page.toString());
    }

    @Test
    void whatWasKeptTogetherIsPrintedWithPlainSpaces() {
        Page page = new Page();

        page.line("at " + IN.length(30.1625));
        page.table("", List.of("no.", "x"), List.of(List.of("1", IN.place(30.1625))));

        assertEquals("at 1 3/16 in\nno.       x\n1     1 1/4\n", page.toString());
    }
}
