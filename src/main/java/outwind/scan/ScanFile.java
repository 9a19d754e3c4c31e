package outwind.scan;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import outwind.board.BadBoardFile;

/**
 * Reads scans of any size: {@code .ply}, text or binary, and rows of text.
 *
 * <p>Keys such as {@code # length: 900} stand at the head of a text file, in the comments of a PLY file, or in a text
 * file beside the scan that has its whole name and {@code .txt} behind it: {@code plank.ply.txt}.
 */
public final class ScanFile {

    /** Text files larger than this are scans (bytes): nobody touches off so many places by hand. */
    static final long LARGE = 256 * 1024;

    private static final List<String> TEXT = List.of(".xyz", ".csv", ".tsv", ".txt");

    /** A few lines of keys; more of them than this are none. */
    private static final long LONGEST_SIDE_FILE = 1 << 16;

    private ScanFile() { }

    /** True if the file is read as a scan: any .ply, and text with rows of more than 256 KB. */
    public static boolean isScan(Path file) throws IOException {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".ply") || TEXT.stream().anyMatch(name::endsWith) && Files.size(file) > LARGE;
    }

    /**
     * Reads a scan, in its own unit and frame.
     *
     * @throws IOException  if the file cannot be opened or read
     * @throws BadBoardFile if it is no scan; holds the first faults found
     */
    public static Scan read(Path file, Progress progress) throws IOException, BadBoardFile {
        ScanFaults faults = new ScanFaults(file.toString());
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            ScanSource source = new ScanSource(channel, progress);
            boolean ply = file.toString().toLowerCase(Locale.ROOT).endsWith(".ply");
            Scan scan = ply ? PlyScan.read(source, faults) : TextScan.read(source, faults);
            List<HeaderLine> header = new ArrayList<>(scan.header());
            header.addAll(beside(file));
            return new Scan(header, scan.points(), scan.unmeasured());
        }
    }

    private static List<HeaderLine> beside(Path file) throws IOException, BadBoardFile {
        Path side = file.resolveSibling(file.getFileName() + ".txt");
        if (!Files.isRegularFile(side)) {
            return List.of();
        }
        ScanFaults faults = new ScanFaults(side.toString());
        if (Files.size(side) > LONGEST_SIDE_FILE) {
            throw faults.whole("a few lines such as \"# length: 900\"", Files.size(side) + " bytes",
                "Keep the scan's points out of this file.");
        }
        List<HeaderLine> lines = new ArrayList<>();
        int number = 0;
        for (String text : new String(Files.readAllBytes(side), StandardCharsets.UTF_8)
            .replace("\ufeff", "").split("\n", -1)) {
            number++;
            int begin = text.stripLeading().startsWith("#") ? text.indexOf('#') + 1 : 0;
            HeaderLine.in(side.toString(), number, text, begin).ifPresent(lines::add);
        }
        return lines;
    }
}
