package outwind.report.drawing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import outwind.board.Units;
import outwind.report.words.Figures;
import outwind.report.words.RoundStep;

/**
 * Depths of a cut in bands of a round width, light where little comes off and dark where much does.
 *
 * <p>The colours run from fresh shavings to old walnut. Red, green and blue all fall from one to the next, so that the
 * order shows in grey and to every eye.
 *
 * @param from  where the first band begins (mm), a round depth
 * @param step  depth of one band (mm)
 * @param bands how many, at least one
 */
public record DepthScale(double from, double step, int bands) {

    /** Height of the drawn scale with its numbers (px). */
    static final int HEIGHT = 58;

    /** More bands than this are not distinguished at arm's length. */
    private static final int MOST_BANDS = 7;

    private static final int[][] RAMP = {{253, 246, 220}, {232, 196, 122}, {194, 143, 78}, {146, 94, 58},
        {98, 58, 52}};

    private static final int BAR_HEIGHT = 24;
    private static final int LEAST_BOX = 46;

    /** Bands that cover these depths (mm); what lies above the cut is no depth and takes no band. */
    public static DepthScale covering(double least, double most, Units units) {
        RoundStep steps = RoundStep.ofDepth(units);
        double low = Math.max(0, least);
        double high = Math.max(low, most);
        double finest = steps.atLeast(0);
        if (high - low < finest && count(low, high, finest) > 1) {
            // Depths that are all alike get one colour, even where they lie about a border.
            return new DepthScale(first(low, finest) * finest, 2 * finest, 1);
        }
        double step = steps.atLeast((high - low) / MOST_BANDS);
        while (count(low, high, step) > MOST_BANDS) {
            step = steps.atLeast(step * 1.01);
        }
        return new DepthScale(first(low, step) * step, step, count(low, high, step));
    }

    private static int count(double low, double high, double step) {
        return (int) Math.max(1, Math.ceil(high / step - 1e-6) - first(low, step));
    }

    private static double first(double low, double step) {
        return Math.floor(low / step + 1e-6);
    }

    /** Which band a depth (mm) falls into, from 0; depths beyond the ends belong to the first or last band. */
    public int band(double depth) {
        return (int) Math.max(0, Math.min(bands - 1, Math.floor((depth - from) / step)));
    }

    /** Colour of a band; a single one takes the colour of little wood. */
    public Color colour(int band) {
        double place = bands == 1 ? 1 : (double) band / (bands - 1) * (RAMP.length - 1);
        int below = (int) Math.min(RAMP.length - 2, Math.floor(place));
        int[] parts = new int[3];
        for (int k = 0; k < 3; k++) {
            parts[k] = (int) Math.round(RAMP[below][k] + (place - below) * (RAMP[below + 1][k] - RAMP[below][k]));
        }
        return new Color(parts[0], parts[1], parts[2]);
    }

    /** Depths at which the bands begin and end (mm), one more than there are bands. */
    public List<Double> levels() {
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i <= bands; i++) {
            levels.add(from + i * step);
        }
        return levels;
    }

    /** Width of the drawn scale with its numbers and unit (px). */
    public int width(Paper paper, Figures figures) {
        return bands * box(paper, figures) + paper.width(text(levels().get(bands), figures), TextStyle.NOTE) / 2
            + paper.width(unit(figures), TextStyle.NOTE);
    }

    /** Draws the scale with its upper left corner at this place (px). */
    public void draw(Paper paper, Figures figures, int left, int top) {
        Graphics2D pen = paper.pen();
        int box = box(paper, figures);
        for (int i = 0; i < bands; i++) {
            pen.setColor(colour(i));
            pen.fillRect(left + i * box, top, box, BAR_HEIGHT);
        }
        int numbers = top + BAR_HEIGHT + 20;
        for (int i = 0; i <= bands; i++) {
            paper.line(left + i * box, top, left + i * box, top + BAR_HEIGHT + 6, Paper.SOFT_INK, 1);
            paper.centred(text(levels().get(i), figures), TextStyle.NOTE, Paper.INK, left + i * box, numbers);
        }
        paper.line(left, top, left + bands * box, top, Paper.SOFT_INK, 1);
        paper.line(left, top + BAR_HEIGHT, left + bands * box, top + BAR_HEIGHT, Paper.SOFT_INK, 1);
        int half = paper.width(text(levels().get(bands), figures), TextStyle.NOTE) / 2;
        paper.fromLeft(unit(figures), TextStyle.NOTE, Paper.INK, left + bands * box + half, numbers);
    }

    private int box(Paper paper, Figures figures) {
        int widest = levels().stream().mapToInt(level -> paper.width(text(level, figures), TextStyle.NOTE)).max()
            .orElseThrow();
        return Math.max(LEAST_BOX, widest + 14);
    }

    private static String unit(Figures figures) {
        return " " + figures.unit();
    }

    public static String text(double level, Figures figures) {
        return figures.units() == Units.INCHES ? figures.number(level) : Figures.plain(level);
    }
}
