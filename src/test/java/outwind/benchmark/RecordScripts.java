package outwind.benchmark;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import outwind.cli.Main;

/**
 * Guided entry beside a model of its commands, written from the page about recording and from nothing else: after each
 * line typed, the file holds what the model holds, and the next question is the model's. Whether a height is doubted
 * and what is suggested once the plan is done are taken from what is printed; what follows is the model's.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=RecordScripts}; {@code commands} and {@code seed}
 * are properties of the virtual machine.
 */
public final class RecordScripts {

    private static final int USUAL_COMMANDS = 100_000;
    private static final int LONGEST_SCRIPT = 40;
    private static final Pattern ASKED = Pattern.compile("x (-?[\\d.]+) y (-?[\\d.]+)( again)?:\\s*$");
    private static final List<String> WORDS = List.of("undo", "skip", "again", "go", "note", "by", "list", "why", "help",
        "done");
    private static final String NO_PLACE = "x y height, or done:";

    private RecordScripts() { }

    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory("scripts");
        SplittableRandom random = new SplittableRandom(Long.getLong("seed", 20261127L));
        Map<String, Integer> counts = new TreeMap<>();
        int wanted = Integer.getInteger("commands", USUAL_COMMANDS);
        int done = 0;
        int scripts = 0;
        while (done < wanted) {
            done += run(folder.resolve("board.csv"), random.split(), counts);
            Files.delete(folder.resolve("board.csv"));
            scripts++;
        }
        Files.delete(folder);
        System.out.printf("%d commands in %d scripts, every answer and file as the model has it%n", done, scripts);
        counts.forEach((word, count) -> System.out.printf("  %-8s %7d%n", word, count));
    }

    /**
     * Runs one script on a new board, and goes on with the file once.
     *
     * @param counts of commands by their word, added to
     * @return the number of lines typed
     * @throws IllegalStateException if the program and the model differ
     */
    public static int run(Path file, SplittableRandom random, Map<String, Integer> counts) {
        int columns = 2 + random.nextInt(3);
        int rows = 2 + random.nextInt(2);
        Script script = new Script(file, random, counts);
        script.start("--length", "600", "--width", "150", "--thickness", "30", "--columns", "" + columns, "--rows",
            "" + rows, "--repeats", "" + random.nextInt(3));
        script.start();
        return script.typed;
    }

    /** A place (mm); questions show whole mm, the file holds tenths, so that half a millimetre is no difference. */
    private record Spot(double x, double y) {

        @Override
        public boolean equals(Object other) {
            return other instanceof Spot spot && Math.hypot(x - spot.x, y - spot.y) <= 0.75;
        }

        @Override
        public int hashCode() {
            return 0;
        }
    }

    /** A row of the file with something done: a height, or left out. */
    private record Row(Spot spot, Double height, String note) { }

    /** What the file says. */
    private record Content(List<Spot> plan, List<Row> rows) { }

    /** The board as a person keeps it in mind who has read the page. */
    private static final class Model {

        private List<Spot> plan = List.of();
        private final List<Row> rows = new ArrayList<>();
        private Spot chosen;
        private Double doubted;

        /** For each place of the plan, which row has done it; the last of all rows that did one is at the end. */
        private int[] doneBy() {
            int[] by = new int[plan.size() + 1];
            java.util.Arrays.fill(by, -1);
            for (int row = 0; row < rows.size(); row++) {
                for (int i = 0; i < plan.size(); i++) {
                    if (by[i] < 0 && plan.get(i).equals(rows.get(row).spot())) {
                        by[i] = row;
                        by[plan.size()] = i;
                        break;
                    }
                }
            }
            return by;
        }

        private Spot next() {
            int[] by = doneBy();
            int last = by[plan.size()];
            return IntStream.range(0, plan.size()).map(i -> (last + 1 + i) % plan.size()).filter(i -> by[i] < 0)
                .mapToObj(plan::get).findFirst().orElse(null);
        }

        private Spot asked() {
            return chosen != null ? chosen : next();
        }

        private Row lastTouch() {
            return rows.stream().filter(row -> row.height() != null).reduce((a, b) -> b).orElse(null);
        }

        private void add(Row row) {
            rows.add(row);
            chosen = null;
            doubted = null;
        }

        private void heightAt(Double height, boolean isDoubted) {
            if (isDoubted) {
                require(!Objects.equals(doubted, height), "a height typed again was doubted again");
                doubted = height;
            } else if (asked() != null) {
                add(new Row(asked(), height, ""));
            }
        }

        private void choose(Spot spot) {
            doubted = null;
            chosen = spot != null ? spot : chosen;
        }

        private void undo() {
            if (rows.isEmpty()) {
                return;
            }
            Row last = rows.remove(rows.size() - 1);
            doubted = null;
            chosen = null;
            chosen = last.spot().equals(next()) ? null : last.spot();
        }

        private void skip() {
            doubted = null;
            if (chosen != null || next() == null) {
                chosen = null;
            } else {
                add(new Row(next(), null, "skipped"));
            }
        }

        private void note(String text) {
            int at = rows.lastIndexOf(lastTouch());
            if (at >= 0 && !text.isEmpty()) {
                rows.set(at, new Row(rows.get(at).spot(), rows.get(at).height(), text));
                doubted = null;
            }
        }

        private void tidy() {
            int[] by = doneBy();
            plan = IntStream.range(0, plan.size()).filter(i -> by[i] < 0).mapToObj(plan::get).toList();
        }
    }

    /** Types line after line, and looks after each at what came of the one before. */
    private static final class Script extends InputStream {

        private final Path file;
        private final SplittableRandom random;
        private final Map<String, Integer> counts;
        private final Model model = new Model();
        private StringWriter out = new StringWriter();
        private int seen;
        private int left;
        private int typed;
        private boolean begun;
        private boolean over;
        private String line = "";
        private byte[] pending = new byte[0];
        private int at;
        private IllegalStateException difference;

        Script(Path file, SplittableRandom random, Map<String, Integer> counts) {
            this.file = file;
            this.random = random;
            this.counts = counts;
        }

        void start(String... options) {
            out = new StringWriter();
            seen = 0;
            left = 1 + random.nextInt(LONGEST_SCRIPT);
            begun = false;
            over = false;
            line = "";
            model.chosen = null;
            model.doubted = null;
            String[] args = new String[options.length + 2];
            args[0] = "record";
            args[1] = file.toString();
            System.arraycopy(options, 0, args, 2, options.length);
            int code = Main.run(this, new PrintWriter(out), new PrintWriter(out), args);
            if (difference != null) {
                throw difference;
            }
            require(code == 0 || code == 1, "exit code " + code + ": " + out);
            if (!over) {
                heed(out.toString().substring(seen));
            }
            requireSame();
        }

        @Override
        public int available() {
            return 0;
        }

        @Override
        public int read() {
            throw new IllegalStateException("read line by line");
        }

        @Override
        public int read(byte[] into, int from, int length) {
            if (at == pending.length) {
                try {
                    look();
                } catch (IllegalStateException e) {
                    // Thrown into the program it would become a line of its own.
                    difference = e;
                    return -1;
                }
                if (left-- <= 0) {
                    line = "";
                    return -1;
                }
                line = nextLine();
                typed++;
                pending = (line + (random.nextInt(4) == 0 ? "\r\n" : "\n")).getBytes(StandardCharsets.UTF_8);
                at = 0;
            }
            int n = Math.min(length, pending.length - at);
            System.arraycopy(pending, at, into, from, n);
            at += n;
            return n;
        }

        /** What the program made of the last line, against what the model makes of it. */
        private void look() {
            String said = out.toString().substring(seen);
            seen = out.toString().length();
            if (begun) {
                heed(said);
            } else if (model.plan.isEmpty() && model.rows.isEmpty()) {
                model.plan = content().plan();
            }
            begun = true;
            requireSame();
            requireQuestion(said);
        }

        private void requireSame() {
            Content now = content();
            require(now.plan().equals(model.plan) && now.rows().equals(model.rows), "file " + now + "\nmodel "
                + model.plan + " " + model.rows + "\nafter \"" + line + "\", " + out);
        }

        private void requireQuestion(String said) {
            Matcher question = ASKED.matcher(said.stripTrailing());
            Spot asked = question.find() ? spot(question.group(1), question.group(2)) : null;
            require(asked != null || said.stripTrailing().endsWith(NO_PLACE), "no question: " + said);
            if (model.chosen == null && model.next() == null) {
                model.chosen = asked;
            }
            require(Objects.equals(asked, model.asked()), "asked " + asked + ", model " + model.asked() + "\nafter \""
                + line + "\": " + out);
        }

        private void heed(String said) {
            String bare = line.strip();
            String word = bare.split("\\s+", 2)[0].toLowerCase(Locale.ROOT);
            String rest = bare.length() > word.length() ? bare.substring(word.length()).strip() : "";
            boolean isDoubted = said.contains("I expected");
            switch (WORDS.contains(word) || word.length() == 1 ? word.charAt(0) : word.isEmpty() ? ' ' : '1') {
                case 'u' -> model.undo();
                case 's' -> model.skip();
                case 'a' -> model.choose(rest.isEmpty() ? model.lastTouch() == null ? null : model.lastTouch().spot()
                    : planned(rest));
                case 'g' -> model.choose(planned(rest));
                case 'n' -> model.note(rest);
                case 'b' -> {
                    if (model.lastTouch() != null && isNumber(rest)) {
                        model.heightAt(rounded(model.lastTouch().height() + Double.parseDouble(rest)), isDoubted);
                    }
                }
                case 'd' -> {
                    model.tidy();
                    over = true;
                }
                case ' ', 'l', 'w', 'h', '?' -> { }
                default -> number(bare, isDoubted);
            }
        }

        private void number(String bare, boolean isDoubted) {
            String[] cells = bare.split("[,;\\s]+");
            if (cells.length == 3 && List.of(cells).stream().allMatch(Script::isNumber)) {
                Spot spot = spot(cells[0], cells[1]);
                if (spot.x() >= 0 && spot.x() <= 600 && spot.y() >= 0 && spot.y() <= 150) {
                    model.add(new Row(spot, Double.valueOf(cells[2]), ""));
                }
            } else if (isNumber(bare)) {
                model.heightAt(Double.valueOf(bare), isDoubted);
            }
        }

        private Spot planned(String number) {
            return number.matches("\\d{1,4}") && Integer.parseInt(number) >= 1
                && Integer.parseInt(number) <= model.plan.size() ? model.plan.get(Integer.parseInt(number) - 1) : null;
        }

        private static boolean isNumber(String text) {
            return text.matches("[-+]?\\d{1,3}(\\.\\d{1,3})?");
        }

        private static double rounded(double height) {
            return Math.rint(height * 1e6) / 1e6;
        }

        private static Spot spot(String x, String y) {
            return new Spot(Double.parseDouble(x), Double.parseDouble(y));
        }

        private String nextLine() {
            int kind = random.nextInt(100);
            String written = kind < 30 ? height() : kind < 36 ? "by " + height() : kind < 48 ? row()
                : kind < 58 ? word("undo") : kind < 65 ? word("skip") : kind < 70 ? word("again")
                : kind < 74 ? word("again") + " " + random.nextInt(12) : kind < 80 ? word("go") + " " + random.nextInt(12)
                : kind < 87 ? word("note") + " " + note() : kind < 90 ? word("list") : kind < 92 ? word("why")
                : kind < 94 ? random.nextBoolean() ? "?" : word("help") : kind < 96 ? "  "
                : kind < 99 ? nonsense() : word("done");
            String shown = kind < 30 ? "height" : kind < 36 ? "by" : kind < 48 ? "row" : kind >= 96 && kind < 99 ? "nonsense"
                : kind >= 94 && kind < 96 ? "blank" : written.equals("?") ? "help" : written.strip().toLowerCase(Locale.ROOT).split(" ")[0];
            counts.merge(shown.length() > 1 ? shown
                : WORDS.stream().filter(known -> known.startsWith(shown)).findFirst().orElseThrow(), 1, Integer::sum);
            // A height that was doubted is typed again now and then.
            return model.doubted != null && random.nextBoolean() ? String.valueOf(model.doubted) : written;
        }

        private String word(String word) {
            String said = random.nextInt(3) == 0 ? word.substring(0, 1) : word;
            return random.nextInt(5) == 0 ? "  " + said.toUpperCase(Locale.ROOT) : said;
        }

        private String height() {
            double height = random.nextInt(20) == 0 ? random.nextInt(-900, 900) / 100.0 : random.nextInt(-60, 60) / 100.0;
            return String.format(Locale.ROOT, random.nextBoolean() ? "%.2f" : "%.3f", height);
        }

        private String row() {
            String mark = List.of(" ", ",", ";", "  ", ", ").get(random.nextInt(5));
            return random.nextInt(-20, 640) + mark + random.nextInt(-10, 160) + mark + height();
        }

        private String note() {
            return List.of("a knot", "near the \"edge\"", "ü, 12 mm", "skipped", "a;b", "=1+1", "")
                .get(random.nextInt(7));
        }

        private String nonsense() {
            return List.of("x", "0.1.2", "12 13", "-", "1 2 3 4", "undoo", "go9").get(random.nextInt(7));
        }

        private Content content() {
            try {
                List<Spot> plan = new ArrayList<>();
                List<Row> rows = new ArrayList<>();
                List<String> header = null;
                for (String written : Files.readAllLines(file)) {
                    if (written.isBlank() || written.startsWith("#")) {
                        continue;
                    }
                    List<String> cells = cells(written);
                    if (header == null) {
                        header = cells;
                        continue;
                    }
                    String z = cell(header, cells, "z");
                    String note = cell(header, cells, "note");
                    Spot spot = spot(cell(header, cells, "x"), cell(header, cells, "y"));
                    if (z.isEmpty() && !note.equals("skipped")) {
                        plan.add(spot);
                    } else {
                        rows.add(new Row(spot, z.isEmpty() ? null : Double.valueOf(z), note));
                    }
                }
                return new Content(plan, rows);
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }

        private static String cell(List<String> header, List<String> cells, String name) {
            int at = header.indexOf(name);
            return at >= 0 && at < cells.size() ? cells.get(at) : "";
        }

        /** Cells of a line of CSV (RFC 4180). */
        private static List<String> cells(String line) {
            Matcher cell = Pattern.compile("(?:^|,)(?:\"((?:[^\"]|\"\")*)\"|([^,]*))").matcher(line);
            return cell.results().map(found -> found.group(1) != null ? found.group(1).replace("\"\"", "\"")
                : found.group(2)).collect(Collectors.toList());
        }
    }

    private static void require(boolean holds, String why) {
        if (!holds) {
            throw new IllegalStateException(why);
        }
    }
}
