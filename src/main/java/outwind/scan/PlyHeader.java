package outwind.scan;

import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import outwind.board.BadBoardFile;
import outwind.board.Fault;
import outwind.board.ScanHeader;

/**
 * Header of a PLY file.
 *
 * <p>Source: G. Turk, The PLY polygon file format, 1994 (from memory); the type names with sizes in them are common
 * practice.
 *
 * @param order    of bytes; empty if the file is text
 * @param elements in the order of the file
 * @param comments that state keys; what other programs remark is passed over
 * @param bytes    length of the header, its last line end counted
 * @param lines    of the header
 */
record PlyHeader(Optional<ByteOrder> order, List<PlyElement> elements, List<HeaderLine> comments, int bytes,
                 int lines) {

    /** A header is some dozens of lines; more of it than this is none. */
    private static final int LONGEST = 1 << 16;

    private static final String MEND = "Save the scan anew as PLY, or as text with x y z on each line.";

    static PlyHeader read(ScanSource source, ScanFaults faults) throws BadBoardFile {
        return new Parser(source.start(LONGEST), faults).header();
    }

    /** Goes through the header line by line. */
    private static final class Parser {

        private final byte[] start;
        private final ScanFaults faults;
        private final List<PlyElement> elements = new ArrayList<>();
        private final List<HeaderLine> comments = new ArrayList<>();
        private Optional<ByteOrder> order = Optional.empty();
        private boolean formatSaid;
        private int at;
        private int line;

        Parser(byte[] start, ScanFaults faults) {
            this.start = start;
            this.faults = faults;
        }

        PlyHeader header() throws BadBoardFile {
            if (!"ply".equals(next())) {
                throw fault("\"ply\" in the first line of a PLY file", "something else");
            }
            for (String text = next(); !text.equals("end_header"); text = next()) {
                String[] words = text.split("\\s+");
                switch (words[0]) {
                    case "format" -> format(text, words);
                    case "comment" -> HeaderLine.in(faults.file(), line, text, words[0].length())
                        .filter(said -> ScanHeader.isKey(said.key())).ifPresent(comments::add);
                    case "obj_info" -> { }
                    case "element" -> element(text, words);
                    case "property" -> property(text, words);
                    default -> throw fault("format, comment, element, property or end_header", Fault.shown(text));
                }
            }
            if (!formatSaid) {
                throw fault("a line such as \"format binary_little_endian 1.0\"", "a header without it");
            }
            return new PlyHeader(order, elements, comments, at, line);
        }

        private String next() throws BadBoardFile {
            int from = at;
            while (at < start.length && start[at] != '\n') {
                at++;
            }
            if (at == start.length) {
                throw fault("a PLY header that ends with end_header", start.length < LONGEST
                    ? "the end of the file" : "more than " + LONGEST + " bytes of header");
            }
            line++;
            String text = new String(start, from, at - from, StandardCharsets.UTF_8).strip();
            at++;
            return text;
        }

        private BadBoardFile fault(String expected, String found) {
            return faults.at(Math.max(1, line), 1, expected, found, MEND);
        }

        private void format(String text, String[] words) throws BadBoardFile {
            String kind = words.length == 3 && words[2].equals("1.0") ? words[1] : "";
            order = switch (kind) {
                case "ascii" -> Optional.empty();
                case "binary_little_endian" -> Optional.of(ByteOrder.LITTLE_ENDIAN);
                case "binary_big_endian" -> Optional.of(ByteOrder.BIG_ENDIAN);
                default -> throw fault("format ascii, binary_little_endian or binary_big_endian, 1.0",
                    Fault.shown(text));
            };
            formatSaid = true;
        }

        private void element(String text, String[] words) throws BadBoardFile {
            if (words.length != 3 || !words[2].matches("\\d{1,18}")) {
                throw fault("an element with its name and count, such as \"element vertex 1000\"", Fault.shown(text));
            }
            elements.add(new PlyElement(words[1], Long.parseLong(words[2]), new ArrayList<>()));
        }

        private void property(String text, String[] words) throws BadBoardFile {
            boolean list = words.length == 5 && words[1].equals("list");
            Optional<PlyType> type = list ? PlyType.named(words[3])
                : words.length == 3 ? PlyType.named(words[1]) : Optional.empty();
            Optional<PlyType> length = list ? PlyType.named(words[2]).filter(PlyType::isWhole) : Optional.empty();
            if (elements.isEmpty() || type.isEmpty() || list && length.isEmpty()) {
                throw fault("a property of an element, such as \"property float x\"", Fault.shown(text));
            }
            elements.get(elements.size() - 1).properties().add(
                new PlyElement.Property(words[words.length - 1], type.get(), length));
        }
    }
}
