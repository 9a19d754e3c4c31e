package outwind.board.text;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import outwind.board.Fault;

/**
 * What a crash leaves at the end of a file that is written line by line: a line that does not end. It may look like a
 * whole one and be none, as -1.1 where -1.12 was being written, so it must never be read. A file that is written so
 * says it in a remark; any other file may end as it likes.
 *
 * @param whole  the file's bytes without the torn line
 * @param torn   the torn line's bytes; none if the file is whole
 */
public record TornTail(byte[] whole, byte[] torn) {

    /** The remark of a file whose every line ends. */
    public static final String REMARK = "# written line by line; a last line that does not end is torn";

    private static final int ENOUGH_TO_KNOW_IT_BY = 40;

    public static TornTail of(byte[] bytes) {
        int end = bytes.length;
        while (end > 0 && bytes[end - 1] != '\n') {
            end--;
        }
        byte[] whole = Arrays.copyOf(bytes, end);
        // A remark that is itself torn is not found, and then the file is no record yet.
        boolean marked = new String(whole, StandardCharsets.ISO_8859_1).lines().anyMatch(REMARK::equals);
        return marked ? new TornTail(whole, Arrays.copyOfRange(bytes, end, bytes.length))
            : new TornTail(bytes, new byte[0]);
    }

    public boolean isTorn() {
        return torn.length > 0;
    }

    /** What is left out, as a sentence. */
    public String inWords() {
        String text = new String(torn, StandardCharsets.UTF_8);
        return "The file's last line, " + Fault.shown(text.substring(0, Math.min(text.length(), ENOUGH_TO_KNOW_IT_BY)))
            + ", does not end, as when the power fails while it is written: it is left out. If it is whole, press Enter"
            + " behind it in an editor.";
    }
}
