package outwind.scan.find;

import java.util.Optional;
import java.util.OptionalDouble;
import outwind.numeric.plane.Plane;

/**
 * How a face is laid square to the axes, its corner at the origin.
 *
 * @param angle  that it lay turned by (radians); zero where nothing is moved
 * @param shiftX what is added along x after turning it back (mm); likewise {@code shiftY}
 * @param length of the board (mm), stated or else found
 * @param width  likewise
 * @param found  the outline, if one had to be sought
 */
record Alignment(double angle, double shiftX, double shiftY, double length, double width,
        Optional<Outline> found) {

    /** A point so far beyond a side may still be of the board (mm): the noise of a scanner at an edge. */
    private static final double EDGE = 1;

    /** Share of the face that may lie further out, if the scan is still to be in the board's own axes. */
    private static final double FEW = 0.005;

    /**
     * Nothing is moved if the face lies from 0 to the stated sizes already. Else it is turned back by its outline and
     * laid about the middle of the board's rectangle.
     *
     * @param x      places on the face (mm), length n; likewise {@code y}
     * @param length as stated (mm)
     * @param width  as stated (mm)
     */
    static Alignment of(double[] x, double[] y, OptionalDouble length, OptionalDouble width) {
        if (length.isPresent() && width.isPresent() && lies(x, y, length.getAsDouble(), width.getAsDouble())) {
            return new Alignment(0, 0, 0, length.getAsDouble(), width.getAsDouble(), Optional.empty());
        }
        Outline outline = Outline.of(x, y);
        // A board stated to be wider than long is laid so.
        if (length.isPresent() && width.isPresent() && length.getAsDouble() < width.getAsDouble()) {
            outline = outline.endwise();
        }
        double along = length.orElse(outline.length());
        double across = width.orElse(outline.width());
        return new Alignment(outline.angle(), (along - outline.fromX() - outline.toX()) / 2,
            (across - outline.fromY() - outline.toY()) / 2, along, across, Optional.of(outline));
    }

    private static boolean lies(double[] x, double[] y, double length, double width) {
        int beyond = 0;
        for (int i = 0; i < x.length; i++) {
            boolean in = x[i] >= -EDGE && x[i] <= length + EDGE && y[i] >= -EDGE && y[i] <= width + EDGE;
            beyond += in ? 0 : 1;
        }
        return beyond <= FEW * x.length;
    }

    Placement placement() {
        return Placement.turnedBack(angle, shiftX, shiftY);
    }

    /** A plane of the face before it was moved, in coordinates after the move. */
    Plane moved(Plane plane) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double slopeX = cos * plane.slopeX() + sin * plane.slopeY();
        double slopeY = cos * plane.slopeY() - sin * plane.slopeX();
        return new Plane(plane.height() - slopeX * shiftX - slopeY * shiftY, slopeX, slopeY);
    }
}
