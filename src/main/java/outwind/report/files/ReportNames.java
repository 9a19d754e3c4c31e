package outwind.report.files;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Names for the reports of one run: such as every usual file system takes, none that leads out of the folder, and no
 * two alike.
 *
 * <p>Kept back are what separates folders or drives, what the shells and file systems of Windows set apart, control
 * characters, spaces and points at the ends, and names that stand for devices there (the documentation of Windows,
 * "Naming Files, Paths, and Namespaces").
 */
public final class ReportNames {

    /** Of a name (bytes in UTF-8); file systems take 255. */
    private static final int LONGEST = 200;

    /** Of a name without what is hung behind it, such as -blanks.json (bytes in UTF-8). */
    private static final int LONGEST_STEM = 120;

    private static final Pattern KEPT_BACK = Pattern.compile("[<>:\"/\\\\|?*\\p{Cntrl}\\p{Cs}\\p{Zl}\\p{Zp}\\ufffd]");
    private static final Pattern AT_THE_ENDS = Pattern.compile("^[\\s.]+|[\\s.]+$");
    private static final Pattern DEVICE = Pattern.compile("(?i)(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\\..*)?");

    private final Set<String> taken = new HashSet<>();

    /**
     * The name, without ending, for what is written about an input; numbered if another of this run has it.
     *
     * @param beside what else is hung behind it for files beside the report, such as {@code -setup}
     */
    public String free(Path input, String... beside) {
        String name = stem(input);
        String free = name;
        for (int i = 2; !take(free, beside); i++) {
            free = name + "-" + i;
        }
        return free;
    }

    private boolean take(String name, String... beside) {
        // Windows and macOS take upper and lower case for the same.
        List<String> names = Stream.concat(Stream.of(""), Stream.of(beside))
            .map(end -> (name + end).toLowerCase(Locale.ROOT)).toList();
        if (names.stream().anyMatch(taken::contains)) {
            return false;
        }
        taken.addAll(names);
        return true;
    }

    /** An input's name without its ending, as the name of a report. */
    public static String stem(Path input) {
        // A root has no name.
        String whole = input.getFileName() == null ? "" : input.getFileName().toString();
        int dot = whole.lastIndexOf('.');
        return cut(plain(dot > 0 ? whole.substring(0, dot) : whole), LONGEST_STEM);
    }

    /** The name of a file, ending and all, made fit for any folder; what is fit already stays as it is. */
    static String fit(String name) {
        String plain = plain(name);
        int dot = plain.lastIndexOf('.');
        String ending = dot > 0 && plain.length() - dot <= 6 ? plain.substring(dot) : "";
        return cut(plain.substring(0, plain.length() - ending.length()), LONGEST - ending.length()) + ending;
    }

    private static String plain(String name) {
        String kept = KEPT_BACK.matcher(name).replaceAll("_");
        String bare = AT_THE_ENDS.matcher(kept).replaceAll("");
        return bare.isEmpty() ? "board" : DEVICE.matcher(bare).matches() ? "_" + bare : bare;
    }

    /** The beginning of a name, whole characters of it. */
    private static String cut(String name, int mostBytes) {
        String beginning = name;
        while (beginning.getBytes(StandardCharsets.UTF_8).length > mostBytes) {
            beginning = beginning.substring(0, beginning.offsetByCodePoints(beginning.length(), -1));
        }
        return beginning.equals(name) ? name : AT_THE_ENDS.matcher(beginning).replaceAll("");
    }
}
