package outwind.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import outwind.blanks.BlankThickness;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.board.Price;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.flatten.ThicknessRange;
import outwind.forecast.JudgeOptions;
import outwind.stock.BoardFeet;
import outwind.surface.Faces;
import outwind.surface.Region;

/**
 * What crosscutting a stack before flattening saves: every board whole, and cut into equal lengths, each levelled on
 * its own.
 *
 * <p>Wood lost is what comes off until a length is flat at its greatest thickness, the skims and the saw's kerfs
 * counted. Money lost is that share of the board's price. Finished wood costs what the stack costs over the area that
 * is expected to make the target.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=Shortening}: prints the table of {@code stack.md} for the sample stack.
 */
public final class Shortening {

    private static final int MOST_LENGTHS = 4;

    private Shortening() { }

    public static void main(String[] args) throws IOException {
        List<Board> boards;
        try (Stream<Path> files = Files.list(Path.of("sample-probes/stack"))) {
            boards = files.sorted().map(Shortening::read).toList();
        }
        System.out.println("| each board cut into | wood lost until flat | money in it | finished area that makes the"
            + " target | its wood costs |");
        System.out.println("| --- | --- | --- | --- | --- |");
        for (int lengths = 1; lengths <= MOST_LENGTHS; lengths++) {
            print(boards, lengths);
        }
    }

    private static Board read(Path file) {
        try {
            return BoardFile.read(file, Defaults.NOTHING);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (BadBoardFile e) {
            throw new IllegalStateException(e);
        }
    }

    private static void print(List<Board> boards, int lengths) {
        double rough = 0;
        double lost = 0;
        double moneyLost = 0;
        double money = 0;
        double area = 0;
        String label = boards.get(0).price().orElseThrow().currency();
        for (Board board : boards) {
            JudgeOptions request = JudgeOptions.usual(board);
            BlankThickness wood = BlankThickness.of(Faces.of(board).shape(), Region.whole(board), request.skim(), 1);
            double volume = board.length() * board.width() * board.thickness().orElseThrow();
            double left = 0;
            for (Region part : parts(board, lengths)) {
                double partArea = (part.x2() - part.x1()) * (part.y2() - part.y1());
                ThicknessRange range = wood.range(part);
                left += partArea * range.median();
                area += partArea * range.chanceOf(board.target().orElseThrow());
            }
            Price price = board.price().orElseThrow();
            double cost = price.amount().doubleValue() * new BoardFeet(board.length(), board.width(),
                board.thickness().orElseThrow()).tallied();
            rough += volume;
            lost += volume - left;
            money += cost;
            moneyLost += cost * (volume - left) / volume;
        }
        System.out.printf(Locale.ROOT, "| %s | %.1f dm³, %.0f %% | %.0f of %.0f %s | %.2f m² | %.0f %s a m² |%n",
            lengths == 1 ? "not at all" : lengths + " lengths", lost / 1e6, 100 * lost / rough, moneyLost, money,
            label, area / 1e6, money / (area / 1e6), label);
    }

    private static List<Region> parts(Board board, int lengths) {
        double kerf = Saw.USUAL_KERF;
        double each = (board.length() - (lengths - 1) * kerf) / lengths;
        return Stream.iterate(0.0, x -> x + each + kerf).limit(lengths)
            .map(x -> new Region(x, 0, Math.min(x + each, board.length()), board.width())).toList();
    }
}
