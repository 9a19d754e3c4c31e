package outwind.scan;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import outwind.board.BadBoardFile;
import outwind.board.PointCloud;

/**
 * The points of a PLY file: x, y and z of its vertices; every other property and element is passed over. No memory is
 * asked for before the file has been seen to be as long as its header says.
 */
final class PlyScan {

    private static final String MEND = "Save the scan anew as PLY, or as text with x y z on each line.";
    private static final int BLOCK = 1 << 20;

    private final ScanSource source;
    private final ScanFaults faults;
    private final PlyHeader header;
    private final PlyElement vertex;
    private final int[] axes;
    private final AtomicInteger unmeasured = new AtomicInteger();

    private PlyScan(ScanSource source, ScanFaults faults) throws BadBoardFile {
        this.source = source;
        this.faults = faults;
        this.header = PlyHeader.read(source, faults);
        this.vertex = header.elements().stream().filter(element -> element.name().equals("vertex")).findFirst()
            .orElseThrow(() -> faults.whole("an element vertex", "none in the header", MEND));
        this.axes = new int[] {vertex.indexOf("x"), vertex.indexOf("y"), vertex.indexOf("z")};
        if (axes[0] < 0 || axes[1] < 0 || axes[2] < 0) {
            throw faults.whole("properties x, y and z of the element vertex", "not all of them", MEND);
        }
        if (vertex.hasLists()) {
            throw faults.whole("vertices whose properties are single numbers", "a list among them", MEND);
        }
        if (vertex.count() == 0 || vertex.count() > TextRows.MOST_POINTS) {
            throw faults.whole("from 1 to " + TextRows.MOST_POINTS + " vertices", String.valueOf(vertex.count()),
                "Thin out the scan, for instance to every tenth point.");
        }
    }

    static Scan read(ScanSource source, ScanFaults faults) throws IOException, BadBoardFile {
        PlyScan scan = new PlyScan(source, faults);
        PointCloud points = scan.header.order().isPresent() ? scan.binary(scan.header.order().get()) : scan.text();
        if (points.size() == 0) {
            throw faults.whole("vertices", "no measured point", MEND);
        }
        return new Scan(scan.header.comments(), points, scan.unmeasured.get());
    }

    private List<PlyElement> before() {
        return header.elements().subList(0, header.elements().indexOf(vertex));
    }

    private PointCloud text() throws IOException, BadBoardFile {
        long skipped = 0;
        for (PlyElement element : before()) {
            skipped += element.count();
        }
        long start = header.bytes();
        byte[] block = new byte[BLOCK];
        for (long lines = skipped; lines > 0;) {
            int read = source.read(start, block, 0, BLOCK);
            if (read == 0) {
                throw truncated(0);
            }
            int used = 0;
            while (used < read && lines > 0) {
                lines -= block[used++] == '\n' ? 1 : 0;
            }
            start += used;
        }
        // A row of text takes two bytes a number at the least, so a hostile count asks for no memory.
        if (vertex.count() > (source.size() - start + 1) / (2L * vertex.properties().size())) {
            throw truncated((source.size() - start) / (2L * vertex.properties().size()));
        }
        TextRows rows = new TextRows(source, new RowForm(RowForm.BLANKS, (byte) '.', axes), faults, start,
            header.lines() + skipped + 1, vertex.count());
        PointCloud points = rows.read();
        unmeasured.set(rows.unmeasured());
        if (points.size() + (long) rows.unmeasured() < vertex.count()) {
            throw truncated(points.size() + (long) rows.unmeasured());
        }
        return points;
    }

    private PointCloud binary(ByteOrder order) throws IOException, BadBoardFile {
        long start = header.bytes();
        for (PlyElement element : before()) {
            start = behind(element, start, order);
        }
        int stride = vertex.leastBytes();
        int count = (int) vertex.count();
        if (count > (source.size() - start) / stride) {
            throw truncated(Math.max(0, (source.size() - start) / stride));
        }
        int each = BLOCK / stride;
        int parts = (count + each - 1) / each;
        int[] from = new int[parts];
        for (int i = 0; i < parts; i++) {
            from[i] = i * each;
        }
        Portions portions = new Portions(from, count);
        long first = start;
        ScanSource.inParts(parts, i -> readPart(i, first + (long) from[i] * stride, Math.min(each, count - from[i]),
            order, portions));
        return portions.closed();
    }

    private void readPart(int part, long at, int count, ByteOrder order, Portions portions) {
        int stride = vertex.leastBytes();
        byte[] bytes = new byte[count * stride];
        source.advance(source.read(at, bytes, 0, bytes.length));
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(order);
        PlyType typeX = vertex.properties().get(axes[0]).type();
        PlyType typeY = vertex.properties().get(axes[1]).type();
        PlyType typeZ = vertex.properties().get(axes[2]).type();
        int offsetX = vertex.offsetOf(axes[0]);
        int offsetY = vertex.offsetOf(axes[1]);
        int offsetZ = vertex.offsetOf(axes[2]);
        int missed = 0;
        for (int row = 0; row < bytes.length; row += stride) {
            double x = typeX.read(buffer, row + offsetX);
            double y = typeY.read(buffer, row + offsetY);
            double z = typeZ.read(buffer, row + offsetZ);
            if (Double.isFinite(x + y + z)) {
                portions.add(part, x, y, z);
            } else {
                missed++;
            }
        }
        unmeasured.addAndGet(missed);
    }

    /** Place behind all of an element's things; each list has to be looked at for its length. */
    private long behind(PlyElement element, long start, ByteOrder order) throws BadBoardFile {
        if (!element.hasLists()) {
            if (element.count() > (source.size() - start) / Math.max(1, element.leastBytes())) {
                throw truncated(0);
            }
            return start + element.count() * element.leastBytes();
        }
        long at = start;
        byte[] block = new byte[BLOCK];
        ByteBuffer buffer = ByteBuffer.wrap(block).order(order);
        long blockAt = -1;
        int filled = 0;
        for (long i = 0; i < element.count(); i++) {
            for (PlyElement.Property property : element.properties()) {
                PlyType lengthType = property.length().orElse(property.type());
                if (blockAt < 0 || at < blockAt || at + lengthType.bytes() > blockAt + filled) {
                    blockAt = at;
                    filled = source.read(at, block, 0, BLOCK);
                    if (filled < lengthType.bytes()) {
                        throw truncated(0);
                    }
                }
                double length = property.length().isPresent() ? lengthType.read(buffer, (int) (at - blockAt)) : 0;
                at += lengthType.bytes() + (long) Math.max(0, length) * (property.length().isPresent()
                    ? property.type().bytes() : 0);
            }
        }
        return at;
    }

    private BadBoardFile truncated(long found) {
        return faults.whole(vertex.count() + " vertices, as the header says", "the end of the file after "
            + found, "The file was cut short: copy or save it anew.");
    }
}
