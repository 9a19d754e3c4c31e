package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Reading;
import outwind.board.text.BadBoardFile;

/**
 * Board files in the styles that people and spreadsheets write, made from boards that are known: the reader gives that
 * board or a fault, never another board without a word.
 *
 * <p>So many files as {@code -Dintent.files} says, 20,000 unless stated.
 */
class IntentTest {

    private static final int FILES = Integer.getInteger("intent.files", 10_000);

    /** One reading as it was meant; the thickness is NaN where no caliper was put (mm). */
    private record Meant(double x, double y, double z, double thickness, String note) { }

    /** A board as it was meant (mm). */
    private record Intent(double length, double width, double thickness, List<Meant> readings) { }

    /** How it is written down. */
    private record Style(char delimiter, boolean comma, boolean thousands, boolean inches, boolean quotes, boolean cells,
            boolean thicknessColumn, boolean noteColumn, boolean emptyColumns, boolean blankRows, boolean forgottenColon,
            String lineEnd, boolean byteOrderMark, boolean upperCase, boolean unitsInHeader,
            boolean depths, boolean bareKeys, String none) {

        static Style of(SplittableRandom random) {
            char delimiter = ",;\t".charAt(random.nextInt(3));
            return new Style(delimiter, random.nextInt(4) == 0, random.nextInt(12) == 0, random.nextInt(4) == 0,
                random.nextInt(4) == 0, random.nextInt(4) == 0, random.nextInt(4) == 0, random.nextInt(4) == 0,
                random.nextInt(4) == 0, random.nextInt(4) == 0, random.nextInt(20) == 0,
                List.of("\r\n", "\n", "\r").get(random.nextInt(3)), random.nextInt(5) == 0, random.nextInt(5) == 0,
                random.nextInt(6) == 0, random.nextInt(5) == 0, random.nextInt(5) == 0,
                List.of("", "", "n/a", "-").get(random.nextInt(4)));
        }

        String key(String word) {
            return (bareKeys ? "" : "# ") + word;
        }

        /** A length as this style writes it. */
        String number(double mm, int decimals) {
            double value = inches ? mm / 25.4 : mm;
            String text = String.format(Locale.ROOT, "%." + (inches ? decimals + 2 : decimals) + "f", value);
            String whole = text.split("\\.")[0];
            if (thousands && Math.abs(value) >= 1000) {
                String grouped = String.format(Locale.ROOT, "%,d", Long.parseLong(whole));
                text = grouped.replace(',', comma ? '.' : ',') + text.substring(whole.length());
            }
            int mark = text.lastIndexOf('.');
            return comma && mark >= whole.length() && decimals > 0 ? text.substring(0, mark) + ',' + text.substring(mark + 1)
                : text;
        }

        String cell(String text) {
            return quotes && !text.isEmpty() ? '"' + text + '"' : text;
        }

        String row(List<String> cells) {
            List<String> all = new ArrayList<>(cells.stream().map(this::cell).toList());
            if (emptyColumns) {
                all.add("");
                all.add("");
            }
            return String.join(String.valueOf(delimiter), all);
        }

        String word(String word) {
            return upperCase ? word.toUpperCase(Locale.ROOT) : word;
        }
    }

