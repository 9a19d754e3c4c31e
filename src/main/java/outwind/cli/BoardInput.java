package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import outwind.board.Board;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.cli.terminal.ProgressBar;
import outwind.scan.find.AnyBoardFile;

/** A board from a file, whether it was touched off or scanned. */
final class BoardInput {

    private BoardInput() { }

    /** Reads a board, with a bar on the terminal while a large scan is read. */
    static Board read(Path file, Defaults given, PrintWriter out) throws IOException, BadBoardFile {
        ProgressBar bar = new ProgressBar(out, "reading");
        try {
            return AnyBoardFile.read(file, given, bar);
        } finally {
            bar.done();
        }
    }
}
