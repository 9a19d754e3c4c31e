package outwind.surface;

import outwind.board.CellHeights;

/**
 * Heights of cells rid of as much noise as can be distinguished from structure, each judged by the cells around it.
 *
 * <pre>
 *   m, V mean and variance of the 5 × 5 cells around,   v variance of their noise
 *   w = max(0, V − v)/V,   height = m + w·(z − m),   what is left unsure = w·v + (1 − w)·v/k   with k cells around
 * </pre>
 * On even wood w is near zero and the cells are averaged; in a dip, at a knot or a step it is near one and the cell
 * stands as it was measured. Without it the lowest of thousands of cells would be the one with the worst luck.
 *
 * <p>Source: J.-S. Lee, IEEE Transactions on Pattern Analysis and Machine Intelligence 2 (1980) 165–168.
 *
 * @param height   mm, one per cell; zero where nothing was measured
 * @param variance of each (mm²)
 */
record LocalFilter(double[] height, double[] variance) {

    /** Fewer cells around than this tell no variance. */
    private static final int FEWEST = 8;

    /** Cells to either side: fewer tell the variance too badly, more are no longer around. */
    private static final int REACH = 2;

    /**
     * @param z     one per cell (mm), measured from a smooth face
     * @param noise variance of each (mm²)
     */
    static LocalFilter of(CellHeights cells, double[] z, double[] noise) {
        double[] height = new double[cells.size()];
        double[] variance = new double[cells.size()];
        for (int k = 0; k < height.length; k++) {
            if (cells.isMeasured(k)) {
                int count = 0;
                double sum = 0;
                double squares = 0;
                double noises = 0;
                for (int j = Math.max(0, k / cells.columns() - REACH); j <= Math.min(cells.rows() - 1,
                    k / cells.columns() + REACH); j++) {
                    for (int i = Math.max(0, k % cells.columns() - REACH); i <= Math.min(cells.columns() - 1,
                        k % cells.columns() + REACH); i++) {
                        int around = j * cells.columns() + i;
                        if (cells.isMeasured(around)) {
                            count++;
                            sum += z[around] - z[k];
                            squares += (z[around] - z[k]) * (z[around] - z[k]);
                            noises += noise[around];
                        }
                    }
                }
                double apart = (squares - sum * sum / count) / (count - 1);
                double keep = count < FEWEST || !(apart > 0) ? 1 : Math.max(0, 1 - noises / count / apart);
                height[k] = z[k] + (1 - keep) * sum / count;
                variance[k] = (keep + (1 - keep) / count) * noise[k];
            }
        }
        return new LocalFilter(height, variance);
    }
}
