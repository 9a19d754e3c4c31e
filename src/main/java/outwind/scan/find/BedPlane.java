package outwind.scan.find;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import outwind.board.PointCloud;
import outwind.numeric.plane.Plane;

/**
 * The machine's bed, where a scan holds it: the lowest plane that many points lie on, with a step up to the board.
 *
 * <p>Planes through three points picked at random are tried; under a plane may lie next to nothing, and of those the
 * one with the most points on it is taken and refined. It is the bed only if the wood begins well above it: a face
 * alone has no such step, however warped.
 *
 * <p>Source: M. A. Fischler and R. C. Bolles, Communications of the ACM 24 (1981) 381–395 (planes by random triples);
 * refined as {@link TrimmedPlane}.
 *
 * @param plane the bed, in the frame of the points
 * @param clear height above it from which on points belong to the board or stand on it (mm)
 */
record BedPlane(Plane plane, double clear) {

    /** With a bed that a seventh of the points lie on, about 23 of these triples lie on it. */
    private static final int TRIALS = 8_000;

    /** Points that each plane is tried on. */
    private static final int TRIED_ON = 1_500;

    /** A bed is flat, and a scan good, to less than this (mm). */
    private static final double FLAT = 0.6;

    /** Slots, chips and stray points: what may lie under a bed, as a share of all points. */
    private static final double MOST_BELOW = 0.05;

    /** Less of the scan than this is no bed; more than this must stand above it. */
    private static final double LEAST_BED = 0.03;
    private static final double LEAST_BOARD = 0.2;

    /** The step up to the board (mm), and the share of all points that one mm of it may hold: the board's sides. */
    private static final int STEP = 4;
    private static final double SIDES = 0.005;

    /** A bed steeper than this is not one that a board lies on. */
    private static final double STEEPEST = 0.6;

    /** The bed, if the points hold one. */
    static Optional<BedPlane> in(PointCloud points) {
        Optional<Plane> best = lowestPlane(points);
        if (best.isEmpty()) {
            return Optional.empty();
        }
        Plane plane = TrimmedPlane.near(points, best.get(), FLAT);
        double[] above = new double[points.size()];
        for (int i = 0; i < above.length; i++) {
            above[i] = points.z()[i] - plane.at(points.x()[i], points.y()[i]);
        }
        Arrays.sort(above);
        return stepAbove(above).map(clear -> new BedPlane(plane, clear));
    }

    private static Optional<Plane> lowestPlane(PointCloud points) {
        SplittableRandom random = new SplittableRandom(1);
        int n = points.size();
        int[] tried = random.ints(Math.min(n, TRIED_ON), 0, n).toArray();
        Plane best = null;
        int most = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            Plane plane = through(points, random.nextInt(n), random.nextInt(n), random.nextInt(n));
            if (plane == null) {
                continue;
            }
            int on = 0;
            int below = 0;
            for (int i : tried) {
                double above = points.z()[i] - plane.at(points.x()[i], points.y()[i]);
                on += Math.abs(above) <= FLAT ? 1 : 0;
                below += above < -FLAT ? 1 : 0;
            }
            if (on > most && below <= MOST_BELOW * tried.length) {
                most = on;
                best = plane;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The plane through three points; null if they lie in a line, seen from above, or it is too steep. */
    private static Plane through(PointCloud points, int i, int j, int k) {
        double ax = points.x()[j] - points.x()[i];
        double ay = points.y()[j] - points.y()[i];
        double az = points.z()[j] - points.z()[i];
        double bx = points.x()[k] - points.x()[i];
        double by = points.y()[k] - points.y()[i];
        double bz = points.z()[k] - points.z()[i];
        double area = ax * by - bx * ay;
        // Three points at one place have no area either.
        if (Math.abs(area) <= 0.05 * (ax * ax + ay * ay + bx * bx + by * by)) {
            return null;
        }
        double slopeX = (az * by - bz * ay) / area;
        double slopeY = (ax * bz - bx * az) / area;
        return Math.hypot(slopeX, slopeY) > STEEPEST ? null
            : new Plane(points.z()[i] - slopeX * points.x()[i] - slopeY * points.y()[i], slopeX, slopeY);
    }

    /** Height at which the board begins, if there is a step up to it. */
    private static Optional<Double> stepAbove(double[] sorted) {
        double onBed = below(sorted, FLAT) - below(sorted, -FLAT);
        double height = FLAT;
        double clear = FLAT;
        while (height < sorted[sorted.length - 1]) {
            boolean hollow = below(sorted, height + 1) - below(sorted, height) <= SIDES;
            if (!hollow) {
                clear = height + 1;
            } else if (height + 1 - clear >= STEP) {
                double under = below(sorted, clear) - below(sorted, -FLAT);
                // Where much lies between the flat part and the step, it is a warped face and no bed.
                boolean isBed = onBed >= LEAST_BED && under - onBed < 0.3 * onBed;
                return isBed && 1 - below(sorted, height + 1) >= LEAST_BOARD ? Optional.of(clear + STEP / 2.0)
                    : Optional.empty();
            }
            height++;
        }
        return Optional.empty();
    }

    /** Share of the heights below one. */
    private static double below(double[] sorted, double height) {
        int at = Arrays.binarySearch(sorted, height);
        return (at < 0 ? -at - 1 : at) / (double) sorted.length;
    }
}
