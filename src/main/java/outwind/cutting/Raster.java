package outwind.cutting;

import java.util.function.IntToDoubleFunction;
import outwind.surface.SampledBoard;

/**
 * Rows along the grain, one beside the other, and the time they take.
 *
 * <pre>
 *   rows = ⌈(width + 2·overrun) / step-over⌉ + 1, evenly spaced from −overrun to width + overrun
 *   way  = rows · (length + 2·overrun) + (width + 2·overrun),   minutes = way / feed
 * </pre>
 * Where air is skipped, a row goes from the first to the last wood under the cutter, the overrun past each, and rows
 * that meet no wood are left out.
 *
 * @param length of the board (mm)
 * @param width  of the board (mm)
 */
record Raster(Cutter cutter, double length, double width) {

    private int rows() {
        return (int) Math.ceil((width + 2 * cutter.overrun()) / cutter.stepOver() - 1e-9) + 1;
    }

    /** Minutes for one layer over the whole board. */
    double minutes() {
        double across = width + 2 * cutter.overrun();
        return (rows() * (length + 2 * cutter.overrun()) + across) / cutter.feed();
    }

    /**
     * Minutes for one layer where only rows and stretches with wood are cut.
     *
     * @param whole the whole board
     * @param above height of wood above the layer's floor at each place (mm); not above zero where there is air
     */
    double woodMinutes(SampledBoard whole, IntToDoubleFunction above) {
        double across = width + 2 * cutter.overrun();
        double spacing = across / (rows() - 1);
        // Between two sampled places wood may reach a cell further than it was seen.
        double cellX = whole.places().cellX();
        double reach = cutter.diameter() / 2 + whole.places().cellY();
        double way = 0;
        double firstRow = Double.POSITIVE_INFINITY;
        double lastRow = Double.NEGATIVE_INFINITY;
        for (int row = 0; row < rows(); row++) {
            double y = -cutter.overrun() + row * spacing;
            double first = Double.POSITIVE_INFINITY;
            double last = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < whole.size(); i++) {
                if (Math.abs(whole.y()[i] - y) <= reach && above.applyAsDouble(i) > 0) {
                    first = Math.min(first, whole.x()[i] - cellX);
                    last = Math.max(last, whole.x()[i] + cellX);
                }
            }
            if (last >= first) {
                way += Math.min(length, last) - Math.max(0, first) + 2 * cutter.overrun();
                firstRow = Math.min(firstRow, y);
                lastRow = Math.max(lastRow, y);
            }
        }
        return way == 0 ? 0 : (way + lastRow - firstRow) / cutter.feed();
    }
}
