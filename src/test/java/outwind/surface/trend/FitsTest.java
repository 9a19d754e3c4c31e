package outwind.surface.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.numeric.ReferenceTable;
import outwind.surface.ShapeOf;

class FitsTest {

    // Reference: R 4.2.2 lm on measured grids (src/test/resources/grids): coefficients, standard errors, and anova()
    // of the plane against the bilinear fit. Our fits run on centred, scaled coordinates and are reported on raw ones.
    @ParameterizedTest
    @ValueSource(strings = {"dem_coarse", "probe_plate_a", "probe_plate_b_tilted", "volcano_coarse"})
    void fitsOnRawCoordinatesMatchR(String name) {
        ReferenceTable grid = ReferenceTable.read("/grids/" + name + ".csv");
        ReferenceTable r = ReferenceTable.read("/grids/lm_R.csv");
        double[] x = grid.column("x");
        double[] y = grid.column("y");
        List<TrendFit> fits = Arrays.stream(TrendModel.values())
            .map(model -> TrendFit.of(model, x, y, grid.column("z"), greatest(x), greatest(y)))
            .toList();

        String[] models = {"plane", "bilinear", "quadratic"};
        for (int m = 0; m < models.length; m++) {
            TrendFit fit = fits.get(m);
            assertEquals(fit.model().terms(), fit.terms());
            for (int j = 0; j < fit.terms().size(); j++) {
                String letter = "abcdef".substring(j, j + 1);
                double error = r.value(name, models[m], "se_" + letter);
                assertEquals(r.value(name, models[m], letter), fit.fit().coefficients()[j], 1e-8 * error);
                assertEquals(error, fit.fit().standardErrors().orElseThrow()[j], 1e-8 * error);
            }
        }
        NestedTest twist = NestedTest.of(fits.get(0), fits.get(1)).orElseThrow();
        double f = r.value(name, "plane_vs_bilinear", "F");
        double p = r.value(name, "plane_vs_bilinear", "p");
        assertEquals(f, twist.f(), 1e-8 * f);
        assertEquals(p, twist.probability(), 1e-7 * p);
    }

    // Readings of an exact plane differ from it by rounding alone, which an F-test would judge like any noise: 15 of a
    // thousand such boards were said to be twisted.
    @Test
    void roundingOfAnExactPlaneIsNoTwist() {
        SplittableRandom random = new SplittableRandom(20260202);
        for (int trial = 0; trial < 300; trial++) {
            double height = random.nextInt(-30_000, 30_000) / 1e4;
            double rise = random.nextInt(-100, 100) / 1e4;
            double across = random.nextInt(-100, 100) / 1e4;

            Fits fits = Fits.of(ShapeOf.board().read(5, 3, (x, y) -> height + rise * x + across * y));

            assertEquals(1, fits.twist().orElseThrow().probability(), 1e-6, "case " + trial);
            assertEquals(1, fits.curve().orElseThrow().probability(), 1e-6, "case " + trial);
        }
    }

    // Closed form: with two extra terms P(F ≥ f) = (1 + 2f/r)^(−r/2), which 1 less the lower tail gives as zero here.
    @Test
    void aBowFarBeyondTheNoiseIsToldToTheLastDigit() {
        SplittableRandom random = new SplittableRandom(20260203);
        ShapeOf shape = ShapeOf.board();

        NestedTest curve = Fits.of(shape.read(9, 5, (x, y) -> shape.bow(20).applyAsDouble(x, y)
            + random.nextGaussian(0, 0.01))).curve().orElseThrow();

        double expected = Math.pow(1 + 2 * curve.f() / curve.degreesOfFreedom(), -curve.degreesOfFreedom() / 2.0);
        assertEquals(expected, curve.probability(), 1e-9 * expected);
        assertTrue(curve.probability() > 0 && curve.probability() < 1e-30);
    }

    private static double greatest(double[] values) {
        return Arrays.stream(values).max().orElseThrow();
    }

    // Closed form: twist = c_xy·L·W, bow = c_xx·L²/4, cup = c_yy·W²/4 of a face made of known parts.
    @Test
    void twistBowAndCupOfAKnownFaceComeBack() {
        ShapeOf shape = ShapeOf.board();
        Board board = shape.read(5, 3, (x, y) -> 0.3 + 0.001 * x + shape.twist(1.5).applyAsDouble(x, y)
            + shape.bow(-2).applyAsDouble(x, y) + shape.cup(0.7).applyAsDouble(x, y));

        Warp warp = Warp.of(board, Fits.of(board));

        assertEquals(6, warp.twist().orElseThrow().value(), 1e-10);
        assertEquals(-2, warp.bow().orElseThrow().value(), 1e-10);
        assertEquals(0.7, warp.cup().orElseThrow().value(), 1e-10);
    }

