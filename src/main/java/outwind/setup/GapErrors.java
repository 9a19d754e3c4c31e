package outwind.setup;

import java.util.Arrays;
import java.util.List;
import outwind.surface.BoardShape;

/**
 * How far the gap under a support may be from the height that is printed for its shim.
 *
 * <pre>
 *   half width = the 90th percentile over the possible boards of |gap − printed height|, at least 1.645 standard
 *   deviations of the face there
 * </pre>
 * On narrow boards the draws are seen at few places; there the model's own deviation is the wider.
 */
final class GapErrors {

    private static final double SHARE = 0.9;

    /** Two-sided 90 % of a normal distribution, in standard deviations. */
    private static final double NORMAL = 1.645;

    private GapErrors() { }

    /** Half width of the 90 % range at each support (mm), in their order. */
    static List<Double> halfWidths(PossibleUndersides.Gaps gaps, BoardShape shape, List<Shim> supports) {
        return supports.stream().map(support -> {
            double[] errors = Arrays.stream(gaps.at(support.x(), support.y()))
                .map(gap -> Math.abs(gap - support.height())).sorted().toArray();
            return Math.max(errors[(int) Math.ceil(SHARE * errors.length) - 1],
                NORMAL * shape.topDeviationAt(support.x(), support.y()));
        }).toList();
    }
}
