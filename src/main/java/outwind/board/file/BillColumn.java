package outwind.board.file;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import outwind.board.text.Spelling;

/** A column that a cutting bill may have. */
public enum BillColumn {
    NAME("name", "part"), LENGTH("length", "l"), WIDTH("width", "w"), THICKNESS("thickness", "t"),
    QUANTITY("quantity", "qty"), VALUE("value"), ANY_GRAIN("any grain");

    private final String word;
    private final List<String> words;

    /** @param others what spreadsheets call it as well; common practice */
    BillColumn(String word, String... others) {
        this.word = word;
        this.words = Stream.concat(Stream.of(word), Stream.of(others)).toList();
    }

    /** The column of that name, in any case. */
    static Optional<BillColumn> find(String name) {
        String lower = name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(column -> column.words.contains(lower)).findFirst();
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
