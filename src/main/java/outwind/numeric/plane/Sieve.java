package outwind.numeric.plane;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Finds, among many points, those on the wrong side of two parallel planes that move a little from call to call.
 *
 * <p>Points are kept in blocks, and of each block two bounds: no point of it is further above, none further below. A
 * plane that moves by da, db, dc carries the bound along:
 * <pre>
 *   bound ← bound + dc + |da|·halfX + |db|·halfY        (a, b slopes, c the height at the centre of all places)
 * </pre>
 * A block is read again only where a bound so carried does not show that all its points are on the right side. When
 * nothing is found, that is proven of every point, whether it was read or not. Blocks are shared out among the cores;
 * each writes only what is its own, so the answer does not depend on how many there are.
 */
final class Sieve {

    /** Blocks that one core takes at a time. */
    private static final int BUNDLE = 64;

    private final Points upper;
    private final Points lower;
    private final Axes axes;
    private final Heights heights;
    private final int block;
    private final int blocks;
    /** By how much, at most, the upper plane lies above a point of a block, and which point that is. */
    private final double[] above;
    private final int[] furthestAbove;
    /** By how much, at most, the lower plane lies below a point of a block, and which point that is. */
    private final double[] below;
    private final int[] furthestBelow;
    private int stride;
    private ParallelPlanes planes;

    Sieve(Points upper, Points lower, Axes axes, Heights heights, Portions portions) {
        this.upper = upper;
        this.lower = lower;
        this.axes = axes;
        this.heights = heights;
        this.block = portions.block();
        this.blocks = (Math.max(upper.size(), lower.size()) - 1) / block + 1;
        this.above = new double[blocks];
        this.furthestAbove = new int[blocks];
        this.below = new double[blocks];
        this.furthestBelow = new int[blocks];
        this.stride = portions.stride();
        Arrays.fill(above, Double.POSITIVE_INFINITY);
        Arrays.fill(below, Double.POSITIVE_INFINITY);
    }

    /**
     * Adds to the working sets the worst point of every block that has one on the wrong side. The first call looks at
     * some of the blocks only, which brings the planes near to where they will end before all blocks are read.
     *
     * @return false if there is none among all points
     */
    boolean addsTo(WorkingSet upperSeen, WorkingSet lowerSeen, Exchange exchange) {
        int step = stride;
        stride = 1;
        lookAlong(exchange.planes(), step);
        boolean found = false;
        for (int b = 0; b < blocks; b += step) {
            int i = furthestAbove[b];
            int j = furthestBelow[b];
            if (i >= 0 && exchange.isUnderUpper(upper.x()[i], upper.y()[i], upper.z()[i])) {
                found |= upperSeen.add(i);
            }
            if (j >= 0 && exchange.isOverLower(lower.x()[j], lower.y()[j], lower.z()[j])) {
                found |= lowerSeen.add(j);
            }
        }
        return found || step > 1;
    }

    private void lookAlong(ParallelPlanes next, int step) {
        ParallelPlanes last = planes == null ? next : planes;
        planes = next;
        double tilting = Math.abs(next.slopeX() - last.slopeX()) * axes.halfX()
            + Math.abs(next.slopeY() - last.slopeY()) * axes.halfY();
        // Half of the tolerance is left to rounding: of the bounds here, of the residuals below.
        double rounding = (next.tolerance() + last.tolerance()) / 8;
        double riseAbove = next.upper() - last.upper() + tilting + rounding;
        double riseBelow = last.lower() - next.lower() + tilting + rounding;
        double limit = next.tolerance() / 2;
        IntStream.rangeClosed(0, (blocks - 1) / BUNDLE).parallel().forEach(bundle -> {
            int end = Math.min(blocks, (bundle + 1) * BUNDLE);
            for (int b = bundle * BUNDLE; b < end; b++) {
                above[b] += riseAbove;
                below[b] += riseBelow;
                furthestAbove[b] = -1;
                furthestBelow[b] = -1;
                if (b % step == 0 && (above[b] > limit || below[b] > limit)) {
                    read(b);
                }
            }
        });
    }

    private void read(int b) {
        int from = b * block;
        if (upper.sharesPlacesWith(lower)) {
            readBoth(b, from, Math.min(from + block, upper.size()));
        } else {
            readUpper(b, from, Math.min(from + block, upper.size()));
            readLower(b, from, Math.min(from + block, lower.size()));
        }
    }

    /**
     * Both sets at the same places, read once. Here nearly all the time is spent: no call, no store, and two branches
     * that are hardly ever taken.
     */
    private void readBoth(int b, int from, int to) {
        double[] x = upper.x();
        double[] y = upper.y();
        double[] top = upper.z();
        double[] under = lower.z();
        double centreX = axes.centreX();
        double centreY = axes.centreY();
        double slopeX = planes.slopeX();
        double slopeY = planes.slopeY();
        double mostAbove = Double.NEGATIVE_INFINITY;
        double mostBelow = Double.NEGATIVE_INFINITY;
        int i = -1;
        int j = -1;
        for (int k = from; k < to; k++) {
            double rise = slopeX * (x[k] - centreX) + slopeY * (y[k] - centreY);
            double overTop = rise - top[k];
            double overUnder = under[k] - rise;
            if (overTop > mostAbove) {
                mostAbove = overTop;
                i = k;
            }
            if (overUnder > mostBelow) {
                mostBelow = overUnder;
                j = k;
            }
        }
        above[b] = mostAbove + planes.upper() + heights.middle();
        below[b] = mostBelow - planes.lower() - heights.middle();
        furthestAbove[b] = i;
        furthestBelow[b] = j;
    }

    private void readUpper(int b, int from, int to) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            double beyond = planes.slopeX() * (upper.x()[i] - axes.centreX())
                + planes.slopeY() * (upper.y()[i] - axes.centreY()) - upper.z()[i];
            if (beyond > most) {
                most = beyond;
                furthestAbove[b] = i;
            }
        }
        above[b] = most + planes.upper() + heights.middle();
    }

    private void readLower(int b, int from, int to) {
        double most = Double.NEGATIVE_INFINITY;
        for (int j = from; j < to; j++) {
            double beyond = lower.z()[j] - planes.slopeX() * (lower.x()[j] - axes.centreX())
                - planes.slopeY() * (lower.y()[j] - axes.centreY());
            if (beyond > most) {
                most = beyond;
                furthestBelow[b] = j;
            }
        }
        below[b] = most - planes.lower() - heights.middle();
    }
}
