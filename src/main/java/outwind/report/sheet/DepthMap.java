package outwind.report.sheet;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import outwind.board.Board;
import outwind.judge.Judgement;
import outwind.report.drawing.DepthScale;
import outwind.report.drawing.SmoothGrid;

/**
 * How much comes off face A, all over the board.
 *
 * @param depth face A above the plane it is cut to (mm); negative where the cutter meets air
 */
record DepthMap(SmoothGrid depth) {

    /** Pixels from one sampled place to the next; the face is smooth between them. */
    private static final int SPACING = 12;

    /** The same on a scanned face, whose cells are a few pixels wide. */
    private static final int SCAN_SPACING = 4;

    /** Enough to tell a row of touch-offs near the edge from the wood beside it. */
    private static final int FEWEST_LINES = 13;

    /** A sampled place takes time in step with the touch-offs; a scan of thousands is sampled more coarsely. */
    private static final int MOST_WORK = 8_000_000;

    /** The cutter meets air where the face lies this far below the cut (mm): beyond what rounding does. */
    private static final double AIR = -0.005;

    /** Distance between strokes that mark air (px). */
    private static final int AIR_HATCH = 12;

    private static final int PAPER = 0xffffff;
    private static final int AIR_STROKE = 0x8a847d;

    /** Share of a band's brightness that is left on its border. */
    private static final double BORDER = 0.62;

    /** Samples a judged board for a picture of this size (px). */
    static DepthMap of(Judgement judgement, int width, int height) {
        Board board = judgement.board();
        double spacing = board.scan().isPresent() ? SCAN_SPACING : spacing(board.readings().size(), width, height);
        return new DepthMap(SmoothGrid.of(lines(width, spacing), lines(height, spacing), board.length(), board.width(),
            judgement::depthAt));
    }

    private static double spacing(int readings, int width, int height) {
        double work = (double) width * height / (SPACING * SPACING) * readings;
        return SPACING * Math.sqrt(Math.max(1, work / MOST_WORK));
    }

    private static int lines(int pixels, double spacing) {
        return (int) Math.max(FEWEST_LINES, pixels / spacing + 1);
    }

    /** True if the cutter meets air anywhere. */
    boolean hasAir() {
        return depth.least() < AIR;
    }

    /** The board from above in the colours of a scale, far edge up, from what {@link SmoothGrid#enlarged} gives. */
    static BufferedImage painted(double[] depths, int width, int height, DepthScale scale) {
        Color[] colours = new Color[scale.bands()];
        Arrays.setAll(colours, scale::colour);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] line = new int[width];
        for (int j = 0; j < height; j++) {
            for (int i = 0; i < width; i++) {
                int k = j * width + i;
                line[i] = depths[k] < AIR ? air(i, j) : shaded(colours[scale.band(depths[k])],
                    border(scale, depths[k], steepness(depths, width, height, i, j)));
            }
            image.setRGB(0, j, width, 1, line, 0, width);
        }
        return image;
    }

    /** How fast the depth changes at a pixel (mm per px). */
    private static double steepness(double[] depths, int width, int height, int i, int j) {
        int k = j * width + i;
        double right = i + 1 < width ? depths[k + 1] - depths[k] : i > 0 ? depths[k] - depths[k - 1] : 0;
        double down = j + 1 < height ? depths[k + width] - depths[k] : j > 0 ? depths[k] - depths[k - width] : 0;
        return Math.hypot(right, down);
    }

    /** How much of a pixel the border between two bands covers, 0 to 1: it is one pixel wide to either side. */
    private static double border(DepthScale scale, double depth, double steepness) {
        double nearest = Math.rint((depth - scale.from()) / scale.step());
        if (nearest <= 0 || nearest >= scale.bands() || steepness == 0) {
            return 0;
        }
        double away = Math.abs(depth - scale.from() - nearest * scale.step()) / steepness;
        return Math.max(0, Math.min(1, 1.2 - away));
    }

    private static int shaded(Color colour, double border) {
        double keep = 1 - border * (1 - BORDER);
        return rgb(colour.getRed() * keep, colour.getGreen() * keep, colour.getBlue() * keep);
    }

    private static int rgb(double red, double green, double blue) {
        return (int) red << 16 | (int) green << 8 | (int) blue;
    }

    /** Strokes that rise to the right, on bare paper. */
    private static int air(int i, int j) {
        return (i + j) % AIR_HATCH < 2 ? AIR_STROKE : PAPER;
    }
}
