package outwind.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleSupplier;
import java.util.stream.Stream;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import outwind.numeric.plane.WidestGap;

/**
 * The minimum zone of points in a file, by this project and by general-purpose solvers for Java.
 *
 * <p>Run by {@code python3 src/test/python/side_by_side.py}, which makes the files and adds solvers for Python.
 * Arguments: files of n numbers x, then n y, then n z, 64-bit little-endian. Prints rows
 * {@code what, n, median ms, result}, with tabs between.
 */
public final class SideBySide {

    /** Points that the others can bear in reasonable time and memory. */
    private static final int MOST_FOR_OJALGO = 1_000;
    private static final int MOST_FOR_COMMONS_MATH = 10_000;

    private SideBySide() { }

    public static void main(String[] args) throws IOException {
        List<PointCloud> clouds = Stream.of(args).map(SideBySide::read).toList();
        for (PointCloud cloud : clouds) {
            int n = cloud.z().length;
            tell("sum", n, () -> PointCloud.sum(cloud.x(), cloud.y(), cloud.z()));
            tell("outwind", n, () -> WidestGap.minimumZone(cloud.x(), cloud.y(), cloud.z()).width());
            if (n <= MOST_FOR_COMMONS_MATH) {
                tell("commons-math", n, () -> byCommonsMath(cloud));
            }
            if (n <= MOST_FOR_OJALGO) {
                tell("ojAlgo", n, () -> byOjAlgo(cloud));
            }
        }
    }

    private static PointCloud read(String file) {
        try {
            byte[] bytes = Files.readAllBytes(Path.of(file));
            int n = bytes.length / 24;
            var numbers = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer();
            PointCloud cloud = new PointCloud(new double[n], new double[n], new double[n]);
            numbers.get(cloud.x()).get(cloud.y()).get(cloud.z());
            return cloud;
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + file, e);
        }
    }

    private static void tell(String what, int n, DoubleSupplier work) {
        medianOfTwoSeconds(work);
        System.out.printf(Locale.ROOT, "%s\t%d\t%.4f\t%.12g%n", what, n, medianOfTwoSeconds(work), work.getAsDouble());
    }

    /** Median (ms) of as many runs as two seconds hold, at least three. */
    private static double medianOfTwoSeconds(DoubleSupplier work) {
        double[] milliseconds = new double[100_000];
        int runs = 0;
        long begin = System.nanoTime();
        while (runs < 3 || runs < milliseconds.length && System.nanoTime() - begin < 2e9) {
            long start = System.nanoTime();
            if (Double.isNaN(work.getAsDouble())) {
                throw new IllegalStateException("not a number");
            }
            milliseconds[runs++] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(milliseconds, 0, runs);
        return milliseconds[runs / 2];
    }

    /** The dual: 4 rows and 2n columns, which a tableau bears better than 2n rows. */
    private static double byCommonsMath(PointCloud cloud) {
        int n = cloud.z().length;
        double[][] rows = new double[4][2 * n];
        double[] objective = new double[2 * n];
        for (int i = 0; i < n; i++) {
            double[] column = {cloud.x()[i] / 1200 - 1, cloud.y()[i] / 150 - 1};
            for (int k = 0; k < 2; k++) {
                rows[k][i] = column[k];
                rows[k][n + i] = -column[k];
                rows[2 + k][k * n + i] = 1;
            }
            objective[i] = cloud.z()[i];
            objective[n + i] = -cloud.z()[i];
        }
        List<LinearConstraint> constraints = Stream.of(0, 1, 2, 3)
            .map(k -> new LinearConstraint(rows[k], Relationship.EQ, k / 2)).toList();
        return new SimplexSolver().optimize(new MaxIter(10_000), new LinearObjectiveFunction(objective, 0),
            new LinearConstraintSet(constraints), GoalType.MAXIMIZE, new NonNegativeConstraint(true)).getValue();
    }

    private static double byOjAlgo(PointCloud cloud) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Variable a = model.newVariable("a").lower(-1e4).upper(1e4);
        Variable b = model.newVariable("b").lower(-1e4).upper(1e4);
        Variable c1 = model.newVariable("c1").lower(-1e6).upper(1e6).weight(1);
        Variable c2 = model.newVariable("c2").lower(-1e6).upper(1e6).weight(-1);
        for (int i = 0; i < cloud.z().length; i++) {
            double u = cloud.x()[i] / 1200 - 1;
            double v = cloud.y()[i] / 150 - 1;
            model.newExpression("over" + i).lower(cloud.z()[i]).set(a, u).set(b, v).set(c1, 1);
            model.newExpression("under" + i).upper(cloud.z()[i]).set(a, u).set(b, v).set(c2, 1);
        }
        Optimisation.Result result = model.minimise();
        return result.getState().isOptimal() ? result.getValue() : Double.NaN;
    }
}
