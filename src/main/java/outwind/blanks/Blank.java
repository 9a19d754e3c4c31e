package outwind.blanks;

import outwind.flatten.ThicknessRange;
import outwind.surface.Region;

/**
 * A blank cut out of a board and levelled on its own.
 *
 * @param name   what it is for
 * @param item   its row in the bill, from 0; −1 for a length without a bill
 * @param region where it lies on the board
 * @param turned true if the board's grain runs across it
 * @param wanted thickness it should finish at (mm)
 * @param range  what it finishes at, over the boards that the readings leave possible
 * @param worth  what it is worth where it makes its thickness: its value, or else its area (mm²)
 */
public record Blank(String name, int item, Region region, boolean turned, double wanted, ThicknessRange range,
        double worth) {

    /** Chance that it makes its thickness, 0 to 1. */
    public double chance() {
        return range.chanceOf(wanted);
    }

    /** What it may be counted on for: worth times chance. */
    public double value() {
        return worth * chance();
    }

    /** Along the board (mm). */
    public double along() {
        return region.x2() - region.x1();
    }

    /** Across the board (mm). */
    public double across() {
        return region.y2() - region.y1();
    }
}
