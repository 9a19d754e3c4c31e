package outwind.numeric.plane;

/**
 * The two planes of an exchange on its way.
 *
 * @param upper     height of the upper one at the centre of the places, above the middle of the heights
 * @param lower     the same of the lower one
 * @param tolerance what lies less than this beyond a plane lies on it
 */
record ParallelPlanes(double slopeX, double slopeY, double upper, double lower, double tolerance) { }
