package outwind.scan.file;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A type of number in a .ply file, by its older and its newer name. */
enum PlyType {
    INT8("char", 1), UINT8("uchar", 1), INT16("short", 2), UINT16("ushort", 2), INT32("int", 4), UINT32("uint", 4),
    FLOAT32("float", 4), FLOAT64("double", 8);

    private final String olderName;
    private final int bytes;

    PlyType(String olderName, int bytes) {
        this.olderName = olderName;
        this.bytes = bytes;
    }

    static Optional<PlyType> named(String name) {
        return Arrays.stream(values())
            .filter(type -> type.olderName.equals(name) || type.newerName().equals(name)).findFirst();
    }

    private String newerName() {
        return name().toLowerCase(Locale.ROOT);
    }

    int bytes() {
        return bytes;
    }

    boolean isWhole() {
        return this != FLOAT32 && this != FLOAT64;
    }

    /** The number at a place, which a double holds without error. */
    double at(int place, ByteBuffer buffer) {
        return switch (this) {
            case INT8 -> buffer.get(place);
            case UINT8 -> Byte.toUnsignedInt(buffer.get(place));
            case INT16 -> buffer.getShort(place);
            case UINT16 -> Short.toUnsignedInt(buffer.getShort(place));
            case INT32 -> buffer.getInt(place);
            case UINT32 -> Integer.toUnsignedLong(buffer.getInt(place));
            case FLOAT32 -> buffer.getFloat(place);
            case FLOAT64 -> buffer.getDouble(place);
        };
    }
}
