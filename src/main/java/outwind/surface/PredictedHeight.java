package outwind.surface;

/**
 * What the readings that there are predict of one more touch-off.
 *
 * @param mean      mm
 * @param deviation standard deviation (mm), the touch-off's own noise in it
 */
public record PredictedHeight(double mean, double deviation) { }
