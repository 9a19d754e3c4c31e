package outwind.report.sheet;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.flatten.NextReading;
import outwind.judge.Judgement;
import outwind.report.drawing.BoardOutline;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Labels;
import outwind.report.drawing.Mark;
import outwind.report.drawing.Paper;
import outwind.report.drawing.SymbolKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.Figures;
import outwind.setup.BedContact;
import outwind.surface.Region;

/**
 * The board from above, to scale, far edge up: every reading with its height, where the face is only guessed, and where
 * the board rests by itself. Heights as read are no depths, so there is no colour here.
 */
final class PlanView {

    /** Above the board: its heading (px). */
    static final int ABOVE = 94;

    /** Above and below the board, where marks may reach (px). */
    private static final int STRIP = 16;

    /** Right of the board, where labels may reach (px). */
    private static final int BESIDE = 136;

    /** More readings than this are drawn as specks. */
    private static final int MANY = 120;

    /** More readings than this are not written beside their marks. */
    private static final int MOST_WRITTEN = 60;


    private final Paper paper;
    private final Judgement judgement;
    private final Board board;
    private final List<Reading> readings;
    private final Figures figures;
    private final Frame frame;
    private final GuessMap map;

    /** @param frame made by {@link Frame#ofBoard} for the same board */
    PlanView(Paper paper, Judgement judgement, Figures figures, Frame frame) {
        this.paper = paper;
        this.judgement = judgement;
        this.board = judgement.board();
        // A scan's cells are everywhere; marks would only hide the face.
        this.readings = board.scan().isPresent() ? List.of() : board.readingsOf(Face.A);
        this.figures = figures;
        this.frame = frame;
        this.map = GuessMap.of(judgement, frame.width(), frame.height());
    }

    Frame frame() {
        return frame;
    }

    /**
     * Draws the view, its heading {@link #ABOVE} the board.
     *
     * @return the y below all of it (px)
     */
    int draw() {
        heading();
        Graphics2D pen = paper.pen();
        pen.drawImage(map.painted(frame.width(), frame.height()), frame.left(), frame.top(), null);
        trim();
        BoardOutline outline = new BoardOutline(paper, figures, board, frame);
        outline.draw();
        marks();
        int bottom = outline.axes(wordsEnd(), STRIP);
        labels();
        return bottom;
    }

    private void heading() {
        String what = readings.isEmpty() ? "Seen from above: the face that was scanned"
            : "Seen from above: every reading, as read";
        int left = frame.left() - DetailSheet.LEFT_GUTTER;
        int y = paper.paragraph(what, TextStyle.HEADING, left, frame.top() - ABOVE, paper.width(what, TextStyle.HEADING), 1);
        if (!frame.isToScale()) {
            paper.paragraph("not to scale", TextStyle.LABEL, left, y, Paper.WIDTH, 1);
        }
    }

    /** Where the words above the left axis end, clear of a shim near the corner (px). */
    private double wordsEnd() {
        return frame.left() - BoardOutline.AXIS_GAP - 26.0;
    }

    private void trim() {
        if (!board.trim().equals(Trim.NONE)) {
            paper.trim(frame.box(Region.kept(board)));
        }
    }

    private void marks() {
        // Marks at the ends and edges reach beyond the board.
        Frame wide = frame.widenedBy(STRIP);
        XYChart chart = wide.chart();
        if (!readings.isEmpty()) {
            scatter(chart, readingMark(), readings.stream().mapToDouble(Reading::x).toArray(),
                readings.stream().mapToDouble(Reading::y).toArray());
        }
        List<BedContact> rests = judgement.pose().restsAt();
        if (!rests.isEmpty()) {
            scatter(chart, Mark.REST, rests.stream().mapToDouble(BedContact::x).toArray(),
                rests.stream().mapToDouble(BedContact::y).toArray());
        }
        if (hasSpread()) {
            scatter(chart, Mark.LOWEST, new double[] {lowest().x()}, new double[] {lowest().y()});
            scatter(chart, Mark.HIGHEST, new double[] {highest().x()}, new double[] {highest().y()});
        }
        if (!judgement.doubts().isEmpty()) {
            scatter(chart, Mark.SUSPECT,
                judgement.doubts().stream().mapToDouble(doubt -> doubt.suspect().reading().x()).toArray(),
                judgement.doubts().stream().mapToDouble(doubt -> doubt.suspect().reading().y()).toArray());
        }
        if (!judgement.worthReading().isEmpty()) {
            scatter(chart, Mark.NEXT, judgement.worthReading().stream().mapToDouble(NextReading::x).toArray(),
                judgement.worthReading().stream().mapToDouble(NextReading::y).toArray());
        }
        wide.paint(chart, paper.pen());
    }

    private static void scatter(XYChart chart, Mark mark, double[] x, double[] y) {
        XYSeries series = chart.addSeries(mark.name(), x, y);
        series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
        series.setMarker(mark.marker());
    }

    private Mark readingMark() {
        return readings.size() > MANY ? Mark.SPECK : Mark.READING;
    }

