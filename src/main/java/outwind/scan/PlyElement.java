package outwind.scan;

import java.util.List;
import java.util.Optional;

/**
 * One kind of thing in a PLY file.
 *
 * @param name       {@code vertex} for the points
 * @param count      how many there are
 * @param properties of each, in the order of the file
 */
record PlyElement(String name, long count, List<Property> properties) {

    /**
     * A number that each of them has, or a list of numbers.
     *
     * @param type   of the number, or of those in the list
     * @param length type of the list's length; empty for a number alone
     */
    record Property(String name, PlyType type, Optional<PlyType> length) { }

    boolean hasLists() {
        return properties.stream().anyMatch(property -> property.length().isPresent());
    }

    /** Bytes of one of them in a binary file, lists counted as empty. */
    int leastBytes() {
        return properties.stream().mapToInt(property -> property.length().orElse(property.type()).bytes()).sum();
    }

    /** Which property has a name; −1 if none. */
    int indexOf(String wanted) {
        for (int i = 0; i < properties.size(); i++) {
            if (properties.get(i).name().equals(wanted)) {
                return i;
            }
        }
        return -1;
    }

    /** Bytes before a property, in an element without lists. */
    int offsetOf(int index) {
        return properties.subList(0, index).stream().mapToInt(property -> property.type().bytes()).sum();
    }
}
