package outwind.report.drawing;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import outwind.report.words.Figures;
import outwind.report.words.RoundStep;

/** Ticks and numbers along a board's length or width, at round places and at its end. */
public final class Axis {

    private static final int TICK = 7;
    private static final double LEAST_SPACING = 84;
    private static final double LEAST_SPACING_UP = 44;

    private final Paper paper;
    private final Figures figures;

    public Axis(Paper paper, Figures figures) {
        this.paper = paper;
        this.figures = figures;
    }

    /**
     * Draws ticks from 0 to the length at the frame's left and right side, below {@code y}, and the words in the line
     * under the numbers.
     *
     * @return the y below the words
     */
    public int below(Frame frame, double length, int y, String words) {
        int middle = y + TICK + 4 + paper.height(TextStyle.NOTE) / 2;
        paper.line(frame.px(0), y, frame.px(length), y, Paper.SOFT_INK, 1.5f);
        List<Rectangle2D> taken = new ArrayList<>();
        for (double place : places(length, LEAST_SPACING / frame.scaleX())) {
            double x = frame.px(place);
            String text = figures.place(place);
            double half = paper.width(text, TextStyle.NOTE) / 2.0;
            Rectangle2D box = new Rectangle2D.Double(x - half - 6, middle - 8, 2 * half + 12, 16);
            if (taken.stream().noneMatch(box::intersects)) {
                taken.add(box);
                paper.line(x, y, x, y + TICK, Paper.SOFT_INK, 1.5f);
                paper.centred(text, TextStyle.NOTE, Paper.INK, x, middle);
            }
        }
        int under = middle + paper.height(TextStyle.NOTE);
        paper.centred(words, TextStyle.NOTE, Paper.SOFT_INK, (frame.px(0) + frame.px(length)) / 2, under);
        return under + paper.height(TextStyle.NOTE) / 2;
    }

    /** Draws ticks from 0 upwards to the length, left of {@code x}. */
    void leftOf(Frame frame, double length, int x) {
        List<Rectangle2D> taken = new ArrayList<>();
        paper.line(x, frame.py(0), x, frame.py(length), Paper.SOFT_INK, 1.5f);
        for (double place : places(length, LEAST_SPACING_UP / frame.scaleY())) {
            double y = frame.py(place);
            String text = figures.place(place);
            double width = paper.width(text, TextStyle.NOTE);
            Rectangle2D box = new Rectangle2D.Double(x - TICK - 5 - width, y - 14, width, 28);
            if (taken.stream().noneMatch(box::intersects)) {
                taken.add(box);
                paper.line(x - TICK, y, x, y, Paper.SOFT_INK, 1.5f);
                paper.fromRight(text, TextStyle.NOTE, Paper.INK, x - TICK - 5, y);
            }
        }
    }

    /** Both ends first, since they must be read; then the round places between. */
    private List<Double> places(double length, double spacing) {
        double step = RoundStep.ofPlace(figures.units()).atLeast(spacing);
        List<Double> places = new ArrayList<>(List.of(0.0, length));
        for (int i = 1; i * step < length; i++) {
            places.add(i * step);
        }
        return places;
    }
}
