package outwind.numeric;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A comma-separated table from the test resources: a header, then rows; lines that begin with # are remarks. */
public record ReferenceTable(List<String> header, List<String[]> rows) {

    public static ReferenceTable read(String resource) {
        try (InputStream in = ReferenceTable.class.getResourceAsStream(resource)) {
            List<String[]> rows = new ArrayList<>();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\\R")) {
                if (!line.startsWith("#") && !line.isBlank()) {
                    rows.add(line.split(",", -1));
                }
            }
            return new ReferenceTable(List.of(rows.get(0)), rows.subList(1, rows.size()));
        } catch (IOException e) {
            throw new IllegalStateException(resource, e);
        }
    }

    public double[] column(String name) {
        int j = header.indexOf(name);
        return rows.stream().mapToDouble(row -> Double.parseDouble(row[j])).toArray();
    }

    /** The last cell of the only row that begins with these cells. */
    public double value(String... key) {
        for (String[] row : rows) {
            boolean same = true;
            for (int j = 0; j < key.length; j++) {
                same &= row[j].equals(key[j]);
            }
            if (same) {
                return Double.parseDouble(row[row.length - 1]);
            }
        }
        throw new IllegalStateException("no row " + String.join(",", key));
    }
}
