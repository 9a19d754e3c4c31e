package outwind.setup;

/**
 * A place where the board rests on the bed by itself.
 *
 * @param x    mm along the grain
 * @param y    mm across
 * @param load share of the board's weight, 0 to 1
 */
public record BedContact(double x, double y, double load) { }
