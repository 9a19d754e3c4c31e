package outwind.shop;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Shims laid one on another to make up a height.
 *
 * <pre>
 *   fewest(0) = 0,   fewest(h) = 1 + min over shims s of fewest(h − s),   h and s in hundredths of a mm
 * </pre>
 * Of the heights within half of the finest step, the one of fewest shims, then the nearest. There are as many of each
 * thickness as one likes, but nobody stacks more than a few.
 *
 * @param thicknesses at hand (mm), above zero
 */
public record ShimStack(List<Double> thicknesses) {

    /** Loose stacks of more give under the board: our choice. */
    static final int MOST = 5;

    /** How far off the height a stack may be (mm): half of a step that anybody would notice. */
    static final double OFF = 0.05;

    private static final double UNIT = 0.01;

    public ShimStack {
        thicknesses = List.copyOf(thicknesses);
    }

    /** The shims that make up a height (mm), thickest first; empty if no few of them do. */
    public Optional<List<Double>> madeUp(double height) {
        int most = (int) Math.round((height + OFF) / UNIT);
        int[] fewest = new int[most + 1];
        int[] last = new int[most + 1];
        for (int h = 1; h <= most; h++) {
            fewest[h] = MOST + 1;
            for (int s = 0; s < thicknesses.size(); s++) {
                int size = (int) Math.round(thicknesses.get(s) / UNIT);
                if (size > 0 && size <= h && fewest[h - size] + 1 < fewest[h]) {
                    fewest[h] = fewest[h - size] + 1;
                    last[h] = s;
                }
            }
        }
        int wanted = (int) Math.round(height / UNIT);
        int best = -1;
        for (int h = Math.max(1, (int) Math.round((height - OFF) / UNIT)); h <= most; h++) {
            boolean isBetter = best < 0 || fewest[h] < fewest[best]
                || fewest[h] == fewest[best] && Math.abs(h - wanted) < Math.abs(best - wanted);
            best = fewest[h] <= MOST && isBetter ? h : best;
        }
        return best < 0 ? Optional.empty() : Optional.of(pieces(best, last));
    }

    private List<Double> pieces(int height, int[] last) {
        List<Double> pieces = new ArrayList<>();
        for (int left = height; left > 0; ) {
            double piece = thicknesses.get(last[left]);
            pieces.add(piece);
            left -= (int) Math.round(piece / UNIT);
        }
        pieces.sort(Collections.reverseOrder());
        return List.copyOf(pieces);
    }
}
