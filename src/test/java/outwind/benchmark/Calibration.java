package outwind.benchmark;

import java.awt.BasicStroke;
import java.awt.geom.Ellipse2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.drawing.TextStyle;

/** Stated chances beside the share of boards that made it. */
final class Calibration {

    private static final int BINS = 5;

    /** The sheet, and where the plot begins on it (px). */
    private static final int SIDE = 900;
    private static final int LEFT = 120;
    private static final int TOP = 130;
    private static final int PLOT = 690;
    private static final int DOT = 9;

    private static final BasicStroke AS_STATED = new BasicStroke(3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1,
        new float[] {10, 7}, 0);

    private final int[] stated = new int[BINS];
    private final int[] made = new int[BINS];
    private final double[] chances = new double[BINS];

    /** Boards whose kink three columns cannot show are not counted; the table tells of them. */
    void add(SimulatedBoard.Family family, int columns, double chance, boolean makesIt) {
        if (family == SimulatedBoard.Family.KINKED && columns == 3) {
            return;
        }
        int bin = Math.min(BINS - 1, (int) (chance * BINS));
        stated[bin]++;
        chances[bin] += chance;
        made[bin] += makesIt ? 1 : 0;
    }

    void print() {
        System.out.println("| stated chance | boards | mean chance | made it |");
        System.out.println("| --- | --- | --- | --- |");
        for (int bin = 0; bin < BINS; bin++) {
            System.out.printf(Locale.ROOT, "| %d–%d %% | %d | %.0f %% | %.0f %% |%n", 100 * bin / BINS,
                100 * (bin + 1) / BINS, stated[bin], 100 * chances[bin] / stated[bin],
                100.0 * made[bin] / stated[bin]);
        }
    }

    /** Draws them on a sheet of the program's own. */
    void plot(Path file) throws IOException {
        Paper paper = new Paper(SIDE, SIDE);
        paper.paragraph("Of boards given this chance, how many made it", TextStyle.NAME, Paper.MARGIN, 30,
            SIDE - 2 * Paper.MARGIN, 1);
        Frame frame = new Frame(LEFT, TOP, PLOT, PLOT, 0, 100, 0, 100);
        for (int at = 0; at <= 100; at += 20) {
            paper.line(frame.px(at), frame.top(), frame.px(at), frame.bottom(), Paper.FAINT, 2);
            paper.line(frame.left(), frame.py(at), frame.right(), frame.py(at), Paper.FAINT, 2);
            paper.centred(at + " %", TextStyle.NOTE, Paper.INK, frame.px(at), frame.bottom() + 22);
            paper.fromRight(at + " %", TextStyle.NOTE, Paper.INK, frame.left() - 12, frame.py(at));
        }
        paper.centred("chance stated", TextStyle.NOTE, Paper.SOFT_INK, frame.px(50), frame.bottom() + 52);
        paper.fromLeft("share that made it; bars: two standard errors", TextStyle.NOTE, Paper.SOFT_INK, Paper.MARGIN,
            TOP - 30);
        paper.line(frame.px(0), frame.py(0), frame.px(100), frame.py(100), Paper.SOFT_INK, AS_STATED);
        for (int bin = 0; bin < BINS; bin++) {
            double share = 100.0 * made[bin] / stated[bin];
            double error = 2 * Math.sqrt(share * (100 - share) / stated[bin]);
            double x = frame.px(100 * chances[bin] / stated[bin]);
            paper.line(x, frame.py(share - error), x, frame.py(share + error), Paper.INK, 4);
            paper.pen().setColor(Paper.INK);
            paper.pen().fill(new Ellipse2D.Double(x - DOT, frame.py(share) - DOT, 2 * DOT, 2 * DOT));
        }
        Files.write(file, paper.png(SIDE));
    }
}
