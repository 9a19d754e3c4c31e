package outwind.scan.file;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import outwind.scan.bytes.BlockReader;
import outwind.scan.bytes.LineBlocks;
import outwind.scan.bytes.NumberScanner;
import outwind.scan.bytes.PointPieces;
import outwind.board.file.ScanHeader;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.scan.bytes.ScanBytes;

/**
 * Reads the points of one block of lines after another. Most rows are x, y and z with single delimiters between them
 * and are read in one go; whatever else a line may be is looked at cell by cell.
 */
final class RowWorker implements BlockReader.Worker {

    private static final int HEIGHT = RowLayout.AXES.indexOf('z');

    private final RowPoints all;
    private final RowLayout layout;
    private final byte delimiter;
    private final LineBlocks.Block block;
    private final byte[] text;
    private final NumberScanner scanner;
    private final RowCells cells;
    private final double[] point = new double[3];
    private final PointPieces pieces;

    private long line;
    private int place;
    private long unmeasured;
    private FaultList faults;
    private List<HeaderLine> header;

    RowWorker(RowPoints all) {
        this.all = all;
        layout = all.layout();
        delimiter = (byte) layout.delimiter();
        block = all.blocks().block();
        text = block.text();
        scanner = new NumberScanner(text, layout.otherDecimalMark());
        cells = new RowCells(layout);
        pieces = all.pieces();
    }

    @Override
    public boolean take(int piece) throws IOException {
        block.load(piece);
        line = all.firstLine(piece);
        place = pieces.begin(piece);
        unmeasured = 0;
        faults = FaultList.ofScan(all.file());
        header = new ArrayList<>();
        readLines();
        pieces.filled(piece, place - pieces.begin(piece));
        return all.note(piece, unmeasured, header, faults) && line < all.rows().endLine();
    }

    private void readLines() {
        int at = block.begin();
        for (; at < block.limit() && line < all.rows().beginLine(); line++) {
            at = block.lineEnd(at) + 1;
        }
        boolean plain = layout.beginsWithPoint();
        for (; at < block.limit() && line < all.rows().endLine() && !faults.isFull(); line++) {
            int next = plain ? plainRow(at) : 0;
            at = next > 0 ? next : anyLine(at);
        }
    }

    /** Reads a row that is nothing but a point; where the next line begins, or 0 if this may be something else. */
    private int plainRow(int begin) {
        double px = scanner.at(pastBlanks(begin));
        int second = behindDelimiter(scanner.end());
        if (second == 0) {
            return 0;
        }
        double py = scanner.at(second);
        int third = behindDelimiter(scanner.end());
        if (third == 0) {
            return 0;
        }
        double pz = scanner.at(third);
        int next = behindRow(scanner.end());
        // No number at all is NaN too.
        if (next == 0 || next - begin > LineBlocks.LONGEST_LINE || !pieces.put(place, px, py, pz)) {
            return 0;
        }
        place++;
        return next;
    }

    private int pastBlanks(int begin) {
        int at = begin;
        while (layout.isBlank(text[at])) {
            at++;
        }
        return at;
    }

    private int behindDelimiter(int at) {
        return text[at] == delimiter ? pastBlanks(at + 1) : 0;
    }

    private int behindRow(int at) {
        int end = at;
        if (layout.open() && (text[end] == delimiter || layout.isBlank(text[end]))) {
            end = block.lineEnd(end);
        } else if (text[end] == '\r') {
            end++;
        }
        return text[end] == '\n' ? end + 1 : 0;
    }

    /** Reads a line of any kind; where the next begins. */
    private int anyLine(int begin) {
        int lineEnd = block.lineEnd(begin);
        int end = lineEnd > begin && text[lineEnd - 1] == '\r' ? lineEnd - 1 : lineEnd;
        int first = Math.min(pastBlanks(begin), end);
        if (lineEnd - begin > LineBlocks.LONGEST_LINE) {
            faults.add(ScanBytes.lineNumber(line), 1, "a line of at most " + LineBlocks.LONGEST_LINE + " bytes", "a longer one",
                "Save the scan as text with one point on each line.");
        } else if (all.rows().mixed() && isBlank(first, end)) {
            return lineEnd + 1;
        } else if (all.rows().mixed() && isKeyLine(first, end)) {
            readKeyLine(begin, end);
        } else {
            readRow(begin, end);
        }
        return lineEnd + 1;
    }

