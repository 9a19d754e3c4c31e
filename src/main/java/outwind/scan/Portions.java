package outwind.scan;

import java.util.Arrays;
import outwind.board.PointCloud;

/**
 * Points written by several threads into one set of arrays, each portion from its own place on. What a portion leaves
 * free is closed at the end, so no point is ever held twice but where some were left out.
 */
final class Portions {

    private double[] x;
    private double[] y;
    private double[] z;
    private final int[] from;
    private final int[] count;

    /**
     * @param from where each portion begins, ascending
     * @param room for all of them
     */
    Portions(int[] from, int room) {
        this.from = from;
        this.count = new int[from.length];
        this.x = new double[room];
        this.y = new double[room];
        this.z = new double[room];
    }

    /** Writes the next point of a portion; only one thread may write to each. */
    void add(int portion, double atX, double atY, double atZ) {
        int i = from[portion] + count[portion]++;
        x[i] = atX;
        y[i] = atY;
        z[i] = atZ;
    }

    PointCloud closed() {
        int size = 0;
        for (int portion = 0; portion < from.length; portion++) {
            move(x, portion, size);
            move(y, portion, size);
            move(z, portion, size);
            size += count[portion];
        }
        if (size < x.length) {
            x = Arrays.copyOf(x, size);
            y = Arrays.copyOf(y, size);
            z = Arrays.copyOf(z, size);
        }
        return new PointCloud(x, y, z);
    }

    private void move(double[] values, int portion, int to) {
        if (from[portion] != to) {
            System.arraycopy(values, from[portion], values, to, count[portion]);
        }
    }
}
