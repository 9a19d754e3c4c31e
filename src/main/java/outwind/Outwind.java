package outwind;

import java.io.IOException;
import java.nio.file.Path;
import outwind.board.Board;
import outwind.board.file.Defaults;
import outwind.board.file.ShopFile;
import outwind.board.text.BadBoardFile;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.json.JsonReport;
import outwind.report.sheet.BoardSheet;
import outwind.report.text.TextReport;
import outwind.report.words.Figures;
import outwind.report.words.Release;
import outwind.scan.bytes.Progress;
import outwind.scan.find.AnyBoardFile;
import outwind.shop.Shop;
import outwind.surface.ImpossibleBoard;

/**
 * Outwind for other programs: a board in, what is known of it out.
 *
 * <p>All lengths are in mm. Nothing is kept between calls, the same board gives the same answer, and any number of
 * threads may call at once. Nothing is printed or written. Sheets are drawn without a screen.
 */
public final class Outwind {

    private Outwind() { }

    /**
     * Says which release this is.
     *
     * @return a semantic version, as {@code 0.1.0}
     */
    public static String version() {
        return Release.version();
    }

    /**
     * Reads a board from a file of readings, or from a scan. {@link Board#builder} makes one without a file.
     *
     * @param file a board file, a {@code .xyz} text or a {@code .ply} scan
     * @return the board
     * @throws IOException              if the file cannot be opened or read
     * @throws IllegalArgumentException if it holds no board; the message lists every fault with its line, what was
     *                                  read and how to mend it
     */
    public static Board read(Path file) throws IOException {
        try {
            return AnyBoardFile.read(file, Defaults.NOTHING, Progress.UNSEEN);
        } catch (BadBoardFile e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    /**
     * Reads a shop file, for {@link JudgeOptions#usual(Board, Shop)}.
     *
     * @param file states bed, cutters, clamps and shims
     * @return the shop
     * @throws IOException              if the file cannot be opened or read
     * @throws IllegalArgumentException if it is no shop file; the message lists every fault
     */
    public static Shop readShop(Path file) throws IOException {
        try {
            return ShopFile.read(file);
        } catch (BadBoardFile e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    /**
     * Judges a board by what it states itself, with nothing known of the shop.
     *
     * @param board the board, with three readings of face A at least
     * @return what it will finish at, how to set it down and how deep to cut
     * @throws IllegalArgumentException if no board can have given such readings; the message says what does not agree
     */
    public static Judgement judge(Board board) {
        return judge(board, JudgeOptions.usual(board));
    }

    /**
     * The same with more asked for.
     *
     * @param board the board, with three readings of face A at least
     * @param asked skim, shop, clamps and so on; begin with {@link JudgeOptions#usual(Board)}
     * @return what it will finish at, how to set it down and how deep to cut
     * @throws IllegalArgumentException if no board can have given such readings; the message says what does not agree
     */
    public static Judgement judge(Board board, JudgeOptions asked) {
        try {
            return Judgement.of(board, asked);
        } catch (ImpossibleBoard e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    /**
     * Writes the report that {@code outwind judge} prints, in the unit that the board's owner uses.
     *
     * @param judgement a judged board
     * @return lines of at most 80 characters
     */
    public static String report(Judgement judgement) {
        return TextReport.of(judgement, figures(judgement));
    }

    /**
     * Writes what {@code outwind judge --json} writes.
     *
     * @param judgement a judged board
     * @return one JSON object, with a line end after it
     */
    public static String json(Judgement judgement) {
        return JsonReport.of(judgement);
    }

    /**
     * Draws the set-up sheet.
     *
     * @param judgement a judged board
     * @return a picture as the bytes of a PNG file
     */
    public static byte[] sheet(Judgement judgement) {
        return BoardSheet.png(judgement, figures(judgement));
    }

    private static Figures figures(Judgement judgement) {
        return new Figures(judgement.board().units());
    }
}