    private static Intent intent(SplittableRandom random, Style style) {
        double length = tenths(random.nextDouble(300, 3000));
        double width = tenths(random.nextDouble(80, 400));
        double thickness = tenths(random.nextDouble(15, 60));
        int columns = 2 + random.nextInt(4);
        int rows = 2 + random.nextInt(2);
        boolean whole = random.nextInt(4) == 0;
        List<Meant> readings = new ArrayList<>();
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                double x = Math.rint(20 + (length - 40) * i / (columns - 1));
                double y = Math.rint(15 + (width - 30) * j / (rows - 1));
                double z = whole ? random.nextInt(-3, 4) : Math.rint(random.nextDouble(-4, 4) * 100) / 100;
                double caliper = style.thicknessColumn() && random.nextInt(3) > 0
                    ? tenths(thickness + random.nextDouble(-0.9, 0.9)) : Double.NaN;
                readings.add(new Meant(x, y, z, caliper, style.noteColumn() && random.nextInt(4) == 0 ? "knot" : ""));
            }
        }
        return new Intent(length, width, thickness, readings);
    }

    private static double tenths(double mm) {
        return Math.rint(mm * 10) / 10;
    }

    private static String written(Intent intent, Style style, SplittableRandom random) {
        List<String> lines = new ArrayList<>();
        lines.add(style.key("units: ") + (style.inches() ? "in" : "mm"));
        lines.add(style.key("length: ") + style.number(intent.length(), 1));
        lines.add(style.key("width: ") + style.number(intent.width(), 1));
        lines.add(style.key("thickness") + (style.forgottenColon() ? " " : ": ") + style.number(intent.thickness(), 1));
        if (style.cells()) {
            lines.addAll(cells(intent, style));
        } else {
            lines.addAll(named(intent, style));
        }
        if (style.blankRows()) {
            lines.add(1 + random.nextInt(lines.size() - 1), random.nextBoolean() ? "" : ",".repeat(3));
        }
        return (style.byteOrderMark() ? "\ufeff" : "") + String.join(style.lineEnd(), lines)
            + (random.nextBoolean() ? style.lineEnd() : "");
    }

    private static List<String> named(Intent intent, Style style) {
        String unit = style.unitsInHeader() ? style.inches() ? " (in)" : " (mm)" : "";
        List<String> header = new ArrayList<>(List.of(style.word("x") + unit, style.word("y") + unit,
            style.word(style.depths() ? "depth" : "z") + unit));
        if (style.thicknessColumn()) {
            header.add(style.word("thickness") + unit);
        }
        if (style.noteColumn()) {
            header.add(style.word("note"));
        }
        List<String> lines = new ArrayList<>(List.of(style.row(header)));
        for (Meant meant : intent.readings()) {
            List<String> row = new ArrayList<>(List.of(style.number(meant.x(), 0), style.number(meant.y(), 0),
                style.number(style.depths() ? 0 - meant.z() : meant.z(), 2)));
            if (style.thicknessColumn()) {
                row.add(Double.isNaN(meant.thickness()) ? style.none() : style.number(meant.thickness(), 1));
            }
            if (style.noteColumn()) {
                row.add(meant.note());
            }
            lines.add(style.row(row));
        }
        return lines;
    }

    private static List<String> cells(Intent intent, Style style) {
        List<Double> x = intent.readings().stream().map(Meant::x).distinct().toList();
        List<String> header = new ArrayList<>(List.of("y\\x"));
        x.forEach(at -> header.add(style.number(at, 0)));
        List<String> lines = new ArrayList<>(List.of(style.row(header)));
        for (double y : intent.readings().stream().map(Meant::y).distinct().toList()) {
            List<String> row = new ArrayList<>(List.of(style.number(y, 0)));
            intent.readings().stream().filter(meant -> meant.y() == y).forEach(meant ->
                row.add(style.number(meant.z(), 2)));
            lines.add(style.row(row));
        }
        return lines;
    }

    private static void requireSame(Intent intent, Style style, Board board, String text) {
        double tolerance = style.inches() ? 0.0254 * 2 : 1e-9;
        assertEquals(intent.length(), board.length(), style.inches() ? 0.03 : 1e-9, text);
        assertEquals(intent.width(), board.width(), style.inches() ? 0.03 : 1e-9, text);
        assertEquals(intent.thickness(), board.thickness().orElse(Double.NaN), style.inches() ? 0.03 : 1e-9, text);
        assertEquals(intent.readings().size(), board.readings().size(), text);
        for (int k = 0; k < intent.readings().size(); k++) {
            Meant meant = intent.readings().get(k);
            Reading reading = board.readings().get(k);
            assertEquals(meant.x(), reading.x(), style.inches() ? 0.3 : 1e-9, text);
            assertEquals(meant.y(), reading.y(), style.inches() ? 0.3 : 1e-9, text);
            assertEquals(meant.z(), reading.z(), tolerance, text);
            assertEquals(style.cells() ? "" : meant.note(), reading.note(), text);
        }
        if (!style.cells()) {
            List<Double> calipers = intent.readings().stream().map(Meant::thickness).filter(t -> !t.isNaN()).toList();
            assertEquals(calipers.size(), board.calipers().size(), text);
            for (int k = 0; k < calipers.size(); k++) {
                assertEquals(calipers.get(k), board.calipers().get(k).thickness(), style.inches() ? 0.03 : 1e-9, text);
            }
        }
    }

    @Test
    void theReaderGivesWhatWasMeantOrAFault() {
        int read = 0;
        int plain = 0;
        int plainRefused = 0;
        String refusal = "";
        for (int k = 0; k < FILES; k++) {
            SplittableRandom random = new SplittableRandom(k);
            Style style = Style.of(random);
            Intent intent = intent(random, style);
            String text = written(intent, style, random);
            // What any reader must take: one mark for decimals that is not the one between cells, nothing forgotten.
            boolean isPlain = !(style.comma() && style.delimiter() == ',') && !style.thousands()
                && !style.forgottenColon() && !(style.comma() && style.inches());
            plain += isPlain ? 1 : 0;
            try {
                requireSame(intent, style, BoardFile.parse("board.csv", text, Defaults.NOTHING), text);
                read++;
            } catch (BadBoardFile e) {
                if (isPlain) {
                    plainRefused++;
                    refusal = e.getMessage() + "\n" + text;
                }
            }
        }
        assertTrue(read > FILES / 2, read + " of " + FILES + " files were read");
        assertEquals(0, plainRefused, plainRefused + " of " + plain + " plain files were refused, such as\n" + refusal);
    }
}
