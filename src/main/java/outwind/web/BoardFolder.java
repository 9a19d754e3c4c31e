package outwind.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import outwind.board.file.ShopFile;
import outwind.board.file.ShopSearch;
import outwind.board.text.BadBoardFile;
import outwind.report.files.ReportNames;
import outwind.shop.Shop;

/**
 * The board files of one folder. A name is a plain one with an ending of a board file, so that none leads out of the
 * folder, by separators, by dots or by a link.
 *
 * @param folder where they lie
 */
record BoardFolder(Path folder) {

    private static final List<String> ENDINGS = List.of(".csv", ".tsv", ".txt");

    /** Letters of any script, digits and what people put between them; no dot or space comes first. */
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}_][\\p{L}\\p{N} _.,()+-]{0,110}");

    /** Larger ones are scans, which are judged from the command line (bytes). */
    private static final long LARGEST = 256 * 1024;

    /** Names of all board files, in order. */
    List<String> names() throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.map(file -> file.getFileName().toString()).filter(BoardFolder::isFit)
                .filter(name -> isPlainFile(folder.resolve(name))).sorted().toList();
        }
    }

    private static boolean isFit(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return !lower.equals(ShopFile.NAME) && PLAIN.matcher(name).matches()
            && ENDINGS.stream().anyMatch(lower::endsWith);
    }

    /** The shop that goes with these boards, as every command finds it. */
    Shop shop() throws IOException, BadBoardFile {
        return ShopSearch.ofThisUser().shopNear(folder);
    }

    private static boolean isPlainFile(Path file) {
        try {
            return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.size(file) <= LARGEST;
        } catch (IOException e) {
            // It went away while it was looked at.
            return false;
        }
    }

    /** The file of a name that is there. */
    Path file(String name) throws Refused {
        if (!isFit(name) || !isPlainFile(folder.resolve(name))) {
            throw new Refused(404, "There is no such board here. Choose one from the list.");
        }
        return folder.resolve(name);
    }

    /** A file for a new board, named for it and not there yet. */
    Path fresh(String board) throws Refused {
        String wanted = ReportNames.stem(Path.of(board.replaceAll("[^\\p{L}\\p{N} _,()+-]", "_") + ".csv"))
            .replaceFirst("^[^\\p{L}\\p{N}_]+", "").strip().replace(' ', '-').toLowerCase(Locale.ROOT);
        String stem = wanted.isEmpty() ? "board" : wanted.substring(0, Math.min(80, wanted.length()));
        for (int i = 1; i < 1000; i++) {
            String name = stem + (i == 1 ? "" : "-" + i) + ".csv";
            if (isFit(name) && !Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
                return folder.resolve(name);
            }
        }
        throw new Refused(409, "There are too many boards of this name. Give it another.");
    }

    /** A sentence about a file, with its name alone: where the folder lies is nobody's business but this machine's. */
    String named(String sentence) {
        return sentence.replace(folder + folder.getFileSystem().getSeparator(), "");
    }
}