    /** Whether nothing but blanks stands there, and what parts cells. */
    private boolean isBlank(int first, int end) {
        int at = first;
        while (at < end && (layout.isBlank(text[at]) || "\t,;\"".indexOf(text[at]) >= 0)) {
            at++;
        }
        return at == end;
    }

    /** Whether a key line or a remark begins there, perhaps in quotes. */
    private boolean isKeyLine(int first, int end) {
        return text[first] == '#' || text[first] == '"' && pastBlanks(first + 1) < end
            && text[pastBlanks(first + 1)] == '#';
    }

    private void readKeyLine(int begin, int end) {
        String said = ScanBytes.decoded(text, begin, end);
        ScanHeader.keyLine(ScanBytes.lineNumber(line), said, faults).map(key -> new HeaderLine(all.file(), key))
            .ifPresent(header::add);
        if (header.size() > RowPoints.MOST_HEADER_LINES) {
            faults.add(ScanBytes.lineNumber(line), 1, "at most " + RowPoints.MOST_HEADER_LINES + " lines \"# key: value\"", "one more",
                "Take those out that tell nothing about the board.");
            header.clear();
        }
    }

    private void readRow(int begin, int end) {
        cells.row(text, begin, end);
        for (int index = 0; index <= layout.lastAxis(); index++) {
            if (!readCell(layout.cells()[index], begin, end)) {
                return;
            }
        }
        if (!layout.open() && !endsAsNamed(begin)) {
            return;
        }
        if (pieces.put(place, point[0], point[1], point[2])) {
            place++;
        } else {
            unmeasured++;
        }
    }

    /** Whether the next cell is what it should be; a fault if not. */
    private boolean readCell(byte kind, int begin, int end) {
        if (!cells.next()) {
            refuse(begin, begin, end, "x, y and z as " + layout.source() + " has them",
                "A row ends too early: the file may have been cut short. Export it again, or take the line out.");
            return false;
        }
        return switch (kind) {
            case RowLayout.OTHER -> true;
            case RowLayout.LIST -> passList(begin, end);
            default -> readNumber(kind, begin);
        };
    }

    private boolean readNumber(byte axis, int begin) {
        point[axis] = cells.isEmpty() ? Double.NaN : scanner.at(cells.from());
        if (cells.isEmpty() || scanner.end() == cells.to()) {
            return true;
        }
        if (axis == HEIGHT && new Cell(ScanBytes.decoded(text, cells.from(), cells.to()), 0, 0).ofReading().isBlank()) {
            point[axis] = Double.NaN;
            return true;
        }
        refuse(begin, cells.from(), cells.to(), RowLayout.AXES.charAt(axis) + " as a number",
            "Write it like -12.5; decimal commas need semicolons or tabs between the cells.");
        return false;
    }

    private boolean passList(int begin, int end) {
        double length = scanner.at(cells.from());
        boolean whole = scanner.end() == cells.to() && length >= 0 && length == Math.rint(length);
        for (double i = 0; whole && i < length; i++) {
            whole = cells.next();
        }
        if (!whole) {
            refuse(begin, begin, end, "a list as " + layout.source() + " has it",
                "A list is its length and then so many values; export the scan again.");
        }
        return whole;
    }

    /** Whether the row ends where its last named cell does; a fault if not. */
    private boolean endsAsNamed(int begin) {
        for (int index = layout.lastAxis() + 1; index < layout.cells().length; index++) {
            if (!cells.next()) {
                return true;
            }
            if (layout.cells()[index] == RowLayout.LIST) {
                // How long such a list is changes nothing about the point.
                return true;
            }
        }
        while (cells.next()) {
            if (!cells.isEmpty()) {
                refuse(begin, cells.from(), cells.to(), "no cell beyond those of " + layout.source(),
                    "Take it out or name its column; decimal commas need semicolons or tabs between the cells.");
                return false;
            }
        }
        return true;
    }

    /** Notes a fault at bytes {@code from} to {@code to} of the line that begins at {@code begin}. */
    private void refuse(int begin, int from, int to, String expected, String mend) {
        faults.add(new Cell(ScanBytes.decoded(text, from, to), ScanBytes.lineNumber(line),
            ScanBytes.decoded(text, begin, from).length() + 1), expected, mend);
    }
}
