package outwind.scan.file;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import outwind.board.file.ScanHeader;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Line;
import outwind.scan.bytes.CountedLines;
import outwind.scan.bytes.NumberScanner;
import outwind.scan.bytes.Opening;
import outwind.scan.bytes.ReadingPlan;
import outwind.scan.bytes.ScanBytes;
import outwind.board.text.FaultList;

/**
 * Reads points from a text. Its first line that is neither blank nor a remark names the columns or is the first point,
 * and shows what stands between the cells: the first of tab, semicolon and comma that makes three cells of
 * it or more, or else blanks.
 */
final class TextScan {

    private static final String DELIMITERS = "\t;,";

    private final ScanBytes file;
    private final ReadingPlan plan;
    private final FaultList faults;
    private final List<HeaderLine> header = new ArrayList<>();

    private TextScan(ScanBytes file, ReadingPlan plan) {
        this.file = file;
        this.plan = plan;
        faults = FaultList.ofScan(file.name());
    }

    static Scan read(ScanBytes file, ReadingPlan plan) throws IOException, BadBoardFile {
        return new TextScan(file, plan).read();
    }

    private Scan read() throws IOException, BadBoardFile {
        Opening opening = new Opening(file);
        int from = opening.next();
        for (Optional<String> next = opening.line(); next.isPresent(); next = opening.line()) {
            String text = next.get();
            int number = opening.lineNumber();
            Line line = new Line(number, text);
            if (line.isKeyLine() || line.isKeyWithoutMark()) {
                ScanHeader.keyLine(number, text, faults).map(said -> new HeaderLine(file.name(), said))
                    .ifPresent(header::add);
            } else if (!line.isBlank()) {
                faults.throwIfAny();
                char delimiter = delimiter(text);
                return beginsWithNumber(text, delimiter) ? points(RowLayout.bare(delimiter), from, number)
                    : belowNames(new NamedColumns(file.name(), number, text, delimiter), opening);
            }
            from = opening.next();
        }
        throw faults.withLast("points", opening.isCut() ? "none in the first " + Opening.LONGEST + " bytes" : "nothing",
            "Write one point x y z on each line.");
    }

    private Scan belowNames(NamedColumns columns, Opening opening) throws IOException, BadBoardFile {
        RowLayout layout = columns.layout(faults);
        faults.throwIfAny();
        header.addAll(columns.units());
        return points(layout, opening.next(), opening.lineNumber() + 1L);
    }

    private Scan points(RowLayout layout, long from, long line) throws IOException, BadBoardFile {
        return RowPoints.read(file, layout, Rows.from(line), CountedLines.of(file, from, line, plan), header, plan);
    }

    private static char delimiter(String line) {
        return (char) DELIMITERS.chars().filter(mark -> NamedColumns.split(0, line, (char) mark).size() >= 3)
            .findFirst().orElse(' ');
    }

    /** Whether the first cell is blank, a number, or a word for none. */
    private static boolean beginsWithNumber(String line, char delimiter) {
        String cell = NamedColumns.split(0, line, delimiter).get(0).text();
        byte[] bytes = new byte[cell.length() + 1 + NumberScanner.MARGIN];
        for (int i = 0; i < cell.length(); i++) {
            bytes[i] = (byte) Math.min(cell.charAt(i), 127);
        }
        NumberScanner scanner = new NumberScanner(bytes, ',');
        scanner.at(0);
        return cell.isEmpty() || scanner.end() > 0;
    }
}
