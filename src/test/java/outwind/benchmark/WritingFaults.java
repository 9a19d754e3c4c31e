package outwind.benchmark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import outwind.cli.Main;

/**
 * Every command that writes reports, killed at random moments, met with faults, and run beside every other. Whatever
 * happens, each file in the folder is the one from before or a new one, whole; what lies outside is untouched; nothing
 * is said that looks like a fault of the program. {@link RecordingKills} does the same for guided entry.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=WritingFaults}; {@code kills} and {@code faults} are properties
 * of the virtual machine, and so are {@code commands}, those to be tried with semicolons between them or else all, and
 * {@code pairs}, false to leave those out.
 */
public final class WritingFaults {

    private static final int USUAL = 1000;

    /** Bytes in a page of memory, by which a small disk is filled. */
    private static final int PAGE = 4096;

    /** What a process ends with that was killed: 128 and the number of the signal (POSIX). */
    private static final int KILLED = 128 + 9;

    private static final String BOARD = "sample-probes/hall-table.csv";
    private static final String SHOP = "shop";
    private static final String RECORD = "record";
    private static final String FACE_B = "x,y,z\n20,15,31.2\n590,15,31.0\n1160,15,31.3\n20,197,31.1\n590,197,31.4\n"
        + "1160,197,31.2\n";
    private static final String TYPED = "0.1\n-0.3\n0.25\n0.1\n0.4\n";

    /** Commands that keep what is there already: for them it is no failure to say so. */
    private static final Set<String> KEEPING = Set.of("points", SHOP, RECORD);

    private static final byte[] PRECIOUS = "not to be lost\n".getBytes(StandardCharsets.UTF_8);

    /** Each command, with what makes its answer differ from run to run. */
    private static final Map<String, List<String>> COMMANDS = new TreeMap<>(Map.ofEntries(
        Map.entry("sheet", List.of("judge", BOARD, "--seed")),
        Map.entry("finish", List.of("finish", "--json", "--target", "26mm", BOARD, "FACE_B", "--seed")),
        Map.entry("check", List.of("check", "--json", "sample-probes/shelf-bow.csv", "--within")),
        Map.entry(SHOP, List.of("shop")),
        Map.entry(RECORD, List.of("record", "--length", "600", "--width", "150", "--thickness", "31")),
        Map.entry("judge", List.of("judge", "--json", "--no-chart", BOARD, "--seed")),
        Map.entry("judge two boards", List.of("judge", "--no-chart", BOARD, "sample-probes/shelf-bow.csv", "--seed")),
        Map.entry("blanks", List.of("blanks", "--json", BOARD, "--bill", "sample-probes/bills/bill-benches.csv",
            "--seed")),
        Map.entry("points", List.of("points", "--json", "--length", "600", "--width", "150", "--thickness", "31",
            "--target", "24mm", "--name", "new board", "--seed")),
        Map.entry("stack", List.of("stack", "--json", "sample-probes/stack", "--target", "20mm", "--seed")),
        Map.entry("stack, compared", List.of("stack", "--json", "--compare", "sample-probes/stack", "OTHERS", "--target",
            "20mm", "--seed")),
        Map.entry("stack, bill", List.of("stack", "--json", "--bill", "sample-probes/bills/bill-small-table.csv",
            "OTHERS", "--seed"))));

    private static final List<String> OTHERS = List.of("oak-01.csv", "oak-02.csv", "oak-03.csv", "oak-04.csv");

    private enum Fault {
        OUT_IS_A_FILE, ABOVE_IS_A_FILE, REPORT_IS_A_FOLDER, LINK_TO_A_FILE, LINK_TO_NOWHERE, LINK_TO_A_DEVICE,
        LINK_AT_THE_PART, CLOCK_BACK, CLOCK_AHEAD, FOLDER_GONE, DISK_FULL, NO_PERMISSION
    }

