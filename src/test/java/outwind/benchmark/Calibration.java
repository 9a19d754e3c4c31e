package outwind.benchmark;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Stated chances beside the share of boards that made it. */
final class Calibration {

    private static final int BINS = 5;

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

    void plot(Path file) throws IOException {
        double[] x = new double[BINS];
        double[] y = new double[BINS];
        double[] error = new double[BINS];
        for (int bin = 0; bin < BINS; bin++) {
            x[bin] = 100 * chances[bin] / stated[bin];
            y[bin] = 100.0 * made[bin] / stated[bin];
            error[bin] = 2 * Math.sqrt(y[bin] * (100 - y[bin]) / stated[bin]);
        }
        XYChart chart = new XYChart(900, 900);
        chart.setTitle("Of boards given this chance, how many made it");
        chart.setXAxisTitle("chance stated, %");
        chart.setYAxisTitle("share that made it, % (bars: two standard errors)");
        chart.getStyler().setLegendVisible(false).setChartBackgroundColor(Color.WHITE)
            .setPlotBorderVisible(false).setMarkerSize(14).setChartTitleFont(new Font(Font.SANS_SERIF, Font.BOLD, 24));
        chart.getStyler().setAxisTitleFont(new Font(Font.SANS_SERIF, Font.PLAIN, 20))
            .setAxisTickLabelsFont(new Font(Font.SANS_SERIF, Font.PLAIN, 18)).setXAxisMin(0.0).setXAxisMax(100.0)
            .setYAxisMin(0.0).setYAxisMax(100.0);
        chart.addSeries("as it should be", new double[] {0, 100}, new double[] {0, 100})
            .setMarker(SeriesMarkers.NONE).setLineColor(Color.GRAY)
            .setLineStyle(new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {8, 8}, 0));
        chart.addSeries("as it was", x, y, error).setMarker(SeriesMarkers.CIRCLE)
            .setMarkerColor(new Color(0x211d1a)).setLineColor(new Color(0x211d1a));
        BufferedImage image = new BufferedImage(900, 900, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        chart.paint(graphics, 900, 900);
        graphics.dispose();
        ImageIO.write(image, "png", file.toFile());
    }
}
