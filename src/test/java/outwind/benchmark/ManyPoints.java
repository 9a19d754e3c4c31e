package outwind.benchmark;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import outwind.numeric.LeastSquares;
import outwind.numeric.LinearFit;
import outwind.numeric.plane.WidestGap;
import outwind.numeric.plane.Zone;

/**
 * What planes over many points cost, beside reading the points once.
 *
 * <p>Run by {@code mvn -q clean verify -P jmh -DskipTests}; one kind or size by adding
 * {@code -Djmh.args="ManyPoints -p kind=CAP -p points=1000000"}.
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx3g")
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class ManyPoints {

    /** Points in memory. */
    @State(Scope.Benchmark)
    public static class Points {

        @Param({"10000", "100000", "1000000", "10000000"})
        private int points;

        @Param("WARPED")
        private PointCloud.Kind kind;

        private double[] x;
        private double[] y;
        private double[] z;
        private double[] under;

        @Setup
        public void make() {
            PointCloud cloud = PointCloud.of(kind, points);
            x = cloud.x();
            y = cloud.y();
            z = cloud.z();
            // Sawn a little wedged, so that slab and zone are two questions.
            under = new double[points];
            Arrays.setAll(under, i -> z[i] * 0.9 - 25 + x[i] / 4000);
        }
    }

    /** The same as a design for least squares, which is not made for more. */
    @State(Scope.Benchmark)
    public static class Design {

        @Param({"10000", "100000"})
        private int points;

        private double[][] rows;
        private double[] z;

        @Setup
        public void make() {
            PointCloud cloud = PointCloud.of(PointCloud.Kind.WARPED, points);
            z = cloud.z();
            rows = new double[points][];
            Arrays.setAll(rows, i -> new double[] {1, cloud.x()[i], cloud.y()[i]});
        }
    }

    @Benchmark
    public double sumOfThreeArrays(Points p) {
        return PointCloud.sum(p.x, p.y, p.z);
    }

    @Benchmark
    public Zone minimumZone(Points p) {
        return WidestGap.minimumZone(p.x, p.y, p.z);
    }

    @Benchmark
    public double thickestSlab(Points p) {
        return WidestGap.thickestSlab(p.x, p.y, p.z, p.under).width();
    }

    @Benchmark
    public LinearFit leastSquaresPlane(Design d) {
        return LeastSquares.fit(d.rows, d.z);
    }
}
