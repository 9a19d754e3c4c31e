package outwind.report.sheet;

import java.awt.BasicStroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.markers.SeriesMarkers;
import outwind.flatten.Verdict;
import outwind.judge.Judgement;
import outwind.numeric.plane.Plane;
import outwind.report.drawing.Axis;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Hatch;
import outwind.report.drawing.HeightScale;
import outwind.report.drawing.Labels;
import outwind.report.drawing.Paper;
import outwind.report.drawing.Profile;
import outwind.report.drawing.SymbolKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;

/** A section through the board as it stands on the bed: both faces, both cuts, and the board that is left. */
final class SectionView {

    private static final BasicStroke FACE = new BasicStroke(2.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    private static final BasicStroke CUT = new BasicStroke(2.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10,
        new float[] {12, 7}, 0);
    private static final BasicStroke BED = new BasicStroke(4, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
    private static final BasicStroke SHORT_CUT = new BasicStroke(2.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10,
        new float[] {9, 6.5f}, 0);

    /** How far the bed reaches beyond the board (px). */
    private static final int BEYOND = 14;

    /** Width of a pair of leaders from the lines to their words (px). */
    private static final int LEADER = 14;

    /** Between the two parts of a heading, and between the heading and the drawing (px). */
    private static final int BETWEEN = 18;
    private static final int UNDER_HEADING = 14;

    /** Below the bed: its hatching (px). */
    private static final int GROUND = 14;

    private final Paper paper;
    private final Judgement judgement;
    private final Figures figures;
    private final HeightScale heights;
    private final Profile profile;
    private final boolean isLengthwise;

    private SectionView(Paper paper, Judgement judgement, Figures figures, HeightScale heights, Profile profile,
                        boolean isLengthwise) {
        this.paper = paper;
        this.judgement = judgement;
        this.figures = figures;
        this.heights = heights;
        this.profile = profile;
        this.isLengthwise = isLengthwise;
    }

    static SectionView lengthwise(Paper paper, Judgement judgement, Figures figures, HeightScale heights,
                                  Profile profile) {
        return new SectionView(paper, judgement, figures, heights, profile, true);
    }

    static SectionView crosswise(Paper paper, Judgement judgement, Figures figures, HeightScale heights,
                                 Profile profile) {
        return new SectionView(paper, judgement, figures, heights, profile, false);
    }

    /** Adds what sections show to the key. */
    static void explain(SymbolKey key, Judgement judgement) {
        key.add((pen, x, y) -> {
            pen.setColor(Paper.INK);
            pen.setStroke(FACE);
            pen.draw(new Rectangle2D.Double(x - 20, y - 8, 40, 16));
        }, "rough board, cut through");
        if (judgement.cuts().thickness() > 0) {
            key.add((pen, x, y) -> {
                Hatch.paint(pen, new Rectangle2D.Double(x - 20, y - 8, 40, 16));
                pen.setColor(Paper.INK);
                pen.setStroke(SHORT_CUT);
                pen.draw(new Line2D.Double(x - 20, y - 8, x + 20, y - 8));
                pen.draw(new Line2D.Double(x - 20, y + 8, x + 20, y + 8));
            }, "wood that stays, between the two cuts");
        }
    }

    private int width(int room) {
        return isLengthwise ? Math.min(room, heights.widthAlong(profile.length()))
            : heights.widthAcross(profile.length(), room);
    }

    /**
     * Draws the section.
     *
     * @param left left side of the board (px)
     * @param top  top of the heading (px)
     * @param room most width for the board (px)
     * @param lines lines of the heading, one or two
     * @return the y below all of it
     */
    int draw(int left, int top, int room, int lines) {
        int y = heading(left, top, room, lines);
        Frame frame = new Frame(left, y, width(room), heights.height(), 0, profile.length(), heights.lowest(),
            heights.highest());
        ground(frame);
        lines(frame);
        margins(frame);
        thickness(frame);
        int axis = Math.max(frame.bottom(), (int) frame.py(0) + GROUND) + 8;
        return new Axis(paper, figures).below(frame, profile.length(), axis, isLengthwise
            ? "x along the grain, " + figures.unit()
            : "y across, " + figures.unit() + " from the near edge");
    }

    /** How many lines the heading takes with this room for the board (px). */
    int headingLines(int room) {
        int oneLine = paper.width(where(), TextStyle.HEADING) + BETWEEN + paper.width(how(width(room)), TextStyle.LABEL);
        return oneLine <= DetailSheet.LEFT_GUTTER + width(room) + DetailSheet.RIGHT_GUTTER ? 1 : 2;
    }

    private int heading(int left, int top, int room, int lines) {
        int start = left - DetailSheet.LEFT_GUTTER;
        int whereWidth = paper.width(where(), TextStyle.HEADING);
        int bottom = paper.paragraph(where(), TextStyle.HEADING, start, top, whereWidth, 1);
        if (lines == 1) {
            paper.paragraph(how(width(room)), TextStyle.LABEL, start + whereWidth + BETWEEN, top + 3, Paper.WIDTH, 1);
            return bottom + UNDER_HEADING;
        }
        return paper.paragraph(how(width(room)), TextStyle.LABEL, start, bottom, Paper.WIDTH, 1) + UNDER_HEADING;
    }

    private String where() {
        return isLengthwise ? "Lengthwise, at half the width" : "Crosswise, at half the length";
    }

    private String how(int width) {
        String how = heights.words(profile.length(), width);
        return judgement.cuts().thickness() > 0 ? how : how + "; no board is left between the cuts";
    }

    /** The bed, hatched below as drawings of solid ground are. */
    private void ground(Frame frame) {
        double y = frame.py(0);
        double left = frame.left() - BEYOND;
        double right = frame.right() + BEYOND;
        for (double x = left; x <= right - 8; x += 12) {
            paper.line(x, y + GROUND, x + 11, y + 2, Paper.SOFT_INK, 1.5f);
        }
    }

    private void lines(Frame frame) {
        Frame wide = frame.widenedBy(BEYOND);
        double[] ends = {wide.x1(), wide.x2()};
        XYChart chart = wide.chart();
        if (judgement.cuts().thickness() > 0) {
            double trim = isLengthwise ? judgement.board().trim().along() : judgement.board().trim().across();
            Hatch.paint(paper.pen(), new Rectangle2D.Double(frame.px(trim), frame.py(cutA()),
                frame.px(profile.length() - trim) - frame.px(trim), frame.py(cutB()) - frame.py(cutA())));
        }
        line(chart, "bed", ends, new double[] {0, 0}, BED);
        line(chart, "face A", profile.place(), profile.top(), FACE);
        line(chart, "underside", profile.place(), profile.underside(), FACE);
        line(chart, "near end", new double[] {0, 0}, ends(profile, 0), FACE);
        line(chart, "far end", new double[] {profile.length(), profile.length()},
            ends(profile, profile.place().length - 1), FACE);
        double[] board = {0, profile.length()};
        line(chart, "cut of face A", board, new double[] {cutA(), cutA()}, CUT);
        line(chart, "cut of face B", board, new double[] {cutB(), cutB()}, CUT);
        wide.paint(chart, paper.pen());
    }

    private static double[] ends(Profile profile, int i) {
        return new double[] {profile.underside()[i], profile.top()[i]};
    }

    private static void line(XYChart chart, String name, double[] x, double[] y, BasicStroke stroke) {
        XYSeries series = chart.addSeries(name, x, y);
        series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Line);
        series.setMarker(SeriesMarkers.NONE);
        series.setLineColor(Paper.INK);
        series.setLineStyle(stroke);
    }

    private double cutA() {
        return aboveBed(judgement.cuts().faceA().plane());
    }

    private double cutB() {
        return aboveBed(judgement.cuts().faceB().plane());
    }

    /** The cuts are parallel to the bed. */
    private double aboveBed(Plane plane) {
        return plane.height() - judgement.setup().bed().height();
    }

    /** A line that is named in the right margin, its height in the left one. */
    private record Named(String words, double height) { }

    private void margins(Frame frame) {
        List<Named> named = List.of(new Named("cut of face A", cutA()), new Named("cut of face B", cutB()),
            new Named("bed", 0));
        // Where two lines share a height, face A is named above face B and that above the bed.
        List<Named> downwards = named.stream().sorted(Comparator.comparingDouble(Named::height).reversed()).toList();
        double[] lines = downwards.stream().mapToDouble(line -> frame.py(line.height())).toArray();
        double[] words = Labels.spread(lines, paper.height(TextStyle.NOTE) + 1.0);
        double left = frame.left() - BEYOND;
        double right = frame.right() + BEYOND;
        for (int i = 0; i < words.length; i++) {
            Named line = downwards.get(i);
            paper.line(frame.left(), lines[i], left, lines[i], Paper.SOFT_INK, 1);
            paper.line(left, lines[i], left - LEADER, words[i], Paper.SOFT_INK, 1);
            paper.line(frame.right(), lines[i], right, lines[i], Paper.SOFT_INK, 1);
            paper.line(right, lines[i], right + LEADER, words[i], Paper.SOFT_INK, 1);
            String height = line.words().equals("bed") ? "0" : figures.length(line.height());
            paper.fromRight(height, TextStyle.NOTE, Paper.INK, left - LEADER - 3, words[i]);
            paper.fromLeft(line.words(), TextStyle.NOTE, Paper.INK, right + LEADER + 3, words[i]);
        }
    }

    private void thickness(Frame frame) {
        double left = judgement.cuts().thickness();
        if (left <= 0) {
            return;
        }
        // The cuts are set on the face as it most likely is; only a sure verdict promises what lies between them.
        String whole = judgement.verdict() == Verdict.YES ? "finishes at " + figures.length(left)
            : figures.length(left) + " between the cuts";
        String words = paper.width(whole, TextStyle.STRONG) + 20 < frame.width() ? whole : figures.length(left);
        double middle = frame.py((cutA() + cutB()) / 2);
        Rectangle2D box = paper.plateFor(words, TextStyle.STRONG);
        double x = (frame.px(0) + frame.px(profile.length()) - box.getWidth()) / 2;
        paper.plate(words, TextStyle.STRONG, new Rectangle2D.Double(x, middle - box.getHeight() / 2, box.getWidth(),
            box.getHeight()));
    }
}
