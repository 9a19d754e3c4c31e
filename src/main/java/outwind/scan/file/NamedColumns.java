package outwind.scan.file;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import outwind.board.Fault;
import outwind.board.file.Column;
import outwind.board.file.ColumnName;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.KeyLine;
import outwind.scan.bytes.ScanBytes;

/**
 * The line of a table that names its columns: x, y and z in any order and any case, others beside them. A unit behind
 * the name, as in {@code x (mm)}, counts as a line {@code # units: mm}.
 */
final class NamedColumns {

    private static final List<Column> AXES = List.of(Column.X, Column.Y, Column.Z);
    // These columns change what a row means, so that it would be wrong to pass them over.
    private static final Set<String> OF_BOARD_FILES = Set.of("face", "thickness", "depth");

    private final String file;
    private final int line;
    private final int lineLength;
    private final char delimiter;
    private final List<Cell> names;

    NamedColumns(String file, int line, String text, char delimiter) {
        this.file = file;
        this.line = line;
        this.delimiter = delimiter;
        lineLength = text.length();
        names = split(line, text, delimiter);
    }

    static List<Cell> split(int number, String line, char delimiter) {
        byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
        RowCells cells = new RowCells(RowLayout.bare(delimiter));
        cells.row(bytes, 0, bytes.length);
        List<Cell> names = new ArrayList<>();
        while (cells.next()) {
            names.add(new Cell(ScanBytes.decoded(bytes, cells.from(), cells.to()), number,
                ScanBytes.decoded(bytes, 0, cells.from()).length() + 1));
        }
        return names;
    }

    /** How the rows below are laid out; what is missing or said twice becomes a fault. */
    RowLayout layout(FaultList faults) {
        byte[] cells = new byte[names.size()];
        Arrays.fill(cells, RowLayout.OTHER);
        boolean[] seen = new boolean[RowLayout.AXES.length()];
        for (int index = 0; index < cells.length; index++) {
            Cell name = names.get(index);
            Optional<Column> column = ColumnName.of(name, AXES).map(ColumnName::column);
            if (column.isPresent()) {
                int axis = AXES.indexOf(column.get());
                if (seen[axis]) {
                    faults.add(name, "one column " + column.get().word(), "Rename it or take it out.");
                }
                seen[axis] = true;
                cells[index] = (byte) axis;
            } else if (OF_BOARD_FILES.contains(name.text().toLowerCase(Locale.ROOT))) {
                faults.add(name, "a scan of one face: columns x, y, z and no " + name.text(), "Take the column out; a file"
                        + " under " + ScanFile.LARGEST_BY_HAND / 1024
                        + " KiB may have it.");
            }
        }
        refuseMissing(seen, faults);
        return new RowLayout(delimiter, cells, false, "line " + line);
    }

    /** The units that stand behind the names, as header lines. */
    List<HeaderLine> units() {
        return names.stream().flatMap(name -> ColumnName.of(name, AXES).flatMap(ColumnName::unit).stream()
            .map(unit -> new HeaderLine(file, new KeyLine(new Cell("units", line, name.column()),
                new Cell(unit.symbol(), line, name.column()))))).toList();
    }

    private void refuseMissing(boolean[] seen, FaultList faults) {
        if (!seen[0] && !seen[1] && !seen[2]) {
            faults.add(line, 1, "a point x y z, or a row that names the columns x, y and z",
                Fault.shown(names.get(0).text()), "Above the points put a row such as \"x,y,z\", or nothing.");
            return;
        }
        for (int axis = 0; axis < seen.length; axis++) {
            if (!seen[axis]) {
                faults.add(line, lineLength + 1, "a column " + RowLayout.AXES.charAt(axis), "the end of the row",
                    "Every point needs its place x along the grain, y across, and its height z: name them so.");
            }
        }
    }
}
