package outwind.report.sheet;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import outwind.board.Board;
import outwind.judge.Judgement;
import outwind.report.drawing.SmoothGrid;

/**
 * Where face A is only guessed.
 *
 * @param deviation standard deviation of face A (mm); empty if there are so many readings that nothing is guessed
 */
record GuessMap(Optional<SmoothGrid> deviation) {

    /** Where face A may well be this much higher or lower (mm), twice its standard deviation, it is only guessed. */
    static final double GUESSED = 0.5;

    /** Pixels from one place to the next where the deviation is sampled: it takes long, and is smooth. */
    private static final int SPACING = 26;

    /** The same on a scanned face, whose cells are a few pixels wide and quick to look up. */
    private static final int SCAN_SPACING = 4;

    /** Enough to tell a row of readings near the edge from the wood beside it. */
    private static final int FEWEST_LINES = 13;

    /** Beyond so many readings the time for deviations, which grows with their square, is not spent. */
    private static final int MOST_READINGS = 300;

    /** Distance between the strokes that mark what is guessed (px). */
    private static final int HATCH = 14;

    private static final int PAPER = 0xffffff;
    private static final int STROKE = 0xb5afa8;

    /** Samples a judged board for a picture of this size (px). */
    static GuessMap of(Judgement judgement, int width, int height) {
        Board board = judgement.board();
        boolean isScan = board.scan().isPresent();
        if (!isScan && board.readings().size() > MOST_READINGS) {
            return new GuessMap(Optional.empty());
        }
        int spacing = isScan ? SCAN_SPACING : SPACING;
        return new GuessMap(Optional.of(SmoothGrid.of(lines(width, spacing), lines(height, spacing), board.length(),
            board.width(), judgement.shape()::topDeviationAt)));
    }

    private static int lines(int pixels, int spacing) {
        return Math.max(FEWEST_LINES, pixels / spacing + 1);
    }

    /** True if face A is only guessed anywhere. */
    boolean hasGuesses() {
        return deviation.stream().anyMatch(grid -> 2 * grid.most() > GUESSED);
    }

    /** White paper with strokes where face A is only guessed, far edge up. */
    BufferedImage painted(int width, int height) {
        double[] deviations = hasGuesses() ? deviation.orElseThrow().enlarged(width, height)
            : new double[width * height];
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int k = 0; k < deviations.length; k++) {
            image.setRGB(k % width, k / width, 2 * deviations[k] > GUESSED ? guess(k % width, k / width) : PAPER);
        }
        return image;
    }

    /** A sample of the strokes that mark what is guessed (px). */
    static void paintSample(Graphics2D pen, int left, int top, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int k = 0; k < width * height; k++) {
            image.setRGB(k % width, k / width, guess(k % width, k / width));
        }
        pen.drawImage(image, left, top, null);
    }

    /** Strokes that fall to the right, on bare paper. */
    private static int guess(int i, int j) {
        return Math.floorMod(i - j, HATCH) < 2 ? STROKE : PAPER;
    }
}
