package outwind.board.file;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import outwind.board.text.Spelling;

/** A column that a cutting bill may have. */
public enum BillColumn {
    NAME("name"), LENGTH("length"), WIDTH("width"), THICKNESS("thickness"), QUANTITY("quantity"), VALUE("value"),
    ANY_GRAIN("any grain");

    private final String word;

    BillColumn(String word) {
        this.word = word;
    }

    /** The column of that name, in any case. */
    static Optional<BillColumn> find(String name) {
        String lower = name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(column -> column.word.equals(lower)).findFirst();
    }

    /** What a column of no such name may have been meant for, as the beginning of an advice; perhaps empty. */
    public static String suggestion(String name) {
        return Spelling.suggestion(name, Arrays.stream(values()).map(BillColumn::word).toList());
    }

    String word() {
        return word;
    }

    boolean isLength() {
        return this == LENGTH || this == WIDTH || this == THICKNESS;
    }

    boolean isNeeded() {
        return this != VALUE && this != ANY_GRAIN;
    }
}
