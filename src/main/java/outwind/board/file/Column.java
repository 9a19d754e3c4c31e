package outwind.board.file;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import outwind.board.text.Spelling;

/** A column that a table may have. */
enum Column {
    X, Y, Z, THICKNESS, FACE, NOTE;

    /** The column of that name, in any case. */
    static Optional<Column> find(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(column -> column.word().equals(lower)).findFirst();
    }

    /** What a column of no such name may have been meant for, as the beginning of an advice; perhaps empty. */
    static String suggestion(String name) {
        return Spelling.suggestion(name, Arrays.stream(values()).map(Column::word).toList());
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    boolean isLength() {
        return this != FACE && this != NOTE;
    }
}
