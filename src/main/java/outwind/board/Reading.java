package outwind.board;

import java.util.Objects;

/**
 * One touch-off.
 *
 * @param x    place along the grain (mm)
 * @param y    place across (mm)
 * @param z    height (mm), positive up
 * @param face what was touched
 * @param note what the person wrote beside it; may be empty
 * @param line line of the file it came from, 1-based
 */
public record Reading(double x, double y, double z, Face face, String note, int line) {

    public Reading {
        Quantity.X.require(x);
        Quantity.Y.require(y);
        // What a person types is held to what a hand can touch; a height may also be computed from another zero.
        if (!Double.isFinite(z)) {
            throw new IllegalArgumentException("height must be finite, got " + z);
        }
        Objects.requireNonNull(face, "face");
        Objects.requireNonNull(note, "note");
    }

    /** This touch-off with another height (mm). */
    public Reading withHeight(double height) {
        return new Reading(x, y, height, face, note, line);
    }
}
