package outwind.board.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.CellHeights;
import outwind.board.Face;
import outwind.board.LengthReader;
import outwind.board.Quantity;
import outwind.board.Reading;
import outwind.board.ScannedFace;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.board.text.FaultList;
import outwind.board.text.KeyLine;
import outwind.board.text.Line;

/**
 * What is stated beside a scan's points: the same keys as in a board file, and the same options for what it does not
 * say. Whoever finds the board among the points asks here what is known of it, and gets the whole board back.
 */
public final class ScanHeader {

    /** A scan's points take the place of touch-offs. */
    private static final int NONE = 0;

    private final String fileName;
    private final LengthReader gauge;
    private final FaultList faults;
    private final Assembly assembly;
    private final OptionalDouble length;
    private final OptionalDouble width;
    private final OptionalDouble thickness;
    private final List<String> remarks = new ArrayList<>();

    private ScanHeader(String fileName, LengthReader gauge, FaultList faults, Assembly assembly) {
        this.fileName = fileName;
        this.gauge = gauge;
        this.faults = faults;
        this.assembly = assembly;
        this.length = assembly.length();
        this.width = assembly.width();
        this.thickness = assembly.thickness();
        assembly.remarkOnUnits(remarks);
    }

    /**
     * Reads the keys that state size and unit.
     *
     * @param fileName   of the scan; its last part gives the board's name where none is stated
     * @param statedIn   the file that faults name: the scan, or the one beside it
     * @param statements keys and values
     * @param given      what is stated on the command line, for a file that does not say
     * @throws BadBoardFile if a key or the unit is not one; holds every fault found
     */
    public static ScanHeader read(String fileName, String statedIn, List<KeyLine> statements, Defaults given)
            throws BadBoardFile {
        FaultList faults = new FaultList(statedIn);
        Keys<Key> keys = Keys.stated(statements, faults);
        LengthReader gauge = new LengthReader(BoardFile.units(keys, given), false);
        ScanHeader header = new ScanHeader(fileName, gauge, faults, new Assembly(keys, given, gauge, NONE,
            faults));
        faults.throwIfAny();
        return header;
    }

    /** True if a word is the name of a key. */
    public static boolean isKey(String word) {
        return Arrays.stream(Key.values()).anyMatch(key -> key.word().equalsIgnoreCase(word));
    }

    /** The key that a line of a scan states with its value; nothing, and perhaps a fault, if it is but a remark. */
    public static Optional<KeyLine> keyLine(int number, String text, FaultList faults) {
        return Keys.said(new Line(number, text), Worded.words(Key.class), faults);
    }

    /** Unit of the scan's numbers. */
    public Units units() {
        return gauge.units();
    }

    /** Stated length (mm). */
    public OptionalDouble length() {
        return length;
    }

    /** Stated width (mm). */
    public OptionalDouble width() {
        return width;
    }

    /** Stated thickness (mm). */
    public OptionalDouble thickness() {
        return thickness;
    }

    /** A length (mm) as the board's owner reads it, with its unit. */
    public String shown(double mm) {
        // A tenth of a mm, or a thousandth of an inch, is finer than an edge is sawn.
        double step = gauge.units() == Units.INCHES ? gauge.units().toMillimetres(0.001) : 0.1;
        return gauge.shown(Math.rint(mm / step) * step);
    }

    /** Says that the scan holds no board that can be judged, and how to mend that. */
    public BadBoardFile fault(String expected, String found, String mend) {
        return faults.withLast(expected, found, mend);
    }

    /**
     * The board with what was stated and what was found.
     *
     * @param foundLength    mm; likewise the width and the thickness
     * @param face           face A
     * @param found          sentences on how it was found
     * @throws BadBoardFile if a further key is at fault, or a size is beyond what a board can be
     */
    public Board board(double foundLength, double foundWidth, double foundThickness, ScannedFace face,
            List<String> found) throws BadBoardFile {
        List<String> all = new ArrayList<>(remarks);
        all.addAll(found);
        return assembly.assembled(BoardFile.boardName(fileName), size(Quantity.LENGTH, foundLength),
            size(Quantity.WIDTH, foundWidth), size(Quantity.THICKNESS, foundThickness), readings(face.cells()),
            List.of(), all, Optional.of(face));
    }

    private OptionalDouble size(Quantity quantity, double value) throws BadBoardFile {
        if (!quantity.admits(value)) {
            throw fault(quantity.word() + " " + quantity.range(gauge.units()), shown(value),
                "Check the units of the scan: its numbers are read in " + gauge.units().symbol() + ".");
        }
        return OptionalDouble.of(value);
    }

    private static List<Reading> readings(CellHeights cells) {
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < cells.size(); k++) {
            if (cells.isMeasured(k)) {
                readings.add(new Reading(cells.x(k), cells.y(k), cells.height()[k], Face.A, "", 0));
            }
        }
        return readings;
    }
}
