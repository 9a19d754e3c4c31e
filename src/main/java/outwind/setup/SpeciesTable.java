package outwind.setup;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Woods whose stiffness and shrinkage are on record, by the names people use; sources stand in the table itself. */
final class SpeciesTable {

    /** Water in wood at 12 % moisture, which gravity on ovendry weight leaves out. */
    private static final double WET = 1.12;
    private static final double WATER = 1000;

    private static final List<Row> ROWS = read();

    private SpeciesTable() { }

    /**
     * One wood.
     *
     * @param kinds words that alone tell what wood it may be: oak, quercus
     * @param words every word of its names
     */
    public record Row(Set<String> kinds, Set<String> words, Stiffness stiffness, Shrinkage shrinkage) { }

    /**
     * The wood that shares most words with the asked name, one of them its kind.
     *
     * @param cautious the last of several woods in this order is taken
     */
    static Optional<Row> find(String name, Comparator<Row> cautious) {
        Set<String> asked = words(name);
        return ROWS.stream()
            .filter(row -> row.kinds().stream().anyMatch(asked::contains))
            .max(Comparator.comparingLong((Row row) -> asked.stream().filter(row.words()::contains).count())
                .thenComparing(cautious));
    }

    /** All of them. */
    static List<Row> rows() {
        return ROWS;
    }

    private static Set<String> words(String name) {
        return Arrays.stream(name.toLowerCase(Locale.ROOT).split("[^\\p{L}]+")).filter(word -> !word.isEmpty())
            .collect(Collectors.toSet());
    }

    private static List<Row> read() {
        try (InputStream table = SpeciesTable.class.getResourceAsStream("species.csv")) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8).lines()
                .filter(line -> !line.startsWith("#")).skip(1).map(line -> row(line.split(",", -1))).toList();
        } catch (IOException e) {
            throw new UncheckedIOException("species.csv of this program cannot be read", e);
        }
    }

    private static Row row(String[] cells) {
        String name = cells[0];
        String[] common = name.replaceAll("\\(.*", "").trim().split("[ -]");
        Set<String> kinds = new HashSet<>(words(common[common.length - 1]));
        kinds.addAll(words(cells[1].split(" ")[0]));
        if (kinds.contains("redcedar")) {
            kinds.add("cedar");
        }
        Set<String> words = words(name + " " + cells[1] + " " + cells[2]);
        words.addAll(kinds);
        double along = Double.parseDouble(cells[3]);
        double across = along * Math.min(ratio(cells[4]), ratio(cells[5]));
        double density = Double.parseDouble(cells[6]) * WATER * WET;
        return new Row(kinds, words, new Stiffness(along, across, Stiffness.SHEAR_RATIO * along, Stiffness.POISSON,
            density, Optional.of(name)), new Shrinkage(Double.parseDouble(cells[7]) / 100,
            Double.parseDouble(cells[8]) / 100, number(cells[9]), number(cells[10]), Optional.of(name)));
    }

    private static OptionalDouble number(String cell) {
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }

    /** Where neither ratio is on record both cells are blank, and the cautious one stands in. */
    private static double ratio(String cell) {
        return cell.isEmpty() ? Stiffness.CAUTIOUS_RATIO : Double.parseDouble(cell);
    }
}
