package outwind.blanks;

import java.util.List;

/**
 * Equal lengths of a board's full width, each levelled on its own after crosscutting, that all make one thickness.
 *
 * @param lengths in order from the near end; at least one
 */
public record EqualLengths(List<Blank> lengths) {

    public EqualLengths {
        lengths = List.copyOf(lengths);
    }

    /** How many lengths. */
    public int count() {
        return lengths.size();
    }

    /** Length of each (mm). */
    public double length() {
        return lengths.get(0).along();
    }

    /** What the thinnest of them most likely finishes at (mm). */
    public double thickness() {
        return lengths.stream().mapToDouble(blank -> blank.range().median()).min().orElseThrow();
    }

    /** Chance of the thickness of the length that is least sure, 0 to 1. */
    public double chance() {
        return lengths.stream().mapToDouble(Blank::chance).min().orElseThrow();
    }
}
