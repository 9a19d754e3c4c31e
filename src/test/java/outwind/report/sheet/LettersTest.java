package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.board.Board;
import outwind.board.Units;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.surface.ShapeOf;

/** The letters that come with the program: all that is printed is in them, and a machine without fonts is no matter. */
class LettersTest {

    @TempDir
    private Path folder;

    private static byte[] sheet() {
        ShapeOf shape = new ShapeOf(1180, 212, 31.5, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        Board board = shape.read(5, 3, (x, y) -> 1e-5 * x * y);
        return BoardSheet.png(Judgement.of(board, JudgeOptions.usual(board)), new Figures(Units.MILLIMETRES));
    }

    /** Draws a sheet into a file, in a process of its own. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0]), sheet());
    }

    @Test
    void signsAndNeighbouringAlphabetsAreInTheLetters() {
        for (String words : List.of("± 0.26 mm, 90\u00a0% · 3×4 … ² ³ – “x” ’", "Tür Ålesund Łódź Čapek", "Береза Πεύκη")) {
            for (TextStyle type : TextStyle.values()) {
                assertEquals(type.font(), type.font(words), words);
            }
        }
        assertTrue(TextStyle.TEXT.font("楢").getFamily() != TextStyle.TEXT.font().getFamily(), "the machine's own for others");
    }

    // Fontconfig knows no folder but one that is not there.
    @Tag("long")
    @Test
    void aSheetIsTheSameOnAMachineWithoutFonts() throws IOException, InterruptedException {
        Path settings = Files.writeString(folder.resolve("fonts.conf"), "<?xml version=\"1.0\"?><!DOCTYPE fontconfig"
            + " SYSTEM \"fonts.dtd\"><fontconfig><dir>" + folder.resolve("none") + "</dir></fontconfig>");
        Path drawn = folder.resolve("sheet.png");
        ProcessBuilder process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.awt.headless=true", "-cp", System.getProperty("java.class.path"), LettersTest.class.getName(),
            drawn.toString()).inheritIO();
        process.environment().put("FONTCONFIG_FILE", settings.toString());

        Process running = process.start();

        assertTrue(running.waitFor(60, TimeUnit.SECONDS), "does not end");
        assertEquals(0, running.exitValue());
        assertArrayEquals(sheet(), Files.readAllBytes(drawn));
    }
}
