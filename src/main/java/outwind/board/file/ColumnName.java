package outwind.board.file;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import outwind.board.Units;
import outwind.board.text.Cell;

/**
 * What a cell of a header row names: {@code x}, {@code x mm}, {@code x (mm)} or {@code x [mm]}.
 *
 * @param column the column
 * @param unit   the unit behind its name, if there is one
 */
public record ColumnName<C extends TableColumn>(C column, Optional<Units> unit) {

    /** The one of some columns that a cell names; nothing if it names none, or what stands behind the name is no unit. */
    public static <C extends TableColumn> Optional<ColumnName<C>> of(Cell cell, List<C> columns) {
        String text = cell.text().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        return columns.stream().flatMap(column -> Stream.concat(Stream.of(column.word()), column.otherWords().stream())
            .flatMap(word -> named(text, word, column).stream())).findFirst();
    }

    private static <C extends TableColumn> Optional<ColumnName<C>> named(String text, String word, C column) {
        if (!text.startsWith(word)) {
            return Optional.empty();
        }
        String rest = text.substring(word.length());
        String bare = rest.replaceAll("[(\\[)\\]]", "").strip();
        if (bare.isEmpty()) {
            return rest.isBlank() ? Optional.of(new ColumnName<>(column, Optional.empty())) : Optional.empty();
        }
        return column.isLength() && " ([".indexOf(rest.charAt(0)) >= 0
            ? Units.find(bare).map(unit -> new ColumnName<>(column, Optional.of(unit))) : Optional.empty();
    }
}
