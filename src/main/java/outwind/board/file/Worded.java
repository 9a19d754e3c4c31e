package outwind.board.file;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A constant of an enum that files call by a word. */
public interface Worded {

    /** Name of the constant. */
    String name();

    /** What files call it. */
    default String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** What spreadsheets call it as well. */
    default List<String> otherWords() {
        return List.of();
    }

    /** The words of all constants of a kind. */
    static List<String> words(Class<? extends Worded> kind) {
        return Arrays.stream(kind.getEnumConstants()).map(Worded::word).toList();
    }
}
