package outwind.board.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import outwind.board.Board;
import outwind.board.LengthReader;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.board.text.FaultList;
import outwind.board.text.Line;
import outwind.board.text.NamedPipe;
import outwind.board.text.Sheet;
import outwind.board.text.TornTail;

/**
 * Reads a board from a text file: lines {@code # key: value} about the board, then a table of readings with named
 * columns ({@code x,y,z}) or with the readings in its cells (corner cell {@code y\x}). A file named {@code .xyz} holds
 * bare points x y z instead of the table.
 */
public final class BoardFile {

    /** Room for the most readings a table may have, at 64 characters each. */
    public static final int MOST_BYTES = 64 * Table.MOST_READINGS;

    // Three points fix a plane; below that there is nothing to judge.
    private static final int FEWEST_TOUCH_OFFS = 3;

    private BoardFile() { }

    /**
     * Reads a file. Faults name it as {@code file} does.
     *
     * @param given what is stated beside the file, for a file that does not say
     * @throws IOException  if the file cannot be opened or read
     * @throws BadBoardFile if it is no board file; holds every fault found
     */
    public static Board read(Path file, Defaults given) throws IOException, BadBoardFile {
        FaultList faults = new FaultList(file.toString());
        refuseOtherFormats(file.toString(), faults);
        TornTail tail = TornTail.of(bytes(file, MOST_BYTES, "Thin out the readings, for instance to every tenth.",
            faults));
        Board board = parse(file.toString(), decode(tail.whole(), faults), given);
        return tail.isTorn() ? board.remarked(tail.inWords()) : board;
    }

    /**
     * Reads a file's text.
     *
     * @param fileName how faults name the file; its last part gives the board's name where the text states none
     * @param text     the file's content, with or without a byte order mark
     * @param given    what is stated beside the file, for a file that does not say
     * @throws BadBoardFile if it is no board file; holds every fault found
     */
    public static Board parse(String fileName, String text, Defaults given) throws BadBoardFile {
        return parse(fileName, text, given, FEWEST_TOUCH_OFFS);
    }

    /** The same for a file that may have no more than {@code fewest} touch-offs yet. */
    static Board parse(String fileName, String text, Defaults given, int fewest) throws BadBoardFile {
        FaultList faults = new FaultList(fileName);
        refuseOtherFormats(fileName, faults);
        List<Line> lines = Line.split(text, faults);
        // Lines that are no text cannot be trusted to be split into cells.
        faults.throwIfAny();

        Sheet sheet = isOfType(fileName, ".xyz") ? Sheet.ofPoints(lines) : Sheet.ofTable(lines);
        Keys<Key> keys = Keys.in(sheet, Key.class, "", faults);
        LengthReader gauge = new LengthReader(units(keys, given), sheet.delimiter().allowsDecimalComma());
        return new Assembly(keys, given, gauge, fewest, faults).board(sheet, boardName(fileName));
    }

    /** The unit of bare numbers: what the file says, or else what is stated beside it, or else mm. */
    static Units units(Keys<Key> keys, Defaults given) throws BadBoardFile {
        return keys.units(Key.UNITS).or(given::units).orElse(Units.MILLIMETRES);
    }

    private static void refuseOtherFormats(String fileName, FaultList faults) throws BadBoardFile {
        if (isOfType(fileName, ".ply")) {
            faults.addForFile("a board file or an .xyz file", "a .ply scan",
                "A scan can only be the board that is judged, not what is stated beside it: give a board file here.");
        }
        faults.throwIfAny();
    }

    /** All bytes of a file; of one that is too large, or never ends as a pipe may, no more than needed to refuse it. */
    static byte[] bytes(Path file, int most, String mend, FaultList faults) throws IOException, BadBoardFile {
        NamedPipe.refuse(file);
        try (InputStream in = Files.newInputStream(file)) {
            long stated = Files.size(file);
            byte[] bytes = stated > most ? new byte[0] : in.readNBytes(most + 1);
            if (stated > most || bytes.length > most) {
                faults.addForFile("a file of at most " + most + " bytes", stated > most ? stated + " bytes" : "more",
                    mend);
                faults.throwIfAny();
            }
            return bytes;
        }
    }

    static String decode(byte[] bytes, FaultList faults) throws BadBoardFile {
        ByteBuffer encoded = ByteBuffer.wrap(bytes);
        CharBuffer decoded = CharBuffer.allocate(bytes.length);
        CoderResult result = StandardCharsets.UTF_8.newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT)
            .decode(encoded, decoded, true);
        String text = decoded.flip().toString();
        if (result.isError()) {
            // The decoder stops at the first byte it cannot read, behind the text it could.
            List<Line> lines = Line.split(text, new FaultList(""));
            Line last = lines.get(lines.size() - 1);
            faults.add(last.number(), last.text().length() + 1, "text in UTF-8",
                String.format(Locale.ROOT, "the byte 0x%02X", bytes[encoded.position()]),
                "Save the file as UTF-8; a spreadsheet calls it \"CSV UTF-8\".");
            faults.throwIfAny();
        }
        return text;
    }

    static boolean isOfType(String fileName, String extension) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(extension);
    }

    /** The file's name without folders and extension. */
    static String boardName(String fileName) {
        String name = fileName.substring(Math.max(fileName.lastIndexOf('/'), fileName.lastIndexOf('\\')) + 1);
        int dot = name.lastIndexOf('.');
        String bare = dot > 0 ? name.substring(0, dot) : name;
        return bare.isBlank() ? "board" : bare;
    }
}
