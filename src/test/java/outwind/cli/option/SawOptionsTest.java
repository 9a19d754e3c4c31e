package outwind.cli.option;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.surface.ShapeOf;
import outwind.shop.SawLimits;
import picocli.CommandLine;

class SawOptionsTest {

    private static final Board TRIMMED = ShapeOf.board().trimmed(25, 12).read(5, 3, (x, y) -> 0);

    private static Saw saw(String... words) {
        SawOptions options = new SawOptions();
        new CommandLine(new Command(options)).parseArgs(words);
        return options.saw(TRIMMED, SawLimits.NONE);
    }

    @CommandLine.Command
    private record Command(@CommandLine.Mixin SawOptions options) { }

    // What the options say of themselves: a kerf of 3.2 mm, the file's trim along, steps of 5 mm.
    @Test
    void whatIsNotSaidIsAsUsual() {
        assertEquals(new Saw(3.2, 25, 5), saw());
    }

    @Test
    void whatIsSaidGoesBeforeTheFile() {
        assertEquals(new Saw(2.4, 0, 10), saw("--kerf", "2.4", "--end-trim", "0", "--raster", "10"));
    }
}
