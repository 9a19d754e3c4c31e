package outwind.scan;

import java.nio.ByteBuffer;
import java.util.Map;
import java.util.Optional;

/** A type of number in a PLY file. */
enum PlyType {
    INT8(1), UINT8(1), INT16(2), UINT16(2), INT32(4), UINT32(4), FLOAT32(4), FLOAT64(8);

    private static final Map<String, PlyType> NAMES = Map.ofEntries(
        Map.entry("char", INT8), Map.entry("int8", INT8), Map.entry("uchar", UINT8), Map.entry("uint8", UINT8),
        Map.entry("short", INT16), Map.entry("int16", INT16), Map.entry("ushort", UINT16), Map.entry("uint16", UINT16),
        Map.entry("int", INT32), Map.entry("int32", INT32), Map.entry("uint", UINT32), Map.entry("uint32", UINT32),
        Map.entry("float", FLOAT32), Map.entry("float32", FLOAT32), Map.entry("double", FLOAT64),
        Map.entry("float64", FLOAT64));

    private final int bytes;

    PlyType(int bytes) {
        this.bytes = bytes;
    }

    /** Type of a name as headers write it: {@code float} or {@code float32}. */
    static Optional<PlyType> named(String name) {
        return Optional.ofNullable(NAMES.get(name));
    }

    int bytes() {
        return bytes;
    }

    boolean isWhole() {
        return this != FLOAT32 && this != FLOAT64;
    }

    /** The number at a place, in the buffer's order of bytes. */
    double read(ByteBuffer buffer, int at) {
        return switch (this) {
            case INT8 -> buffer.get(at);
            case UINT8 -> buffer.get(at) & 0xFF;
            case INT16 -> buffer.getShort(at);
            case UINT16 -> buffer.getShort(at) & 0xFFFF;
            case INT32 -> buffer.getInt(at);
            case UINT32 -> buffer.getInt(at) & 0xFFFFFFFFL;
            case FLOAT32 -> buffer.getFloat(at);
            case FLOAT64 -> buffer.getDouble(at);
        };
    }
}
