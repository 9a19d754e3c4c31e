package outwind.numeric.plane;

/**
 * A point that holds a plane where it is.
 *
 * @param index      position of the point in the arrays that were given
 * @param upper      true if it holds the upper plane, false if the lower
 * @param multiplier how much the optimum would change per unit change of this point's height, never negative; the
 *                   multipliers of one plane add up to 1
 */
public record Contact(int index, boolean upper, double multiplier) { }
