package outwind.setup;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import outwind.board.Board;

/** What makes a board awkward to hold or to cut. All bounds are common practice, round figures. */
public enum HoldingCase {

    /** It bends and hums between its supports. */
    LONG_AND_THIN,

    /** Pressed flat it springs back. */
    CUPPED,

    /** Clamps bow it, the cutter lifts it. */
    THIN,

    /** Clamps find little to hold, and hands come near the cutter. */
    SMALL,

    /** A wide cutter at high speed burns it. */
    BURNS;

    private static final double LENGTH_OVER_THICKNESS = 60;
    private static final double CUP = 1;
    private static final double THIN_BOARD = 12;
    private static final double SHORT = 300;
    private static final double NARROW = 75;
    private static final double WIDE_CUTTER = 25;
    private static final List<String> BURNING = List.of("cherry", "maple", "walnut");

    /**
     * @param finished thickness of the board when both faces are cut (mm)
     * @param cup      its cup where that is known to be real (mm)
     * @param cutter   diameter of the widest cutter that is planned (mm), if it is known
     */
    public static List<HoldingCase> of(Board board, double finished, OptionalDouble cup, OptionalDouble cutter) {
        List<HoldingCase> cases = new ArrayList<>();
        if (board.length() > LENGTH_OVER_THICKNESS * finished) {
            cases.add(LONG_AND_THIN);
        }
        if (cup.isPresent() && Math.abs(cup.getAsDouble()) > CUP) {
            cases.add(CUPPED);
        }
        if (finished < THIN_BOARD) {
            cases.add(THIN);
        }
        if (board.length() < SHORT || board.width() < NARROW) {
            cases.add(SMALL);
        }
        String species = board.species().orElse("").toLowerCase(Locale.ROOT);
        if (cutter.isPresent() && cutter.getAsDouble() >= WIDE_CUTTER && BURNING.stream().anyMatch(species::contains)) {
            cases.add(BURNS);
        }
        return cases;
    }
}
