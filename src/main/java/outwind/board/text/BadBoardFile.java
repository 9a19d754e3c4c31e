package outwind.board.text;

import java.util.List;
import java.util.stream.Collectors;
import outwind.board.Fault;

/** A board file that cannot be read, with every fault found in it. */
public final class BadBoardFile extends Exception {

    private static final long serialVersionUID = 1;

    private final transient List<Fault> faults;

    /**
     * @param faults   the faults to list, in the order of the file
     * @param unlisted how many more were found
     */
    BadBoardFile(List<Fault> faults, int unlisted) {
        this(faults, closing(unlisted));
    }

    /**
     * @param faults  the faults to list, in the order of the file
     * @param closing what is said below them, from a line end on, or nothing
     */
    public BadBoardFile(List<Fault> faults, String closing) {
        super(faults.stream().map(Fault::message).collect(Collectors.joining("\n")) + closing);
        this.faults = List.copyOf(faults);
    }

    /** The faults listed in the message, at most 50. */
    public List<Fault> faults() {
        return faults;
    }

    private static String closing(int unlisted) {
        return switch (unlisted) {
            case 0 -> "";
            case 1 -> "\nOne more fault in this file is not listed.";
            default -> "\n" + unlisted + " more faults in this file are not listed.";
        };
    }
}
