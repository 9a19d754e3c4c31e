package outwind.stock;

import outwind.board.Board;
import outwind.cutting.Cutter;

/**
 * What is asked of a board beside what its file states.
 *
 * @param skim   least depth to come off each face (mm)
 * @param cutter how deep the machine cuts at a time
 * @param seed   of the possible boards; the same seed gives the same answer
 */
public record Request(double skim, Cutter cutter, long seed) {

    /** Depth that takes the saw marks off a rough face (mm); common practice. */
    private static final double USUAL_SKIM = 0.3;

    /** The skim that the board states, or else the usual one. */
    public static Request of(Board board, Cutter cutter, long seed) {
        return new Request(board.skim().orElse(USUAL_SKIM), cutter, seed);
    }
}