    @Test
    void noiseAloneIsCalledRealInOneBoardOfTwenty() {
        SplittableRandom random = new SplittableRandom(20260201);
        int real = 0;
        int boards = 2000;
        for (int trial = 0; trial < boards; trial++) {
            Board board = ShapeOf.board().read(5, 3, (x, y) -> random.nextGaussian(0, 0.08));
            real += Warp.of(board, Fits.of(board)).twist().orElseThrow().isReal() ? 1 : 0;
        }
        // Binomial(2000, 0.05): standard deviation 0.0049; four of them.
        assertEquals(0.05, real / (double) boards, 0.02);
    }

    @Test
    void fourCornersShowTwistButNoBowOrCup() {
        ShapeOf shape = ShapeOf.board();
        Board board = shape.read(2, 2, shape.twist(2));

        Warp warp = Warp.of(board, Fits.of(board));

        assertEquals(8, warp.twist().orElseThrow().value(), 1e-10);
        assertTrue(warp.twist().orElseThrow().standardError().isEmpty());
        assertFalse(warp.twist().orElseThrow().isReal());
        assertEquals(Optional.empty(), warp.bow());
        assertEquals(Optional.empty(), warp.cup());
    }

    @Test
    void oneRowShowsBowButNoTwistOrCup() {
        ShapeOf shape = ShapeOf.board();
        Board board = shape.read(5, 1, shape.bow(3));

        Fits fits = Fits.of(board);
        Warp warp = Warp.of(board, fits);

        assertEquals(List.of(Term.CONSTANT, Term.X, Term.XX), fits.curved().terms());
        assertEquals(3, warp.bow().orElseThrow().value(), 1e-10);
        assertEquals(Optional.empty(), warp.twist());
        assertEquals(Optional.empty(), warp.cup());
    }

    @Test
    void threeReadingsInARowDoNotFixAPlane() {
        Board board = ShapeOf.board().read(3, 1, (x, y) -> 0.01 * x);

        assertEquals(List.of(Term.CONSTANT, Term.X), Fits.of(board).plane().terms());
    }

    @Test
    void repeatabilityJudgesAFitThatUsesEveryReading() {
        Board corners = ShapeOf.board().read(2, 2, ShapeOf.board().twist(2));
        Board board = new Board(corners.name(), Units.MILLIMETRES, 900, 180, OptionalDouble.of(30), Optional.empty(),
            OptionalDouble.of(0.1), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Trim.NONE,
            Underside.ALIKE, Optional.empty(), List.of(), corners.readings(), List.of(), List.of(), Optional.empty(),
            true);

        Warp.Amount twist = Warp.of(board, Fits.of(board)).twist().orElseThrow();

        // Twist over the corners is z₁ − z₂ + z₃ − z₄: four readings, so √4 times the error of one.
        assertEquals(0.2, twist.standardError().orElseThrow(), 1e-12);
        assertTrue(twist.isReal());
    }

    // Identity: the studentised residual is the reading less what the fit of all others predicts, over the standard
    // error of that difference, s₍ᵢ₎·√(1 + f'(X'X)⁻¹f).
    @Test
    void studentisedResidualIsThatOfTheOtherReadings() {
        SplittableRandom random = new SplittableRandom(20260202);
        Board board = ShapeOf.board().read(4, 3, (x, y) -> 0.001 * x + random.nextGaussian(0, 0.1));
        TrendFit all = Fits.of(board).plane();

        for (int i = 0; i < 12; i++) {
            var left = board.readings().get(i);
            TrendFit rest = Fits.of(board.without(left)).plane();
            double[] f = {1, left.x(), left.y()};
            double spread = 1;
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < 3; k++) {
                    spread += f[j] * rest.fit().unscaledCovariance()[j][k] * f[k];
                }
            }
            double expected = (left.z() - rest.at(left.x(), left.y()))
                / (rest.fit().residualStandardDeviation().orElseThrow() * Math.sqrt(spread));

            assertEquals(expected, all.studentised(i, left.x(), left.y()).orElseThrow(), 1e-9 * (1
                + Math.abs(expected)));
        }
    }

    @Test
    void aFitWithoutASpareReadingHasNoStudentisedResidual() {
        TrendFit plane = Fits.of(ShapeOf.board().read(2, 2, ShapeOf.board().twist(1))).plane();

        assertTrue(plane.studentised(0, 0, 0).isEmpty());
    }
}
