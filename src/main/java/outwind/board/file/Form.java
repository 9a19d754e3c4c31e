package outwind.board.file;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import outwind.board.text.Row;

/**
 * What kind of table a file holds.
 *
 * @param word     what such a file is called
 * @param use      where it is given
 * @param columns  what its columns can be
 * @param telltale two columns that no other form has both of
 * @param example  a header row
 * @param keys     the words of its keys
 * @param missing  said where a needed column is missing
 * @param remarks  where remarks go; perhaps empty
 * @param lenient  whether columns of other names are left alone
 */
record Form<C extends Enum<C> & TableColumn>(String word, String use, Class<C> columns, List<C> telltale,
        String example, List<String> keys, String missing, String remarks, boolean lenient) {

    static final Form<Column> BOARD = new Form<>("a board file", "judge", Column.class, List.of(Column.X, Column.Y),
        "x,y,z", Worded.words(Key.class),
        "Every reading needs its place: x along the grain and y across.",
        "; remarks go into a column named note", false);

    static final Form<BillColumn> BILL = new Form<>("a cutting bill", "blanks or stack after --bill", BillColumn.class,
        List.of(BillColumn.LENGTH, BillColumn.QUANTITY), "name,length,width,thickness,quantity",
        Worded.words(BillFile.Key.class),
        "A cutting bill needs the columns name, length, width, thickness and quantity.", "", true);

    static final Form<CutterColumn> SHOP = new Form<>("a shop file", "judge after --shop", CutterColumn.class,
        List.of(CutterColumn.CUTTER, CutterColumn.DIAMETER), "cutter,diameter,deepest pass,feed",
        Worded.words(ShopFile.Key.class),
        "A table of cutters needs the columns cutter, diameter, deepest pass and feed.", "", false);

    /** The other form whose columns a row names, if it is none of this one's. */
    Optional<Form<?>> insteadOfThis(Row row) {
        return isNamedBy(row) ? Optional.empty()
            : List.<Form<?>>of(BOARD, BILL, SHOP).stream().filter(form -> form.isNamedBy(row)).findFirst();
    }

    private boolean isNamedBy(Row row) {
        return this == (Form<?>) BOARD && Header.isCorner(row.cell(0))
            || telltale.stream().allMatch(column -> row.cells().stream()
                .anyMatch(cell -> ColumnName.of(cell, List.of(column)).isPresent()));
    }

    List<C> all() {
        return Arrays.asList(columns.getEnumConstants());
    }

    /** Its columns, as they are listed in a sentence. */
    String listed() {
        List<String> words = Worded.words(columns);
        return words.stream().limit(words.size() - 1L).collect(Collectors.joining(", ")) + " or "
            + words.get(words.size() - 1);
    }
}
