package outwind.report.drawing;

import outwind.report.words.Figures;

/**
 * How much taller heights are drawn than lengths, so that small ones are seen.
 *
 * @param pixels px per mm of height
 * @param times  the same as a multiple of the scale of the lengths
 */
public record Exaggeration(double pixels, double times) {

    /** Less height than this is not distinguished from none (mm). */
    private static final double LEAST_RANGE = 1e-3;

    private static final double[] ROUND = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8};

    /**
     * The largest round multiple that fits.
     *
     * @param range  heights that are shown (mm)
     * @param room   for them (px)
     * @param length px per mm of length
     */
    public static Exaggeration fitting(double range, double room, double length) {
        double most = room / Math.max(range, LEAST_RANGE) / length;
        double times = roundAtMost(most);
        return new Exaggeration(times * length, times);
    }

    /** The greatest of 1, 1.5, 2 … 8, 10, 15 … that is no more than this; below 1 the number itself. */
    static double roundAtMost(double most) {
        double best = Math.min(1, most);
        for (double power = 1; power <= most; power *= 10) {
            for (double digit : ROUND) {
                best = digit * power <= most ? Math.max(best, digit * power) : best;
            }
        }
        return best;
    }

    public String words() {
        return times < 1 ? "heights drawn smaller than lengths" : times == 1 ? "heights to scale"
            : "heights drawn " + Figures.plain(times) + " times as large";
    }
}
