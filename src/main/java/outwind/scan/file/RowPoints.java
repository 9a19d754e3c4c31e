package outwind.scan.file;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.BlockReader;
import outwind.scan.bytes.CountedLines;
import outwind.scan.bytes.LineBlocks;
import outwind.scan.bytes.PointPieces;
import outwind.scan.bytes.ReadingPlan;
import outwind.scan.bytes.ScanBytes;
import outwind.board.text.FaultList;

/**
 * The points of a text, read in two passes: {@link CountedLines} counts the lines of each block, so that every block's
 * points have their place in the arrays and every fault its line number; the second pass reads. So no array ever grows
 * or is merged with another.
 */
final class RowPoints {

    /** With so many faults there is no use in reading on. */
    private static final int MOST_FAULTS = 20;

    /** Whoever describes a board needs a dozen lines. */
    static final int MOST_HEADER_LINES = 1_000;

    // "0 0 0" and a line end. The arrays so take at most four times the file's size, whatever it says.
    private static final int SHORTEST_ROW = 6;

    private final String file;
    private final RowLayout layout;
    private final Rows rows;
    private final CountedLines lines;
    private final PointPieces pieces;
    private final long[] unmeasured;
    private final List<List<HeaderLine>> header = new ArrayList<>();
    private final List<FaultList> faults = new ArrayList<>();
    private final AtomicInteger found = new AtomicInteger();

    private RowPoints(String file, RowLayout layout, Rows rows, CountedLines lines) throws BadBoardFile {
        this.file = file;
        this.layout = layout;
        this.rows = rows;
        this.lines = lines;
        int blocks = lines.blocks().count();
        pieces = new PointPieces(file, room(lines.blocks().size()));
        unmeasured = new long[blocks];
        for (int i = 0; i < blocks; i++) {
            header.add(List.of());
            faults.add(FaultList.ofScan(file));
        }
    }

    /**
     * Reads them.
     *
     * @param before header lines that were found already
     * @throws BadBoardFile holds the first faults of the file
     */
    static Scan read(ScanBytes file, RowLayout layout, Rows rows, CountedLines lines, List<HeaderLine> before,
            ReadingPlan plan) throws IOException, BadBoardFile {
        RowPoints points = new RowPoints(file.name(), layout, rows, lines);
        List<BlockReader.Worker> hands = new ArrayList<>();
        for (int i = 0; i < plan.hands(lines.blocks().count()); i++) {
            hands.add(new RowWorker(points));
        }
        BlockReader.work(lines.blocks().count(), hands, plan.progress(file.size()));
        return points.scan(before);
    }

    private int[] room(int blockSize) {
        int[] room = new int[lines.blocks().count()];
        for (int i = 0; i < room.length; i++) {
            long begin = Math.max(lines.firstLine()[i], rows.beginLine());
            long end = Math.min(lines.firstLine()[i + 1], rows.endLine());
            room[i] = (int) Math.max(0, Math.min(end - begin, blockSize / SHORTEST_ROW + 1));
        }
        return room;
    }

    String file() {
        return file;
    }

    RowLayout layout() {
        return layout;
    }

    Rows rows() {
        return rows;
    }

    LineBlocks blocks() {
        return lines.blocks();
    }

    PointPieces pieces() {
        return pieces;
    }

    long firstLine(int piece) {
        return lines.firstLine()[piece];
    }

    /**
     * Notes what a piece held besides points; each piece once.
     *
     * @return whether to go on
     */
    boolean note(int piece, long unmeasuredPoints, List<HeaderLine> ofHeader, FaultList ofPiece) {
        unmeasured[piece] = unmeasuredPoints;
        header.set(piece, ofHeader);
        faults.set(piece, ofPiece);
        return found.addAndGet(ofPiece.count()) < MOST_FAULTS;
    }

    private Scan scan(List<HeaderLine> before) throws BadBoardFile {
        FaultList all = FaultList.ofScan(file);
        faults.forEach(all::addAll);
        all.throwIfAny();
        long sum = LongStream.of(unmeasured).sum();
        List<HeaderLine> said = Stream.concat(before.stream(), header.stream().flatMap(List::stream)).toList();
        return new Scan(said, pieces.closedUp(), sum);
    }
}
