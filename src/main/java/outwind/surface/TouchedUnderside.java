package outwind.surface;

import java.util.List;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;
import outwind.numeric.LeastSquares;
import outwind.surface.field.KrigedField;
import outwind.surface.field.Observations;
import outwind.surface.field.Prior;
import outwind.surface.field.Viewpoint;
import outwind.surface.trend.Scaling;
import outwind.surface.trend.TrendModel;

/**
 * An underside that was touched off as well, with the board turned over.
 *
 * <pre>
 *   turned along:        (x, y) on face B is (x, W − y) on face A
 *   turned end over end: (x, y) on face B is (L − x, y) on face A
 *   underside(x, y) = −zB + a + b·x + c·y
 * </pre>
 * Height and tilt a, b, c are not in the readings, because the board lay otherwise when face B was touched. They come
 * from the caliper readings, by least squares of top − thickness − (−zB). For a draw the calipers are drawn again too.
 */
final class TouchedUnderside implements UndersideShape {

    private final KrigedField mirrored;
    private final List<CaliperReading> calipers;
    private final Scaling scaling;
    private final double[] likelyPlane;

    private TouchedUnderside(KrigedField mirrored, List<CaliperReading> calipers, Scaling scaling, TopFace top) {
        this.mirrored = mirrored;
        this.calipers = calipers;
        this.scaling = scaling;
        double[] gaps = calipers.stream()
            .mapToDouble(c -> top.mean(c.x(), c.y()) - c.thickness() - mirrored.mean(c.x(), c.y())).toArray();
        this.likelyPlane = plane(gaps);
    }

    /**
     * @param board with readings on face B, how it was turned, and caliper readings that tie the faces
     * @param top   face A
     */
    static TouchedUnderside of(Board board, TopFace top, Viewpoint seen) {
        List<Reading> readings = board.readingsOf(Face.B);
        Turned turned = board.turned().orElseThrow();
        ReadingNoise noise = ReadingNoise.of(board, readings);
        KrigedField mirrored = KrigedField.of(Observations.of(
            readings.stream().mapToDouble(r -> turned.alongFaceA(r.x(), board.length())).toArray(),
            readings.stream().mapToDouble(r -> turned.acrossFaceA(r.y(), board.width())).toArray(),
            readings.stream().mapToDouble(r -> -r.z()).toArray(), noise.deviation(), board.length(), board.width()),
            TrendModel.CURVED, Prior.FACE, noise.factors(), seen);
        return new TouchedUnderside(mirrored, board.calipers(), Scaling.ofBoard(board.length(), board.width()), top);
    }

    /** Coefficients of 1, u, v through the gaps at the calipers, by least squares. */
    private double[] plane(double[] gaps) {
        double[][] design = new double[gaps.length][];
        for (int i = 0; i < gaps.length; i++) {
            design[i] = new double[] {1, scaling.u(calipers.get(i).x()), scaling.v(calipers.get(i).y())};
        }
        return LeastSquares.fit(design, gaps).coefficients();
    }

    private double planeAt(double[] plane, double x, double y) {
        return plane[0] + plane[1] * scaling.u(x) + plane[2] * scaling.v(y);
    }

    @Override
    public double at(double x, double y, double top) {
        return mirrored.mean(x, y) + planeAt(likelyPlane, x, y);
    }

    @Override
    public double[][] anchors() {
        return new double[][] {calipers.stream().mapToDouble(CaliperReading::x).toArray(),
            calipers.stream().mapToDouble(CaliperReading::y).toArray()};
    }

    @Override
    public double[][] draws(double[] x, double[] y, double[][] tops, SplittableRandom random) {
        double[][] draws = mirrored.draws(x, y, tops.length, random);
        int first = x.length - calipers.size();
        for (int d = 0; d < draws.length; d++) {
            double[] gaps = new double[calipers.size()];
            for (int i = 0; i < gaps.length; i++) {
                gaps[i] = tops[d][first + i] - calipers.get(i).thickness() + random.nextGaussian(0, CaliperReading.DEVIATION)
                    - draws[d][first + i];
            }
            double[] plane = plane(gaps);
            for (int i = 0; i < x.length; i++) {
                draws[d][i] += planeAt(plane, x[i], y[i]);
            }
        }
        return draws;
    }
}
