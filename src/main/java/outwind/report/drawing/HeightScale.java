package outwind.report.drawing;

import java.util.List;
import outwind.judge.Judgement;
import outwind.numeric.plane.Plane;
import outwind.report.words.Figures;

/**
 * How tall heights above the bed are drawn, the same in both sections.
 *
 * @param lowest  lowest height that is shown (mm above the bed), never above the bed
 * @param highest highest height that is shown (mm above the bed)
 * @param scale   px per mm of height
 * @param along   px per mm along the lengthwise section
 */
public record HeightScale(double lowest, double highest, double scale, double along) {

    /** Room for the heights (px). */
    private static final int ROOM = 160;

    /** A section shorter than this cannot be read (px). */
    private static final int LEAST_WIDTH = 160;

    /** Less height than this is not distinguished from none (mm). */
    private static final double LEAST_RANGE = 1e-3;

    /** Heights are drawn so many times taller than lengths, or ten or a hundred times as many. */
    private static final double[] TIMES = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8};

    /**
     * As tall as there is room for, by a round number of times.
     *
     * @param profiles the sections that share the scale
     * @param along    px per mm of length that are wanted; fewer are used where the board is thicker than there is room
     */
    public static HeightScale of(Judgement judgement, List<Profile> profiles, double along) {
        Plane bed = judgement.setup().bed();
        double cutA = judgement.cuts().faceA().plane().height() - bed.height();
        double cutB = judgement.cuts().faceB().plane().height() - bed.height();
        double low = Math.min(0, Math.min(cutA, cutB));
        double high = Math.max(0, Math.max(cutA, cutB));
        for (Profile profile : profiles) {
            low = Math.min(low, profile.lowest());
            high = Math.max(high, profile.highest());
        }
        high = Math.max(high, low + LEAST_RANGE);
        double fits = ROOM / (high - low);
        double lengths = Math.min(along, fits);
        if (lengths * judgement.board().length() < LEAST_WIDTH) {
            return new HeightScale(low, high, fits, LEAST_WIDTH / judgement.board().length());
        }
        return new HeightScale(low, high, lengths * Exaggeration.roundAtMost(fits / lengths), lengths);
    }

    /** Height of a section (px). */
    public int height() {
        return (int) Math.max(1, Math.round((highest - lowest) * scale));
    }

    /** Width of the lengthwise section (px). */
    public int widthAlong(double length) {
        return (int) Math.max(1, Math.round(length * along));
    }

    /** Width of the crosswise section (px): heights are drawn a round number of times taller than its lengths. */
    public int widthAcross(double length, int room) {
        double times = 1;
        for (double power = 1; length * scale / times > room; power *= 10) {
            for (double next : TIMES) {
                times = length * scale / times > room ? next * power : times;
            }
        }
        return (int) Math.min(room, Math.max(LEAST_WIDTH, Math.round(length * scale / times)));
    }

    /** In words, how heights are drawn in a section of this length (mm) and width (px). */
    public String words(double length, int width) {
        double times = scale * length / width;
        double round = Math.rint(times * 2) / 2;
        // Whole pixels spoil a round number by a little.
        if (round < 1 || Math.abs(times / round - 1) > 0.02) {
            return "heights not to scale";
        }
        return round == 1 ? "drawn to scale" : "heights drawn " + Figures.plain(round) + " times as large";
    }
}
