package outwind.scan.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import outwind.board.Fault;
import outwind.board.PointCloud;
import outwind.board.file.BoardFile;
import outwind.board.file.ScanHeader;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Line;
import outwind.board.text.Sheet;
import outwind.board.text.NamedPipe;
import outwind.scan.bytes.Opening;
import outwind.scan.bytes.Progress;
import outwind.scan.bytes.ReadingPlan;
import outwind.scan.bytes.ScanBytes;
import outwind.board.text.FaultList;

/**
 * Reads a scan: a file named {@code .ply}, or a text with one point x y z on each line.
 *
 * <p>Lines {@code # key: value} may stand in a text, or as {@code comment key: value} in the header of a .ply file. For
 * programs that cannot write them they may stand in a file beside the scan, named like the scan with {@code .txt}
 * behind it: {@code board.ply.txt}.
 *
 * <p>Limits: lines of 10,000 bytes, a header of {@value Opening#LONGEST} bytes, and
 * {@value RowPoints#MOST_HEADER_LINES} key lines. Memory is taken for the points that the file has room for, whatever
 * it says of their number.
 */
public final class ScanFile {

    /** A text up to this size (bytes) may have been written by hand, and is for {@link outwind.board.file.BoardFile}. */
    static final long LARGEST_BY_HAND = 256 * 1024;

    /** What a file beside a scan has behind the scan's own name. */
    private static final String BESIDE = ".txt";

    /** So many rows are no work of hand, and a larger text may be a scan. */
    private static final int MOST_ROWS_BY_HAND = 2_000;

    private ScanFile() { }

    /**
     * Whether a file is a scan: any {@code .ply}; {@code .xyz .csv .tsv .txt} if larger than 256 KiB, but for one of few
     * rows, which only has long lines or many remarks.
     */
    public static boolean isScan(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        try {
            return name.endsWith(".ply")
                || name.matches("(?s).*\\.(xyz|csv|tsv|txt)") && Files.size(file) > LARGEST_BY_HAND
                && (hasManyRows(file, LARGEST_BY_HAND) || hasManyRows(file, BoardFile.MOST_BYTES + 1L));
        } catch (IOException e) {
            // Whoever opens it will say so.
            return false;
        }
    }

    /** Whether so many bytes of a text hold more rows than are made by hand, or there are as many bytes as that. */
    private static boolean hasManyRows(Path file, long bytes) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] start = in.readNBytes((int) bytes);
            // Latin letters stand for any: only ends of lines and marks are looked at.
            List<Line> lines = Line.split(new String(start, StandardCharsets.ISO_8859_1), new FaultList(file.toString()));
            return start.length > BoardFile.MOST_BYTES || Sheet.ofPoints(lines).rows().size() > MOST_ROWS_BY_HAND;
        }
    }

    /** True if a file is no board but tells of the scan it lies beside. */
    public static boolean isBeside(Path file) {
        String name = file.getFileName().toString();
        if (!name.endsWith(BESIDE)) {
            return false;
        }
        Path scan = file.resolveSibling(name.substring(0, name.length() - BESIDE.length()));
        return Files.isRegularFile(scan) && isScan(scan);
    }

    /**
     * Reads a file on all cores. Faults name it as {@code file} does.
     *
     * @param progress hears how far it has come, a few times a second and at the end
     * @return points in the file's own unit, without those that were not measured
     * @throws IOException  if the file cannot be opened or read
     * @throws BadBoardFile if it is no scan; holds the first 20 faults found
     */
    public static Scan read(Path file, Progress progress) throws IOException, BadBoardFile {
        return read(file, ReadingPlan.usual(progress));
    }

    static Scan read(Path file, ReadingPlan plan) throws IOException, BadBoardFile {
        NamedPipe.refuse(file);
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            ScanBytes bytes = new ScanBytes(file.toString(), channel, channel.size(), false);
            List<HeaderLine> beside = beside(file);
            Scan scan = file.toString().toLowerCase(Locale.ROOT).endsWith(".ply")
                ? PlyScan.read(bytes, plan) : TextScan.read(bytes.withLineEnds(), plan);
            refuseEmpty(file, scan);
            refuseRunningNumbers(file, scan.points());
            plan.progress(bytes.size()).end();
            List<HeaderLine> header = new ArrayList<>(scan.header());
            header.addAll(beside);
            refuseLongHeader(file, header);
            return new Scan(header, scan.points(), scan.unmeasured());
        }
    }

    private static void refuseEmpty(Path file, Scan scan) throws BadBoardFile {
        if (scan.points().size() == 0) {
            throw FaultList.ofScan(file.toString()).withLast("points",
                scan.unmeasured() == 0 ? "nothing" : "only " + scan.unmeasured() + " points that are not finite",
                "Export the scan again and look whether the points are in it.");
        }
    }

    /** A face has points beside each other; whole numbers that rise from row to row throughout only count the rows. */
    private static void refuseRunningNumbers(Path file, PointCloud points) throws BadBoardFile {
        double[] x = points.x();
        int at = 0;
        while (at < x.length && x[at] == Math.rint(x[at]) && (at == 0 || x[at] > x[at - 1])) {
            at++;
        }
        if (at == x.length && at >= Scan.FEWEST) {
            throw FaultList.ofScan(file.toString()).withLast("places along the board in the column that is read as x",
                "numbers that count the rows", "Take that column out, or name the columns in a row above, as"
                    + " \"n x y z\".");
        }
    }

    private static void refuseLongHeader(Path file, List<HeaderLine> header) throws BadBoardFile {
        if (header.size() > RowPoints.MOST_HEADER_LINES) {
            throw FaultList.ofScan(file.toString()).withLast(
                "at most " + RowPoints.MOST_HEADER_LINES + " lines \"# key: value\"", String.valueOf(header.size()),
                "Take those out that tell nothing about the board.");
        }
    }

    /** The lines of the file beside the scan, if there is one. */
    private static List<HeaderLine> beside(Path scan) throws IOException, BadBoardFile {
        Path file = scan.resolveSibling(scan.getFileName() + BESIDE);
        if (!Files.isRegularFile(file)) {
            return List.of();
        }
        FaultList faults = FaultList.ofScan(file.toString());
        List<HeaderLine> lines = new ArrayList<>();
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            Opening opening = new Opening(new ScanBytes(file.toString(), channel, channel.size(), false));
            for (Optional<String> line = opening.line(); line.isPresent(); line = opening.line()) {
                readBeside(file, opening.lineNumber(), line.get(), lines, faults);
            }
            if (opening.isCut()) {
                throw faults.withLast("at most " + (Opening.LONGEST - 1) + " bytes beside a scan",
                    channel.size() + " bytes", "Write a few lines such as \"# thickness: 31.5\".");
            }
        }
        faults.throwIfAny();
        return lines;
    }

    private static void readBeside(Path file, int number, String text, List<HeaderLine> lines, FaultList faults) {
        Line line = new Line(number, text);
        if (line.isKeyLine() || line.isKeyWithoutMark()) {
            ScanHeader.keyLine(number, text, faults).map(said -> new HeaderLine(file.toString(), said))
                .ifPresent(lines::add);
        } else if (!text.isBlank()) {
            faults.add(number, 1, "a line \"# key: value\" about the scan", Fault.shown(text),
                "Begin the line with #, or move the file elsewhere if it is not about " + file.getFileName()
                    .toString().replaceAll("\\.txt$", "") + ".");
        }
    }
}
