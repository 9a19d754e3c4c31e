package outwind.cli;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The completion script in a bash that is asked for one made-up line after another, in a folder with hostile names. The
 * words offered must be those that {@code --help} shows and that begin as was typed, or files that are there; nothing
 * that is typed and no name may be run.
 */
public final class CompletionShell implements AutoCloseable {

    private static final List<String> FILES = List.of("hall table.csv", "$(touch ran).csv", "`touch ran`.csv",
        "a;touch ran;.csv", "${IFS}touch.csv", "-rf.csv", "it's.csv", "\"quoted\".csv", "*.csv", "ü.csv", "--target");

    private static final List<String> PIECES = List.of("judge", "stack", "record", "bench", "completion", "outwind", "--target",
        "--", "-", "--o", "ha", "$(touch ran)", "`touch ran`", "$((1/0))", ";touch ran;", "|", "&", ">ran", "\\", "'", "\"",
        "*", "?", "[a", "~", "{a,b}", "!!", "!$", "$IFS", "${x:?}", "%s", "%n", "\n", "\t", " ", "\u001b[2J", "ü", "\u202e",
        "=", ":", "/", "..", "#", "a\\");

    private static final Pattern OPTION = Pattern.compile("(?<![\\w=-])--?[A-Za-z][\\w-]*");

    private static final String ASK = """

        export LC_ALL=C.UTF-8 2>/dev/null
        while IFS= read -r -d '' n; do
          COMP_WORDS=(outwind)
          for ((i = 0; i < n; i++)); do IFS= read -r -d '' w; COMP_WORDS+=("$w"); done
          COMP_CWORD=$n
          COMPREPLY=()
          _outwind
          printf '%s\\0' "${#COMPREPLY[@]}" "${COMPREPLY[@]}"
        done
        """;

    private final Path folder;
    private final Path script;
    private final Path trouble;
    private final Process bash;
    private final InputStream out;
    private final OutputStream in;
    private final Map<String, Set<String>> options = new TreeMap<>();
    private List<String> offered = List.of();

    /** @param folder a new one */
    public CompletionShell(Path folder) throws IOException {
        this.folder = folder;
        for (String name : FILES) {
            Files.writeString(folder.resolve(name), "");
        }
        script = Files.writeString(folder.resolveSibling(folder.getFileName() + ".sh"), said("completion") + ASK);
        trouble = folder.resolveSibling(folder.getFileName() + ".err");
        bash = new ProcessBuilder("/bin/bash", "--norc", script.toString()).directory(folder.toFile())
            .redirectError(trouble.toFile()).start();
        out = new BufferedInputStream(bash.getInputStream());
        in = bash.getOutputStream();
        Set<String> commands = said("--help").lines().dropWhile(line -> !line.startsWith("Commands")).skip(1)
            .filter(line -> line.matches("  [a-z].*")).map(line -> line.strip().split("[ ,]")[0]).collect(Collectors.toSet());
        for (String command : commands) {
            options.put(command, optionsIn(said(command, "--help")));
        }
        Set<String> first = optionsIn(said("--help"));
        first.addAll(commands);
        options.put("", first);
    }

    private static String said(String... args) {
        StringWriter said = new StringWriter();
        Main.run(new PrintWriter(said), new PrintWriter(new StringWriter()), args);
        return said.toString();
    }

    /** Options in the left column of a help text. */
    private static Set<String> optionsIn(String help) {
        return help.lines().filter(line -> line.matches(" {2,6}-.*")).flatMap(line -> OPTION.matcher(
            line.strip().split(" {2,}(?!-)")[0]).results()).map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    /** A made-up line behind {@code outwind}, its last word being typed. */
    public static List<String> typed(SplittableRandom random) {
        List<String> words = new ArrayList<>();
        for (int i = random.nextInt(4); i >= 0; i--) {
            StringBuilder word = new StringBuilder();
            for (int j = random.nextInt(3); j > 0; j--) {
                word.append(PIECES.get(random.nextInt(PIECES.size())));
            }
            if (random.nextInt(6) == 0) {
                word.append((char) (1 + random.nextInt(0xD7FF)));
            }
            // A word cut short is what is completed.
            words.add(word.substring(0, random.nextInt(3) == 0 ? random.nextInt(word.length() + 1) : word.length()));
        }
        return words;
    }

    /** What is wrong with what the shell offers for a line; empty if nothing is. */
    public String fault(List<String> typed) throws IOException {
        ByteArrayOutputStream asked = new ByteArrayOutputStream();
        Stream.concat(Stream.of(String.valueOf(typed.size())), typed.stream()).forEach(word ->
            asked.writeBytes((word + "\0").getBytes(StandardCharsets.UTF_8)));
        in.write(asked.toByteArray());
        in.flush();
        List<String> answers = new ArrayList<>();
        for (int left = Integer.parseInt(word()); left > 0; left--) {
            answers.add(word());
        }
        offered = answers;
        if (!Set.of(folder.toFile().list()).equals(Set.copyOf(FILES))) {
            return "something was run";
        }
        if (Files.size(trouble) > 0) {
            return "bash said " + Files.readString(trouble);
        }
        String last = typed.get(typed.size() - 1);
        String command = typed.subList(0, typed.size() - 1).stream()
            .filter(word -> !word.isEmpty() && options.containsKey(word)).findFirst().orElse("");
        if (!command.isEmpty() && !last.startsWith("-")) {
            return ofFiles(last);
        }
        Set<String> wanted = options.get(command).stream().filter(word -> word.startsWith(last)).collect(Collectors.toSet());
        return wanted.equals(Set.copyOf(offered)) && offered.size() == wanted.size() ? ""
            : "offered " + offered + " and not " + wanted;
    }

    /** Files that are there; where nothing in the word means more to bash, all that begin with it. */
    private String ofFiles(String word) {
        if (word.matches("[\\w. $();-]*")) {
            // A folder holds itself and the one above it; both are offered once a point is typed.
            Set<String> wanted = Stream.concat(FILES.stream(), Stream.of(".", "..").filter(any -> word.startsWith(".")))
                .filter(name -> name.startsWith(word)).collect(Collectors.toSet());
            return Set.copyOf(offered).equals(wanted) ? "" : "offered " + offered + " and not " + wanted;
        }
        // A home is none of this folder.
        return offered.stream().filter(name -> !name.startsWith("~") && !name.contains("/") && !FILES.contains(name))
            .findFirst().map(name -> "offered " + name).orElse("");
    }

    /** What was offered last. */
    public List<String> offered() {
        return offered;
    }

    private String word() throws IOException {
        ByteArrayOutputStream word = new ByteArrayOutputStream();
        for (int b = out.read(); b != 0; b = out.read()) {
            if (b < 0) {
                throw new IOException("the shell has ended");
            }
            word.write(b);
        }
        return word.toString(StandardCharsets.UTF_8);
    }

    @Override
    public void close() throws IOException {
        in.close();
        bash.destroy();
        for (String name : FILES) {
            Files.deleteIfExists(folder.resolve(name));
        }
        Files.delete(folder);
        Files.delete(script);
        Files.delete(trouble);
    }
}
