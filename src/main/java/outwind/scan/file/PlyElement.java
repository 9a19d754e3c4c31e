package outwind.scan.file;

import java.util.List;
import java.util.Optional;

/**
 * One kind of thing in a .ply file: vertices, faces and the like.
 *
 * @param name       such as {@code vertex}
 * @param count      how many there are, as the header says
 * @param line       the header's line that says so
 * @param properties what each of them has, in the order of the file
 */
record PlyElement(String name, long count, int line, List<Property> properties) {

    /**
     * A number, or a list of numbers behind its length.
     *
     * @param name   such as {@code x}
     * @param type   of the number, or of each in the list
     * @param length type of the list's length, or nothing for a single number
     */
    record Property(String name, PlyType type, Optional<PlyType> length) {

        /** Bytes it has at least, which is all of them unless it is a list. */
        int leastBytes() {
            return length.orElse(type).bytes();
        }

        boolean isList() {
            return length.isPresent();
        }
    }

    /** Bytes that one has at least, and exactly if {@link #isEven}. */
    int leastBytes() {
        return properties.stream().mapToInt(Property::leastBytes).sum();
    }

    /** Whether all are of one size in a binary file. */
    boolean isEven() {
        return properties.stream().noneMatch(Property::isList);
    }

    /** What its properties are to a row: x, y, z, other cells, or lists. */
    byte[] cells() {
        byte[] cells = new byte[properties.size()];
        for (int i = 0; i < cells.length; i++) {
            int axis = axis(properties.get(i).name());
            cells[i] = properties.get(i).isList() ? RowLayout.LIST : axis >= 0 ? (byte) axis : RowLayout.OTHER;
        }
        return cells;
    }

    /** Place of a single number of this name among the properties, or -1. */
    int place(char axis) {
        for (int i = 0; i < properties.size(); i++) {
            if (!properties.get(i).isList() && axis(properties.get(i).name()) == RowLayout.AXES.indexOf(axis)) {
                return i;
            }
        }
        return -1;
    }

    /** Where a property begins in one that {@link #isEven} (bytes). */
    int offset(int place) {
        return properties.subList(0, place).stream().mapToInt(Property::leastBytes).sum();
    }

    private static int axis(String name) {
        return name.length() == 1 ? RowLayout.AXES.indexOf(name) : -1;
    }
}
