package outwind.setup;

/**
 * A corner of the board over the bed.
 *
 * @param x   0 or the length (mm)
 * @param y   0 or the width (mm)
 * @param gap height of the underside above the bed there (mm)
 */
public record Corner(double x, double y, double gap) { }
