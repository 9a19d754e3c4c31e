package outwind.stock;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import outwind.board.Units;

/** Standard thicknesses of boards that are surfaced on both faces. */
public enum Surfaced {

    /**
     * Hardwood: 3/16 in less than rough up to 6/4, 1/4 in less from 7/4 on. Source: grading rules of the National Hardwood
     * Lumber Association, as public pages print them; 2 1/4 in from memory.
     */
    HARDWOOD("hardwood rules of the NHLA", 3.0 / 16, 5.0 / 16, 7.0 / 16, 9.0 / 16, 13.0 / 16, 17.0 / 16, 21.0 / 16, 1.5, 1.75,
        2.25, 2.75, 3.25, 3.75),

    /** Softwood, dry. Source: American Softwood Lumber Standard PS 20, boards and dimension lumber. */
    SOFTWOOD("softwood standard PS 20, dry", 5.0 / 16, 7.0 / 16, 9.0 / 16, 5.0 / 8, 3.0 / 4, 1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4);

    private final String source;
    private final double[] inches;

    Surfaced(String source, double... inches) {
        this.source = source;
        this.inches = inches;
    }

    /** Who sets these thicknesses. */
    public String source() {
        return source;
    }

    /** What it is called on the command line. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** All of them (mm), ascending. */
    public List<Double> thicknesses() {
        return Arrays.stream(inches).map(Units.INCHES::toMillimetres).boxed().toList();
    }

    /** The thickest that some board of a stack may make (mm), the thickest first; at least one, {@link Uses#MOST} at most. */
    public List<Double> within(Stack stack) {
        double most = stack.boards().stream().mapToDouble(PricedBoard::high).max().orElse(0);
        List<Double> made = thicknesses().stream().filter(thickness -> thickness <= most).toList();
        return made.isEmpty() ? thicknesses().subList(0, 1)
            : made.stream().skip(Math.max(0, made.size() - Uses.MOST)).sorted((a, b) -> Double.compare(b, a)).toList();
    }
}
