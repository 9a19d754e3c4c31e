package outwind.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import outwind.board.file.ScanHeader;
import outwind.report.files.ReportNames;

/**
 * Reports that lie among boards because somebody let them be written there. A report has the name of a stack's, or that
 * of a board beside it with more behind it or another ending; and none has a line that begins with {@code #}, or a key
 * in its first, which every board file needs to state its size.
 */
final class OwnReports {

    private static final Set<String> OF_A_STACK = Set.of("stack.txt", "stack.csv", "stack-buy.csv",
        "stack-cuts.txt", "stack-cuts.csv", "stack-cuts-buy.csv");

    /** Within this many bytes a board file has begun with its key lines. */
    private static final int BEGINNING = 4096;

    private OwnReports() { }

    /** Those of a folder's files that are reports. */
    static List<Path> among(List<Path> files) {
        List<Path> suspects = files.stream().filter(file -> OF_A_STACK.contains(file.getFileName().toString())
            || file.getFileName().toString().matches(".*(\\.txt|-blanks\\.csv)") && isNamedAfterAnother(file, files))
            .toList();
        return suspects.stream().filter(file -> !hasKeyLine(file)).toList();
    }

    private static boolean isNamedAfterAnother(Path file, List<Path> files) {
        String name = ReportNames.stem(file);
        return files.stream().filter(other -> !other.equals(file)).map(ReportNames::stem)
            .anyMatch(stem -> name.equals(stem) || name.startsWith(stem + "-"));
    }

    private static boolean hasKeyLine(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            List<String> lines = new String(in.readNBytes(BEGINNING), StandardCharsets.UTF_8).lines()
                .map(line -> line.replace("\ufeff", "").stripLeading().replaceFirst("^\"", ""))
                .filter(line -> !line.isBlank()).toList();
            // A report begins with the board's name.
            return lines.stream().anyMatch(line -> line.startsWith("#"))
                || lines.stream().limit(1).anyMatch(OwnReports::namesKey);
        } catch (IOException e) {
            // Whoever reads it as a board will say so.
            return true;
        }
    }

    private static boolean namesKey(String line) {
        return line.indexOf(':') > 0 && ScanHeader.isKey(line.substring(0, line.indexOf(':')).strip());
    }
}
