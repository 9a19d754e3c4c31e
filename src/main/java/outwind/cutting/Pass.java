package outwind.cutting;

/**
 * One layer of a cut.
 *
 * @param depth       below the face's highest spot (mm)
 * @param wood        share of the board's area that stands above the layer's floor, 0 to 1; the rest is air
 * @param minutes     for every row from end to end
 * @param woodMinutes for the rows that meet wood, each only as far as the wood reaches
 */
public record Pass(double depth, double wood, double minutes, double woodMinutes) { }
