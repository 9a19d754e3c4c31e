package outwind.scan.find;

import java.util.SplittableRandom;
import outwind.board.PointCloud;

/** Some of a scan's points, for questions that do not take all of them. */
final class Sample {

    /** Enough that a thousandth of them is still a crowd. */
    private static final int MOST = 30_000;

    private Sample() { }

    /**
     * One point out of each of as many stretches of the file as are wanted, at a place in the stretch that chance
     * picks: a fixed step could fall in with the rows of a scan. The seed is fixed, and what is picked depends on the
     * order of the points alone, so that a scan that was turned gives the same points.
     */
    static PointCloud of(PointCloud points, Placement placement) {
        int n = points.size();
        int count = Math.min(n, MOST);
        SplittableRandom random = new SplittableRandom(1);
        double[] x = new double[count];
        double[] y = new double[count];
        double[] z = new double[count];
        for (int k = 0; k < count; k++) {
            int from = (int) ((long) k * n / count);
            int to = (int) ((long) (k + 1) * n / count);
            int i = from + random.nextInt(to - from);
            double px = points.x()[i];
            double py = points.y()[i];
            double pz = points.z()[i];
            x[k] = placement.x(px, py, pz);
            y[k] = placement.y(px, py, pz);
            z[k] = placement.z(px, py, pz);
        }
        return new PointCloud(x, y, z);
    }
}
