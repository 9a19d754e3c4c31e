package outwind.blanks;

import java.util.Optional;
import outwind.board.Board;

/**
 * What crosscuts alone make of a board at its target.
 *
 * @param board   what was measured; has a target
 * @param saw     how it is cut
 * @param sure    chance of the target from which on a length counts, 0 to 1
 * @param longest the longest single length of full width that makes the target, if there is one worth having
 * @param equal   equal lengths that all make it with the fewest cuts, if there are any
 */
public record LengthsPlan(Board board, Saw saw, double sure, Optional<Blank> longest, Optional<EqualLengths> equal) {

    public LengthsPlan {
        if (board.target().isEmpty()) {
            throw new IllegalArgumentException("lengths are planned for a target, and the board states none");
        }
    }

    /** Plans the cutting of a board that states a target; see {@link BlankPlan#of}. */
    public static LengthsPlan of(Board board, Saw saw, double sure, double skim, long seed) {
        BlankPlan.requireSure(sure);
        FullLengths lengths = FullLengths.of(board, board.target().orElseThrow(), saw, sure, skim, seed);
        return new LengthsPlan(board, saw, sure, lengths.longest(), lengths.fewest());
    }
}
