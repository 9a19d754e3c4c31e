package outwind.scan.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import outwind.scan.bytes.BlockReader;
import outwind.scan.bytes.PointPieces;
import outwind.scan.bytes.ScanBytes;

/** Reads binary vertices of one size, piece by piece. */
final class PlyWorker implements BlockReader.Worker {

    private final ScanBytes file;
    private final long begin;
    private final int stride;
    private final int[] room;
    private final PointPieces pieces;
    private final ByteBuffer buffer;
    private final PlyType[] types = new PlyType[3];
    private final int[] offsets = new int[3];

    /**
     * @param begin where the first vertex begins (bytes)
     * @param room  how many vertices each piece has
     */
    PlyWorker(ScanBytes file, long begin, ByteOrder order, PlyElement vertices, int[] room, PointPieces pieces) {
        this.file = file;
        this.begin = begin;
        this.room = room;
        this.pieces = pieces;
        stride = vertices.leastBytes();
        buffer = ByteBuffer.allocate((room.length == 0 ? 0 : room[0]) * stride).order(order);
        for (int axis = 0; axis < 3; axis++) {
            int place = vertices.place(RowLayout.AXES.charAt(axis));
            types[axis] = vertices.properties().get(place).type();
            offsets[axis] = vertices.offset(place);
        }
    }

    @Override
    public boolean take(int piece) throws IOException {
        long from = begin + (long) piece * room[0] * stride;
        file.read(from, from + (long) room[piece] * stride, buffer.array());
        int place = pieces.begin(piece);
        for (int at = 0; at < room[piece] * stride; at += stride) {
            double x = types[0].at(at + offsets[0], buffer);
            double y = types[1].at(at + offsets[1], buffer);
            double z = types[2].at(at + offsets[2], buffer);
            place += pieces.put(place, x, y, z) ? 1 : 0;
        }
        pieces.filled(piece, place - pieces.begin(piece));
        return true;
    }
}
