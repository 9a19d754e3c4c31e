package outwind.numeric.plane;

import java.util.Arrays;
import java.util.BitSet;

/** Those of the upper or of the lower points that the exchange looks at: all of them, or a choice that grows. */
final class WorkingSet {

    /** Steps through the points evenly and in step with no grid: 2³² over the golden ratio. */
    private static final long GOLDEN = 2_654_435_769L;

    private final Points all;
    private final boolean whole;
    private final BitSet chosen = new BitSet();
    private int[] index = {};
    private double[] x;
    private double[] y;
    private double[] z;
    private int size;

    private WorkingSet(Points all, boolean whole) {
        this.all = all;
        this.whole = whole;
        this.x = all.x();
        this.y = all.y();
        this.z = all.z();
        this.size = all.size();
    }

    /** All points if they are few, else a sample of them. */
    static WorkingSet of(Points all, Portions portions) {
        if (all.size() <= portions.together()) {
            return new WorkingSet(all, true);
        }
        WorkingSet set = new WorkingSet(all, false);
        set.size = 0;
        set.makeRoomFor(2 * portions.sample());
        for (long k = 0; k < portions.sample(); k++) {
            set.add((int) ((k * GOLDEN & 0xFFFF_FFFFL) * all.size() >>> 32));
        }
        return set;
    }

    /** True if nothing can ever be added. */
    boolean isWhole() {
        return whole;
    }

    /** Number of points looked at. */
    int size() {
        return size;
    }

    double x(int k) {
        return x[k];
    }

    double y(int k) {
        return y[k];
    }

    double z(int k) {
        return z[k];
    }

    /** Where the k-th point looked at stands among all. */
    int index(int k) {
        return whole ? k : index[k];
    }

    /** Where the point stands among those looked at; adds it if it is new. */
    int placeOf(int i) {
        if (whole) {
            return i;
        }
        if (add(i)) {
            return size - 1;
        }
        int k = 0;
        while (index[k] != i) {
            k++;
        }
        return k;
    }

    /** True if the point was new. */
    boolean add(int i) {
        if (whole || chosen.get(i)) {
            return false;
        }
        if (size == index.length) {
            makeRoomFor(2 * size);
        }
        chosen.set(i);
        index[size] = i;
        x[size] = all.x()[i];
        y[size] = all.y()[i];
        z[size] = all.z()[i];
        size++;
        return true;
    }

    private void makeRoomFor(int most) {
        index = Arrays.copyOf(index, most);
        x = Arrays.copyOf(x, most);
        y = Arrays.copyOf(y, most);
        z = Arrays.copyOf(z, most);
    }

    /** How far the k-th point looked at lies above the plane, or below it where {@code sign} is −1. */
    double beyond(int k, double sign, double slopeX, double slopeY, double height) {
        return sign * (z[k] - (slopeX * x[k] + slopeY * y[k] + height));
    }

    /** The point looked at that lies furthest above the plane, or below it where {@code sign} is −1. */
    int furthest(double sign, double slopeX, double slopeY, double height) {
        int furthest = 0;
        double worst = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < size; k++) {
            double beyond = beyond(k, sign, slopeX, slopeY, height);
            if (beyond > worst) {
                worst = beyond;
                furthest = k;
            }
        }
        return furthest;
    }
}