    private WritingFaults() { }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("faults");
        SplittableRandom random = new SplittableRandom(20261127);
        int wrong = 0;
        int ok = 0;
        int kills = Integer.getInteger("kills", USUAL);
        int faults = Integer.getInteger("faults", USUAL);
        List<String> only = List.of(System.getProperty("commands", "").split(";"));
        List<String> names = COMMANDS.keySet().stream().filter(name -> only.contains("") || only.contains(name)).toList();
        Map<String, Map<String, byte[]>> old = new TreeMap<>();
        Map<String, Map<String, byte[]>> young = new TreeMap<>();
        for (String name : names) {
            old.put(name, startsAfresh(name) ? Map.of() : reference(folder, name, "1"));
            young.put(name, reference(folder, name, "2"));
        }
        for (int i = 0; i < faults; i++) {
            String name = names.get(i % names.size());
            Fault fault = Fault.values()[i / names.size() % Fault.values().length];
            String why = fault(fresh(folder, old.get(name)), name, fault, old.get(name), young.get(name), random);
            wrong += report(name + ", " + fault, why);
            ok += why.isEmpty() ? 1 : 0;
        }
        System.out.printf("%d faults, %d as they should be%n", faults, ok);
        wrong += kills(folder, names, kills, old, young, random);
        ok = 0;
        int pairs = Boolean.parseBoolean(System.getProperty("pairs", "true")) ? names.size() : 0;
        for (String one : names.subList(0, pairs)) {
            for (String other : names) {
                String why = pair(fresh(folder, Map.of()), one, other, old, young);
                wrong += report(one + " beside " + other, why);
                ok += why.isEmpty() ? 1 : 0;
            }
        }
        System.out.printf("%d pairs, %d as they should be%n", pairs * pairs, ok);
        clear(folder);
        if (wrong > 0) {
            System.exit(1);
        }
    }

    /** Kills the commands by turns until so many died of it, and prints a table; the number of those not as they should be. */
    private static int kills(Path folder, List<String> names, int kills, Map<String, Map<String, byte[]>> old,
            Map<String, Map<String, byte[]>> young, SplittableRandom random) throws Exception {
        Map<String, int[]> counts = new TreeMap<>();
        int wrong = 0;
        int killed = 0;
        for (int i = 0; killed < kills && i < 3 * kills; i++) {
            String name = names.get(i % names.size());
            int[] count = counts.computeIfAbsent(name, any -> new int[4]);
            Path out = fresh(folder, old.get(name));
            if (!isKilled(out, name, random)) {
                continue;
            }
            killed++;
            count[0]++;
            count[1] += same(contents(out), old.get(name)) ? 0 : 1;
            count[2] += hasParts(out) ? 1 : 0;
            String why = torn(contents(out), old.get(name), young.get(name));
            // What a kill leaves hinders no later run; those that keep what is there do not write it again.
            boolean again = why.isEmpty() && !KEEPING.contains(name) && random.nextInt(4) == 0;
            String said = again ? run(name, "2", out) : "0";
            why = said.startsWith("0") ? why : "the next run: " + said;
            why = why.isEmpty() && again && !same(contents(out), young.get(name)) ? "the next run wrote something else" : why;
            count[3] += report(name + ", killed", why);
            if (!why.isEmpty()) {
                keep(out, Path.of("target", "kills", killed + "-" + name.replaceAll("\\W+", "-")));
            }
            wrong += why.isEmpty() ? 0 : 1;
        }
        System.out.printf("%d kills, %d as they should be%n%-18s %6s %14s %12s %6s%n", killed, killed - wrong, "", "kills",
            "files changed", "parts left", "amiss");
        counts.forEach((name, count) -> System.out.printf("%-18s %6d %14d %12d %6d%n", name, count[0], count[1], count[2],
            count[3]));
        return wrong;
    }

    /** Keeps what a kill has left, to be looked at. */
    private static void keep(Path out, Path where) throws IOException {
        clear(where);
        Files.createDirectories(where);
        for (Map.Entry<String, byte[]> file : contents(out).entrySet()) {
            Files.write(where.resolve(file.getKey()), file.getValue());
        }
    }

    private static boolean hasParts(Path out) throws IOException {
        try (Stream<Path> files = Files.list(out)) {
            return files.anyMatch(file -> file.toString().endsWith(".part"));
        }
    }

    private static int report(String what, String why) {
        if (!why.isEmpty()) {
            System.out.println(what + ": " + why);
        }
        return why.isEmpty() ? 0 : 1;
    }

    private static String[] arguments(String name, String seed, Path out) {
        Stream<String> last = switch (name) {
            case SHOP -> Stream.of(out.toString());
            case RECORD -> Stream.of(out.resolve("new.csv").toString());
            default -> Stream.of(name.equals("check") ? seed + "mm" : seed, "--out", out.toString());
        };
        return Stream.concat(COMMANDS.get(name).stream().map(word -> word.equals("FACE_B")
            ? out.resolveSibling("face-b.csv").toString() : word.equals("OTHERS") ? out.resolveSibling("others").toString()
            : word), last).toArray(String[]::new);
    }

    private static boolean startsAfresh(String name) {
        return name.equals(SHOP) || name.equals(RECORD);
    }

    /** What the command writes when nothing goes wrong. */
    private static Map<String, byte[]> reference(Path folder, String name, String seed) throws IOException {
        Path out = fresh(folder, Map.of());
        String said = run(name, seed, out);
        if (!said.startsWith("0")) {
            throw new IllegalStateException(name + ": " + said);
        }
        return contents(out);
    }

    /** Exit code and what was said of trouble. */
    private static String run(String name, String seed, Path out) {
        StringWriter err = new StringWriter();
        System.setIn(new ByteArrayInputStream(TYPED.getBytes(StandardCharsets.UTF_8)));
        int code = Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), arguments(name, seed, out));
        return code + " " + err;
    }

    private static String fault(Path out, String name, Fault fault, Map<String, byte[]> old, Map<String, byte[]> young,
            SplittableRandom random) throws IOException {
        Path outside = out.resolveSibling("outside");
        Files.write(outside, PRECIOUS);
        List<String> reports = List.copyOf(young.keySet());
        String report = reports.get(random.nextInt(reports.size()));
        Path at = out.resolve(report);
        Path asked = out;
        boolean mayFail = true;
        switch (fault) {
            case OUT_IS_A_FILE -> asked = outside;
            case ABOVE_IS_A_FILE -> asked = outside.resolve("below");
            case REPORT_IS_A_FOLDER -> {
                Files.deleteIfExists(at);
                Files.createDirectories(at.resolve("inside"));
            }
            case LINK_TO_A_FILE, LINK_TO_NOWHERE, LINK_TO_A_DEVICE -> {
                Files.deleteIfExists(at);
                Files.createSymbolicLink(at, fault == Fault.LINK_TO_A_FILE ? outside
                    : Path.of(fault == Fault.LINK_TO_NOWHERE ? out + "/nowhere/at/all" : "/dev/full"));
            }
            case LINK_AT_THE_PART -> {
                for (int i = 0; i < 3; i++) {
                    Files.createSymbolicLink(out.resolve(".outwind-" + ProcessHandle.current().pid() + "-" + i + ".part"),
                        outside);
                }
                mayFail = false;
            }
            case CLOCK_BACK, CLOCK_AHEAD -> {
                Files.write(out.resolve(".outwind-1-0.part"), PRECIOUS);
                try (Stream<Path> inside = Files.list(out)) {
                    for (Path file : inside.toList()) {
                        Files.setLastModifiedTime(file, FileTime.from(Instant.parse(fault == Fault.CLOCK_BACK
                            ? "2099-01-01T00:00:00Z" : "1971-01-01T00:00:00Z")));
                    }
                }
                mayFail = false;
            }
            case FOLDER_GONE -> clear(out);
            case DISK_FULL, NO_PERMISSION -> {
                return onOtherDisk(out, name, fault == Fault.DISK_FULL, old, young, random);
            }
        }
        String said = run(name, "2", asked);
        if (said.contains("at fault here") || said.contains("Exception") || said.contains("\tat ")) {
            return said;
        }
        if (!mayFail && !KEEPING.contains(name) && !said.startsWith("0")) {
            return "failed: " + said;
        }
        if (!said.startsWith("0") && said.strip().length() < 3) {
            return "failed without a word";
        }
        if (!Arrays.equals(PRECIOUS, Files.readAllBytes(outside))) {
            return "what lay outside was changed";
        }
        return Files.isDirectory(out) ? torn(contents(out), old, young) : "";
    }

    /** Starts a command and kills it; false if it ended by itself before. */
    private static boolean isKilled(Path out, String name, SplittableRandom random) throws IOException, InterruptedException {
        Path typed = Files.writeString(out.resolveSibling("typed"), TYPED);
        String before = listing(out);
        Process process = new ProcessBuilder(java(name, out)).redirectErrorStream(true).redirectInput(typed.toFile())
            .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        // Files are written in the last part of a run: mostly wait for the first sign of them.
        if (random.nextInt(8) > 0) {
            while (process.isAlive() && listing(out).equals(before)) {
                TimeUnit.MICROSECONDS.sleep(200);
            }
            // From a tenth of a millisecond, within one file, to a quarter of a second, between charts.
            TimeUnit.MICROSECONDS.sleep((long) (100 * Math.pow(2500, random.nextDouble())));
        } else {
            process.waitFor(random.nextInt(1500), TimeUnit.MILLISECONDS);
        }
        return process.destroyForcibly().waitFor() == KILLED;
    }

    /** Names, sizes and times of the files in a folder. */
    private static String listing(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName() + " " + file.toFile().length() + " "
                + file.toFile().lastModified()).sorted().collect(Collectors.joining("\n"));
        }
    }

    private static String pair(Path out, String one, String other, Map<String, Map<String, byte[]>> old,
            Map<String, Map<String, byte[]>> young) throws Exception {
        CompletableFuture<String> beside = CompletableFuture.supplyAsync(() -> run(one, "1", out));
        String said = run(other, "2", out);
        if (!beside.get().startsWith("0") && !KEEPING.contains(one) || !said.startsWith("0") && !KEEPING.contains(other)) {
            return beside.get() + said;
        }
        Map<String, byte[]> first = startsAfresh(one) ? young.get(one) : old.get(one);
        Map<String, byte[]> second = young.get(other);
        Map<String, byte[]> found = contents(out);
        return found.keySet().containsAll(first.keySet()) || KEEPING.contains(one) || KEEPING.contains(other)
            ? torn(found, first, second) : "files are missing: " + found.keySet();
    }

    private static boolean same(Map<String, byte[]> one, Map<String, byte[]> other) {
        return one.keySet().equals(other.keySet())
            && one.keySet().stream().allMatch(name -> Arrays.equals(one.get(name), other.get(name)));
    }

    /** A file that is neither the old one nor the new; empty if there is none. */
    private static String torn(Map<String, byte[]> found, Map<String, byte[]> old, Map<String, byte[]> young) {
        return found.entrySet().stream().filter(file -> !Arrays.equals(file.getValue(), old.get(file.getKey()))
            && !Arrays.equals(file.getValue(), young.get(file.getKey())) && !isBegun(file.getValue(), old, young)).map(file -> file.getKey() + " is torn at "
                + Arrays.mismatch(file.getValue(), young.getOrDefault(file.getKey(), new byte[0])) + " of "
                + file.getValue().length).findFirst().orElse("");
    }

    /** Guided entry writes line by line: whole lines of the new file are as they should be. */
    private static boolean isBegun(byte[] found, Map<String, byte[]> old, Map<String, byte[]> young) {
        byte[] whole = young.getOrDefault("new.csv", old.getOrDefault("new.csv", new byte[0]));
        boolean ends = found.length == 0 || found[found.length - 1] == '\n';
        return ends && found.length <= whole.length && Arrays.equals(found, Arrays.copyOf(whole, found.length));
    }

    /**
     * The command writing to a disk of its own that has hardly any room left, or is not to be written to. Needs
     * {@code unshare} and name spaces of users; where there are none, the command's own words say so.
     */
    private static String onOtherDisk(Path out, String name, boolean full, Map<String, byte[]> old,
            Map<String, byte[]> young, SplittableRandom random) throws IOException {
        Path kept = out.resolveSibling("kept");
        Path found = out.resolveSibling("found");
        Path said = out.resolveSibling("said");
        Path typed = Files.writeString(out.resolveSibling("typed"), TYPED);
        for (Path folder : List.of(kept, found)) {
            clear(folder);
            Files.createDirectories(folder);
        }
        long pages = 1;
        for (Map.Entry<String, byte[]> file : old.entrySet()) {
            Files.write(kept.resolve(file.getKey()), file.getValue());
            pages += (file.getValue().length + PAGE - 1) / PAGE;
        }
        String java = "'" + String.join("' '", java(name, out)) + "'";
        String script = "mount -t tmpfs -o size=" + (full ? (pages + random.nextInt(4)) * PAGE / 1024 : 4096) + "k none " + out
            + " && cp -a " + kept + "/. " + out + (full ? "" : " && mount -o remount,ro " + out) + " || exit 99; " + java + " < "
            + typed + " > " + said + " 2>&1; code=$?; cp -a " + out + "/. " + found + "; exit $code";
        try {
            Process process = new ProcessBuilder("unshare", "-rm", "sh", "-c", script).start();
            int code = process.waitFor();
            String words = Files.exists(said) ? Files.readString(said) : "";
            Map<String, byte[]> files = contents(found);
            if (code == 99) {
                return "no disk of its own could be made: " + new String(process.getErrorStream().readAllBytes(),
                    StandardCharsets.UTF_8);
            }
            if (words.contains("at fault here") || words.contains("Exception") || words.contains("\tat ")) {
                return words;
            }
            if (code == 0 && !KEEPING.contains(name) && !same(files, young)) {
                return "nothing was said: " + words;
            }
            return code != 0 && words.isBlank() ? "failed without a word" : torn(files, old, young);
        } catch (InterruptedException e) {
            throw new IOException(e);
        }
    }

    private static List<String> java(String name, Path out) {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), "outwind.cli.Main"));
        command.addAll(List.of(arguments(name, "2", out)));
        return command;
    }

    /** The files of a folder but those that are being written, locks, and none that a fault has put in their place. */
    private static Map<String, byte[]> contents(Path folder) throws IOException {
        Map<String, byte[]> contents = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                String name = file.getFileName().toString();
                if (!name.endsWith(".part") && !name.endsWith(".lock") && Files.isRegularFile(file)
                        && !Files.isSymbolicLink(file)) {
                    contents.put(name, Files.readAllBytes(file));
                }
            }
        }
        return contents;
    }

    private static Path fresh(Path folder, Map<String, byte[]> content) throws IOException {
        Path out = folder.resolve("out");
        clear(out);
        Files.createDirectories(out);
        Files.writeString(folder.resolve("face-b.csv"), FACE_B);
        Path others = Files.createDirectories(folder.resolve("others"));
        for (String board : OTHERS) {
            Files.copy(Path.of("sample-probes", "stack", board), others.resolve(board), StandardCopyOption.REPLACE_EXISTING);
        }
        for (Map.Entry<String, byte[]> file : content.entrySet()) {
            Files.write(out.resolve(file.getKey()), file.getValue());
        }
        return out;
    }

    private static void clear(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }
}
