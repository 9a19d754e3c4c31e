package outwind.numeric.plane;

import outwind.numeric.Range;

/**
 * How the heights of one program are computed.
 *
 * @param range      from the lowest to the highest, 1 where all are alike
 * @param middle     halfway; heights are computed from here, so that an offset does not cost digits
 * @param resolution a few units in the last place: what lies less than this beyond a plane lies on it
 */
record Heights(double range, double middle, double resolution) {

    /** @throws IllegalArgumentException if a height is not finite */
    static Heights of(double[] top, double[] under) {
        Range all = Range.of(top);
        if (under != top) {
            all = all.and(Range.of(under));
        }
        if (!all.isFinite()) {
            throw new IllegalArgumentException("heights must be finite");
        }
        double range = all.width() > 0 ? all.width() : 1;
        return new Heights(range, all.middle(), 4 * Math.ulp(all.size()) + 1e-12 * range);
    }
}
