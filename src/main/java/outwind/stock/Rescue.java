package outwind.stock;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.flatten.Verdict;

/**
 * How crosscuts save a board that does not make its target in one piece, or may not: equal lengths, each levelled on
 * its own, that all make it with a chance of at least 95 %.
 *
 * @param lengths the lengths, in order from the near end; at least one
 */
public record Rescue(List<Blank> lengths) {

    private static final double SURE = 0.95;

    public Rescue {
        lengths = List.copyOf(lengths);
    }

    /** The rescue with the fewest cuts; empty if the board needs none, has no target, or none is to be found. */
    public static Optional<Rescue> of(Judgement judgement) {
        if (judgement.verdict() != Verdict.NO && judgement.verdict() != Verdict.DOUBTFUL) {
            return Optional.empty();
        }
        Board board = judgement.board();
        return FullLengths.of(board, judgement.shape(), board.target().getAsDouble(), Saw.usual(board), SURE,
            judgement.request().skim(), judgement.request().seed()).fewest().map(Rescue::new);
    }

    /** How many lengths. */
    public int count() {
        return lengths.size();
    }

    /** Length of each (mm). */
    public double length() {
        return lengths.get(0).along();
    }

    /** The length that finishes thinnest. */
    public Blank thinnest() {
        return lengths.stream().min(Comparator.comparingDouble(blank -> blank.range().median())).orElseThrow();
    }

    /** What every length most likely finishes at or above (mm). */
    public double thickness() {
        return thinnest().range().median();
    }

    /** Chance of the target of the length that is least sure, 0 to 1. */
    public double chance() {
        return lengths.stream().mapToDouble(Blank::chance).min().orElseThrow();
    }
}
