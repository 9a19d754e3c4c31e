package outwind.scan.file;

import java.io.EOFException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.BlockReader;
import outwind.scan.bytes.CountedLines;
import outwind.scan.bytes.PointPieces;
import outwind.scan.bytes.ReadingPlan;
import outwind.scan.bytes.ScanBytes;
import outwind.board.text.FaultList;

/** Reads the vertices of a .ply file; whatever else they have and the file holds is passed over. */
final class PlyScan {

    private static final String COPY_AGAIN =
        "The file has been cut short, or its header is wrong: export or copy it again.";

    private final ScanBytes file;
    private final ReadingPlan plan;
    private final PlyHeader header;
    private final PlyElement vertices;

    private PlyScan(ScanBytes file, ReadingPlan plan, PlyHeader header) {
        this.file = file;
        this.plan = plan;
        this.header = header;
        vertices = header.vertices();
    }

    static Scan read(ScanBytes file, ReadingPlan plan) throws IOException, BadBoardFile {
        PlyScan scan = new PlyScan(file, plan, PlyHeader.read(file));
        return scan.header.isText() ? scan.readText() : scan.readBinary();
    }

    /** In a text each thing has a line of its own. */
    private Scan readText() throws IOException, BadBoardFile {
        long firstLine = header.lastLine() + 1L;
        // Each count is below 10^18 and there are few: the sum of a handful fits, and no more lines can be in a file.
        long before = header.before().stream().mapToLong(PlyElement::count).reduce(0, PlyScan::boundedSum);
        long begin = boundedSum(firstLine, before);
        Rows rows = new Rows(begin, boundedSum(begin, vertices.count()), false);
        CountedLines lines = CountedLines.of(file, header.end(), firstLine, plan);
        if (lines.endLine() < rows.endLine()) {
            throw cutShort(Math.max(0, lines.endLine() - begin));
        }
        long behind = header.behind().stream().mapToLong(PlyElement::count).reduce(0, PlyScan::boundedSum);
        long left = lines.endLine() - boundedSum(rows.endLine(), behind);
        if (left > 0 && left > file.blankLinesAtEnd()) {
            throw more(left + " lines more");
        }
        RowLayout layout = new RowLayout(' ', vertices.cells(), false, "line " + vertices.line());
        return RowPoints.read(file, layout, rows, lines, header.comments(), plan);
    }

    private static long boundedSum(long a, long b) {
        return Math.min(a + b, Long.MAX_VALUE / 2);
    }

    private Scan readBinary() throws IOException, BadBoardFile {
        PlyCursor cursor = new PlyCursor(file, header.end(), header.order());
        try {
            for (PlyElement element : header.before()) {
                cursor.pass(element);
            }
        } catch (EOFException e) {
            throw cutShort(0);
        }
        long room = (file.size() - cursor.at()) / vertices.leastBytes();
        if (room < vertices.count()) {
            throw cutShort(room);
        }
        if (!vertices.isEven()) {
            return readUneven(cursor);
        }
        long begin = cursor.at();
        cursor.pass(vertices);
        requireEnd(cursor);
        return readEven(begin);
    }

    /** What follows the vertices must end where the file does, or their number in the header is not to be trusted. */
    private void requireEnd(PlyCursor cursor) throws IOException, BadBoardFile {
        for (PlyElement element : header.behind()) {
            try {
                cursor.pass(element);
            } catch (EOFException e) {
                FaultList faults = FaultList.ofScan(file.name());
                faults.add(element.line(), 1, element.count() + " of the element " + element.name()
                    + " in the file, as this line says", "the end of the file", COPY_AGAIN);
                throw faults.asException();
            }
        }
        if (!file.isBlankFrom(cursor.at())) {
            throw more(file.size() - cursor.at() + " bytes more");
        }
    }

    /** Vertices of one size can be read anywhere, so by several hands. */
    private Scan readEven(long begin) throws IOException, BadBoardFile {
        int most = Math.max(1, plan.blockSize() / vertices.leastBytes());
        int[] room = new int[Math.toIntExact((vertices.count() + most - 1) / most)];
        for (int i = 0; i < room.length; i++) {
            room[i] = (int) Math.min(most, vertices.count() - (long) i * most);
        }
        PointPieces pieces = new PointPieces(file.name(), room);
        List<PlyWorker> hands = new ArrayList<>();
        for (int i = 0; i < plan.hands(room.length); i++) {
            hands.add(new PlyWorker(file, begin, header.order(), vertices, room, pieces));
        }
        BlockReader.work(room.length, hands, plan.progress(file.size()));
        return scan(pieces);
    }

    /** Where vertices have lists, each must be gone through to find the next. */
    private Scan readUneven(PlyCursor cursor) throws IOException, BadBoardFile {
        PointPieces pieces = new PointPieces(file.name(), new int[] {(int) Math.min(vertices.count(),
            Integer.MAX_VALUE)});
        byte[] cells = vertices.cells();
        double[] point = new double[3];
        int place = 0;
        long gone = 0;
        try {
            for (; gone < vertices.count(); gone++) {
                for (int i = 0; i < cells.length; i++) {
                    if (cells[i] < RowLayout.OTHER) {
                        point[cells[i]] = cursor.number(vertices.properties().get(i).type());
                    } else {
                        cursor.pass(vertices.properties().get(i));
                    }
                }
                place += pieces.put(place, point[0], point[1], point[2]) ? 1 : 0;
            }
        } catch (EOFException e) {
            throw cutShort(gone);
        }
        requireEnd(cursor);
        pieces.filled(0, place);
        return scan(pieces);
    }

    private Scan scan(PointPieces pieces) {
        return new Scan(header.comments(), pieces.closedUp(), vertices.count() - pieces.filled());
    }

    private BadBoardFile cutShort(long held) {
        FaultList faults = FaultList.ofScan(file.name());
        faults.add(vertices.line(), 1, vertices.count() + " vertices in the file, as this line says",
            held + " that are whole", COPY_AGAIN);
        return faults.asException();
    }

    private BadBoardFile more(String found) {
        FaultList faults = FaultList.ofScan(file.name());
        faults.add(vertices.line(), 1, vertices.count() + " vertices in the file, as this line says",
            found + " than the header tells of", "Its header is wrong, so points would be missed: export it again.");
        return faults.asException();
    }
}
