package outwind.scan.file;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.Fault;
import outwind.scan.bytes.ScanFaults;

/**
 * The line of a table that names its columns: x, y and z in any order and any case, others beside them. A unit behind
 * the name, as in {@code x (mm)}, counts as a line {@code # units: mm}.
 */
final class NamedColumns {

    private static final Pattern AXIS = Pattern.compile("(?<axis>[xyzXYZ])(\\s*+[(\\[]?+(?<unit>[^)\\]]++)[)\\]])?+");
    // These columns change what a row means, so that it would be wrong to pass them over.
    private static final Set<String> OF_BOARD_FILES = Set.of("face", "thickness");

    /**
     * One cell.
     *
     * @param text   without blanks and quotes around it
     * @param column of its first character in the line, 1-based
     */
    record Name(String text, int column) { }

    private final String file;
    private final int line;
    private final int lineLength;
    private final char delimiter;
    private final List<Name> names;

    NamedColumns(String file, int line, String text, char delimiter) {
        this.file = file;
        this.line = line;
        this.delimiter = delimiter;
        lineLength = text.length();
        names = split(text, delimiter);
    }

    static List<Name> split(String line, char delimiter) {
        byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
        RowCells cells = new RowCells(RowLayout.bare(delimiter));
        cells.row(bytes, 0, bytes.length);
        List<Name> names = new ArrayList<>();
        while (cells.next()) {
            names.add(new Name(ScanFaults.decoded(bytes, cells.from(), cells.to()),
                ScanFaults.decoded(bytes, 0, cells.from()).length() + 1));
        }
        return names;
    }

    /** How the rows below are laid out; what is missing or said twice becomes a fault. */
    RowLayout layout(ScanFaults faults) {
        byte[] cells = new byte[names.size()];
        Arrays.fill(cells, RowLayout.OTHER);
        boolean[] seen = new boolean[RowLayout.AXES.length()];
        for (int index = 0; index < cells.length; index++) {
            Name name = names.get(index);
            int axis = axis(name);
            if (axis >= 0) {
                if (seen[axis]) {
                    faults.add(line, name.column(), "one column " + RowLayout.AXES.charAt(axis),
                        Fault.shown(name.text()), "Rename it or take it out.");
                }
                seen[axis] = true;
                cells[index] = (byte) axis;
            } else if (OF_BOARD_FILES.contains(name.text().toLowerCase(Locale.ROOT))) {
                faults.add(line, name.column(), "a scan of one face: columns x, y, z and no " + name.text(),
                    Fault.shown(name.text()), "Take the column out; a file under " + ScanFile.LARGEST_BY_HAND / 1024
                        + " KiB may have it.");
            }
        }
        refuseMissing(seen, faults);
        return new RowLayout(delimiter, cells, false, "line " + line);
    }

    /** The units that stand behind the names, as header lines. */
    List<HeaderLine> units() {
        return names.stream().filter(name -> !unit(name).isEmpty())
            .map(name -> new HeaderLine(file, line, name.column(), "units", unit(name))).toList();
    }

    private void refuseMissing(boolean[] seen, ScanFaults faults) {
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

    private static int axis(Name name) {
        Matcher written = AXIS.matcher(name.text());
        return written.matches() ? RowLayout.AXES.indexOf(written.group("axis").toLowerCase(Locale.ROOT)) : -1;
    }

    private static String unit(Name name) {
        Matcher written = AXIS.matcher(name.text());
        return written.matches() && written.group("unit") != null ? written.group("unit").strip() : "";
    }
}
