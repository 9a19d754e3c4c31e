package outwind.scan.file;

import java.io.IOException;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import outwind.board.Fault;
import outwind.board.file.ScanHeader;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Opening;
import outwind.scan.bytes.ScanBytes;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;
import outwind.board.text.KeyLine;

/**
 * The header of a .ply file: which things it holds, in which order, and how they are written.
 *
 * <pre>
 *   ply
 *   format ascii 1.0                    or binary_little_endian, binary_big_endian
 *   comment key: value
 *   element vertex 8
 *   property float x
 *   property list uchar int vertex_indices
 *   end_header
 * </pre>
 * Source: G. Turk, The PLY Polygon File Format, Stanford University, 1994 (published with the scanned models of the
 * Stanford 3D Scanning Repository).
 */
final class PlyHeader {

    private final FaultList faults;
    private final List<HeaderLine> comments = new ArrayList<>();
    private final List<PlyElement> elements = new ArrayList<>();
    private final Opening opening;
    private String format = "";

    private PlyHeader(String file, Opening opening) {
        faults = FaultList.ofScan(file);
        this.opening = opening;
    }

    /** @throws BadBoardFile if it is none; holds the faults found */
    static PlyHeader read(ScanBytes file) throws IOException, BadBoardFile {
        PlyHeader header = new PlyHeader(file.name(), new Opening(file));
        header.readLines();
        header.require();
        return header;
    }

    /** Its lines {@code comment key: value}. */
    List<HeaderLine> comments() {
        return comments;
    }

    /** Whether numbers are written as text. */
    boolean isText() {
        return format.equals("ascii");
    }

    /** Which byte comes first, where numbers are not written as text. */
    ByteOrder order() {
        return format.equals("binary_big_endian") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    }

    /** The element that holds the points. */
    PlyElement vertices() {
        return elements.get(before().size());
    }

    /** What must be passed over before the points. */
    List<PlyElement> before() {
        return elements.stream().takeWhile(element -> !element.name().equals("vertex")).toList();
    }

    /** What follows the points. */
    List<PlyElement> behind() {
        return elements.subList(before().size() + 1, elements.size());
    }

    /** Where the first element begins (bytes). */
    int end() {
        return opening.next();
    }

    /** The header's last line. */
    int lastLine() {
        return opening.lineNumber();
    }

    private void readLines() throws BadBoardFile {
        String first = opening.line().orElse("");
        if (!first.strip().equals("ply")) {
            throw faults.withLast("ply in the first line of a .ply file", Fault.shown(first),
                "Export the scan again as .ply or as .xyz.");
        }
        for (Optional<String> line = opening.line(); line.isPresent(); line = opening.line()) {
            String[] words = line.get().strip().split("\\s+");
            switch (words[0]) {
                case "end_header" -> {
                    return;
                }
                case "comment" -> KeyLine.in(new Cell(line.get(), opening.lineNumber(), 1),
                    line.get().indexOf(words[0]) + words[0].length())
                    // What other programs remark with a colon is no key.
                    .filter(said -> ScanHeader.isKey(said.key().text()))
                    .map(said -> new HeaderLine(faults.file(), said)).ifPresent(comments::add);
                case "obj_info", "" -> { }
                case "format" -> readFormat(words, line.get());
                case "element" -> readElement(words, line.get());
                case "property" -> readProperty(words, line.get());
                default -> refuse("format, comment, element, property or end_header", line.get());
            }
        }
        throw faults.withLast("the line end_header", opening.isCut()
            ? "none in the first " + Opening.LONGEST + " bytes" : "the end of the file", "Export the scan again.");
    }

    private void readFormat(String[] words, String line) {
        boolean known = words.length == 3 && words[2].equals("1.0")
            && List.of("ascii", "binary_little_endian", "binary_big_endian").contains(words[1]);
        if (!known) {
            refuse("format ascii 1.0 or a binary one of 1.0", line);
        }
        format = known ? words[1] : "unknown";
    }

    private void readElement(String[] words, String line) {
        if (words.length != 3 || !words[2].matches("\\d{1,18}")) {
            refuse("element, its name and how many there are", line);
            return;
        }
        if (elements.stream().anyMatch(element -> element.name().equals(words[1]))) {
            refuse("each element once", line);
        }
        elements.add(new PlyElement(words[1], Long.parseLong(words[2]), opening.lineNumber(), new ArrayList<>()));
    }

    private void readProperty(String[] words, String line) {
        boolean list = words.length == 5 && words[1].equals("list");
        Optional<PlyType> length = list ? PlyType.named(words[2]).filter(PlyType::isWhole) : Optional.empty();
        Optional<PlyType> type = list ? PlyType.named(words[3])
            : words.length == 3 ? PlyType.named(words[1]) : Optional.empty();
        if (type.isEmpty() || list && length.isEmpty()) {
            refuse("property, its type and its name", line);
        } else if (elements.isEmpty()) {
            refuse("an element before its properties", line);
        } else {
            add(new PlyElement.Property(words[words.length - 1], type.get(), length), line);
        }
    }

    private void add(PlyElement.Property property, String line) {
        List<PlyElement.Property> properties = elements.get(elements.size() - 1).properties();
        if (properties.stream().anyMatch(other -> other.name().equals(property.name()))) {
            refuse("each property once", line);
        }
        properties.add(property);
    }

    private void refuse(String expected, String line) {
        faults.add(opening.lineNumber(), 1, expected, Fault.shown(line),
            "This is no .ply header as published; export the scan again, or as .xyz.");
    }

    private void require() throws BadBoardFile {
        if (format.isEmpty()) {
            faults.add(opening.lineNumber(), 1, "a line format before this one", "none",
                "Export the scan again, or as .xyz.");
        }
        if (before().size() == elements.size()) {
            faults.add(opening.lineNumber(), 1, "an element vertex before this line", "none",
                "Only points are read: export the scan as points.");
        } else {
            for (char axis : RowLayout.AXES.toCharArray()) {
                if (vertices().place(axis) < 0) {
                    faults.add(vertices().line(), 1, "vertices with a property " + axis, "none",
                        "Every point needs x, y and z; export the scan with all three.");
                }
            }
        }
        faults.throwIfAny();
    }
}
