package outwind.surface;

/**
 * What the readings that there are foretell of one more touch-off.
 *
 * @param mean      mm
 * @param deviation standard deviation (mm), the touch-off's own noise in it
 */
public record ForetoldHeight(double mean, double deviation) { }
