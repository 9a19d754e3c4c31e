package outwind.scan.find;

import java.io.IOException;
import java.nio.file.Path;
import outwind.board.Board;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.file.ScanFile;

/** A file with a board in it, whether that was touched off or scanned. */
public final class AnyBoardFile {

    private AnyBoardFile() { }

    /**
     * Reads the board.
     *
     * @param given    what is stated beside the file, for a file that does not say
     * @param progress learns how far the reading of a scan is
     * @throws IOException  if the file cannot be opened or read
     * @throws BadBoardFile if it holds no board; with every fault found
     */
    public static Board read(Path file, Defaults given, Progress progress) throws IOException, BadBoardFile {
        return ScanFile.isScan(file)
            ? ScannedBoard.in(ScanFile.read(file, progress), file.toString(), given)
            : BoardFile.read(file, given);
    }
}
