package outwind.board.text;

import java.util.List;
import java.util.function.Predicate;
import outwind.board.Fault;

/** Leaves out of a list of faults those that only follow from another: one cause, one message. */
final class OneCause {

    private OneCause() { }

    /** The faults that name a cause, in their order. */
    static List<Fault> of(List<Fault> faults) {
        for (Fault fault : faults) {
            if (isUnknownColumn(fault) && fault.found().equals("\"quantity\"")) {
                return List.of(new Fault(fault.file(), fault.line(), 1, "a board file", "a cutting bill",
                    "Name a board file here, and give this file to blanks or stack after --bill."));
            }
            if (fault.expected().startsWith("a header row") && fault.found().matches("\"\\w+\\s*:.*")) {
                return List.of(new Fault(fault.file(), fault.line(), fault.column(), "# before a key", fault.found(),
                    "Begin this line, and others like it, with #: \"# " + fault.found().substring(1) + "."));
            }
        }
        List<Fault> fractions = faults.stream().filter(OneCause::isFraction).toList();
        if (fractions.size() > 1) {
            Fault first = fractions.get(0);
            return List.of(new Fault(first.file(), first.line(), first.column(), first.expected(), first.found(),
                "Fractions are read in inches only: add a line \"# units: in\"."));
        }
        boolean noReadings = any(faults, fault -> fault.expected().equals("readings"));
        boolean badKey = any(faults, fault -> fault.expected().equals("a key"));
        boolean badColumn = any(faults, fault -> isUnknownColumn(fault) || fault.expected().startsWith("one column"));
        boolean[] commaSeen = new boolean[1];
        return faults.stream()
            .filter(fault -> !((noReadings || badKey) && fault.expected().startsWith("the board's ")))
            .filter(fault -> !(badColumn && fault.expected().equals("a column z or thickness")))
            .filter(fault -> {
                boolean comma = fault.expected().startsWith("no cell beyond");
                boolean again = comma && commaSeen[0];
                commaSeen[0] |= comma;
                return !again;
            }).toList();
    }

    private static boolean any(List<Fault> faults, Predicate<Fault> kind) {
        return faults.stream().anyMatch(kind);
    }

    private static boolean isUnknownColumn(Fault fault) {
        return fault.expected().startsWith("a column x, y, z");
    }

    private static boolean isFraction(Fault fault) {
        return fault.mend().startsWith("Fractions are read in inches only");
    }
}