    /** Readings that are all alike have no highest and no lowest among them. */
    private boolean hasSpread() {
        return judgement.readings().spread() > 0;
    }

    private Reading highest() {
        return judgement.readings().highest();
    }

    private Reading lowest() {
        return judgement.readings().lowest();
    }

    private void labels() {
        int axis = frame.left() - BoardOutline.AXIS_GAP;
        Labels labels = new Labels(new Rectangle2D.Double(wordsEnd(), frame.top() - STRIP,
            frame.right() + BESIDE - wordsEnd(), frame.height() + 2.0 * STRIP - 4));
        labels.keepClear(new Rectangle2D.Double(wordsEnd(), frame.top() - 12.0, axis + 2 - wordsEnd(),
            frame.height() + 24.0));
        // A label is better wholly on the board or wholly off it.
        frame.sides().forEach(labels::avoid);
        if (readingMark() == Mark.READING) {
            readings.forEach(reading -> labels.avoid(around(Mark.READING, reading.x(), reading.y())));
        }
        Rectangle2D high = around(Mark.HIGHEST, highest().x(), highest().y());
        Rectangle2D low = around(Mark.LOWEST, lowest().x(), lowest().y());
        labels.keepClear(high);
        labels.keepClear(low);
        judgement.pose().restsAt().forEach(rest -> labels.keepClear(around(Mark.REST, rest.x(), rest.y())));
        judgement.doubts().forEach(doubt -> labels.keepClear(around(Mark.SUSPECT, doubt.suspect().reading().x(),
            doubt.suspect().reading().y())));
        judgement.worthReading().forEach(place -> labels.keepClear(around(Mark.NEXT, place.x(), place.y())));

        for (int i = 0; i < judgement.worthReading().size(); i++) {
            labels.write(paper, TextStyle.LABEL, around(Mark.NEXT, judgement.worthReading().get(i).x(), judgement.worthReading().get(i).y()), Labels.Side.ALL,
                "next " + (i + 1), String.valueOf(i + 1));
        }
        if (hasSpread()) {
            labels.write(paper, TextStyle.LABEL, high, Labels.Side.ALL, "highest " + figures.fineLength(highest().z()),
                "highest " + figures.fine(highest().z()));
            labels.write(paper, TextStyle.LABEL, low, Labels.Side.ALL, "lowest " + figures.fineLength(lowest().z()),
                "lowest " + figures.fine(lowest().z()));
        }
        for (BedContact rest : judgement.pose().restsAt()) {
            labels.write(paper, TextStyle.LABEL, around(Mark.REST, rest.x(), rest.y()), Labels.Side.ALL,
                Figures.percent(rest.load()));
        }
        values(labels);
    }

    /** The heights of the other readings, as far as there is room for them close by. */
    private void values(Labels labels) {
        if (readings.size() > MOST_WRITTEN) {
            return;
        }
        for (Reading reading : readings) {
            boolean isNamed = hasSpread() && (reading.equals(highest()) || reading.equals(lowest()));
            if (!isNamed) {
                labels.writeClose(paper, TextStyle.SMALL, around(Mark.READING, reading.x(), reading.y()),
                    figures.fine(reading.z()));
            }
        }
    }

    private Rectangle2D around(Mark mark, double x, double y) {
        return mark.around(frame.px(x), frame.py(y));
    }

    /** Adds what this view shows to the key. */
    void explain(SymbolKey key) {
        if (!readings.isEmpty()) {
            key.add(readingMark()::paint, readings.size() > MOST_WRITTEN ? "reading" : "reading, with its height");
        }
        if (hasSpread()) {
            key.add((pen, x, y) -> {
                Mark.HIGHEST.paint(pen, x - 13, y);
                Mark.LOWEST.paint(pen, x + 13, y);
            }, readings.isEmpty() ? "highest and lowest scanned point" : "highest and lowest reading");
        }
        if (!judgement.doubts().isEmpty()) {
            key.add(Mark.SUSPECT::paint, "reading that looks wrong");
        }
        if (!judgement.worthReading().isEmpty()) {
            key.add(Mark.NEXT::paint, readings.isEmpty() ? "not scanned, and tells most"
                : "read here next: it tells most");
        }
        if (!judgement.pose().restsAt().isEmpty()) {
            key.add(Mark.REST::paint, "rests here by itself, with its share of the weight");
        }
        if (!board.trim().equals(Trim.NONE)) {
            key.add(Paper::dashed, "trimmed off later, need not clean up");
        }
        if (!board.defects().isEmpty()) {
            key.add((pen, x, y) -> Paper.crossed(pen, new Rectangle2D.Double(x - 18, y - 9, 36, 18)), "defect");
        }
        if (map.hasGuesses()) {
            key.add((pen, x, y) -> GuessMap.paintSample(pen, (int) x - 20, (int) y - 9, 40, 18),
                "only guessed, to ± " + figures.small(GuessMap.GUESSED) + " or worse");
        }
    }
}
