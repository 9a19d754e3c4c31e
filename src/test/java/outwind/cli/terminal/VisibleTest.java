package outwind.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class VisibleTest {

    @Test
    void whatSteersATerminalIsShownAsAQuestionMark() {
        assertEquals("a?[31mb?c?d?e?f", Visible.in("a\u001b[31mb\u0007c\u009bd\u202ee\u2066f"));
        assertEquals("x\ty\r\n½ ü \u00a0z", Visible.in("x\ty\r\n½ ü \u00a0z"));
    }

    @Test
    void nothingElseReachesTheTerminal() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (TerminalWriter writer = new TerminalWriter(new PrintStream(bytes), 80, StandardCharsets.UTF_8)) {
            writer.write("bad\u001b]0;title\u0007.csv\n");
        }

        assertEquals("bad?]0;title?.csv\n", bytes.toString(StandardCharsets.UTF_8));
    }
}
