package outwind.numeric.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrthotropicPlateTest {

    // Reference: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, table 23: simply
    // supported rectangular plate a × b, load P at the centre, w = α·P·a²/D, independent of Poisson's ratio.
    // Tolerance 1.5 %: 16 × 16 elements leave 0.6 % (square) to 1.3 % (b/a = 3), all on the soft side.
    @ParameterizedTest
    @CsvSource({"square, 1, 0.01160", "b/a 1.2, 1.2, 0.01353", "b/a 1.4, 1.4, 0.01484", "b/a 1.6, 1.6, 0.01570",
        "b/a 1.8, 1.8, 0.01620", "b/a 2, 2, 0.01651", "b/a 3, 3, 0.01690"})
    void centralLoadOnASimplySupportedPlateMatchesTimoshenko(String plate, double ratio, double alpha) {
        double computed = simplySupportedCentre(1, ratio, isotropic(0.3), 16, 16);

        assertEquals(alpha, computed, 0.015 * alpha, plate);
    }

    // Poisson's ratio does not enter w of a simply supported polygon (same book, from memory).
    @Test
    void poissonsRatioDoesNotMatterUnderSimpleSupport() {
        assertEquals(simplySupportedCentre(1, 1, isotropic(0), 16, 16),
            simplySupportedCentre(1, 1, isotropic(0.3), 16, 16), 0.005 * 0.01160);
    }

    // Reference: table 23 again, 0.01160 to four digits (Navier's series gives 0.0116008).
    // Measured: 6.3 %, 2.0 % and 0.6 % on 4, 8 and 16 elements a side.
    @Test
    void errorShrinksThreefoldWithHalfTheMesh() {
        double coarse = simplySupportedCentre(1, 1, isotropic(0.3), 4, 4) / 0.0116008 - 1;
        double middle = simplySupportedCentre(1, 1, isotropic(0.3), 8, 8) / 0.0116008 - 1;
        double fine = simplySupportedCentre(1, 1, isotropic(0.3), 16, 16) / 0.0116008 - 1;

        assertTrue(coarse > middle && middle > fine && fine > 0, coarse + " " + middle + " " + fine);
        assertTrue(coarse / fine > 9, coarse + " " + middle + " " + fine);
    }

    // Navier's double sine series for an orthotropic plate, same book, chapter 11, summed here to 199 × 199 terms:
    // w = 4P/(π⁴ab) Σ sin²(mπ/2)·sin²(nπ/2) / (Dx·m⁴/a⁴ + 2H·m²n²/a²b² + Dy·n⁴/b⁴), H = D1 + 2·Dxy.
    // Rigidities as of wood 25 mm thick. Tolerance 2 %: 24 × 6 elements, about as used for boards, leave 1.2 %.
    @Test
    void orthotropicPlateMatchesNaviersSeries() {
        Rigidity wood = new Rigidity(11.9e6, 0.595e6, 0.27e6, 0.70e6);
        double a = 600;
        double b = 200;
        double series = 0;
        for (int m = 1; m < 400; m += 2) {
            for (int n = 1; n < 400; n += 2) {
                double k = m / a * (m / a);
                double l = n / b * (n / b);
                series += 1 / (wood.dx() * k * k + 2 * (wood.d1() + 2 * wood.dxy()) * k * l + wood.dy() * l * l);
            }
        }
        double expected = 4 / (Math.pow(Math.PI, 4) * a * b) * series;

        assertEquals(expected, simplySupportedCentre(a, b, wood, 24, 6), 0.02 * expected);
    }

    // Beam theory: P·L³/48EI halfway between two supports. A strip without Poisson's ratio, so wide across that it
    // cannot bend that way, is a beam; tolerance for what its stiffness across leaves.
    @Test
    void stripOnTwoLinesIsABeam() {
        Rigidity strip = new Rigidity(1000, 1e7, 0, 1e6);
        Compliance plate = OrthotropicPlate.compliance(even(100, 8), even(10, 2), strip);

        double w = deflection(plate, node -> plate.x()[node] % 100 == 0, nearest(plate, 50, 5));

        assertEquals(100.0 * 100 * 100 / (48 * 1000 * 10), w, 1e-3 * w);
    }

    // Beam theory: load on an overhang c beyond a span s, w = P·c²·(s + c)/3EI; as s goes to zero, the cantilever's
    // P·c³/3EI. The second case is a span of a thousandth of the overhang.
    @ParameterizedTest
    @CsvSource({"overhang beside its span, 60, 40", "all but clamped, 0.1, 100"})
    void overhangIsABeam(String beam, double span, double overhang) {
        Rigidity strip = new Rigidity(1000, 1e7, 0, 1e6);
        double[] x = new double[6];
        for (int i = 1; i < 6; i++) {
            x[i] = span + overhang * (i - 1) / 4;
        }
        Compliance plate = OrthotropicPlate.compliance(x, even(10, 2), strip);

        double w = deflection(plate, node -> plate.x()[node] <= span, nearest(plate, span + overhang, 5));

        assertEquals(overhang * overhang * (span + overhang) / (3 * 1000 * 10), w, 1e-3 * w, beam);
    }

    // Statics: a stiff plate on three soft springs at its corners; a force shares out by the lever rule. Half of it
    // goes to each corner beside the middle of the edge x = 0, so that place sinks by softness/2.
    @Test
    void springsShareAForceByTheLeverRule() {
        Compliance plate = OrthotropicPlate.compliance(even(100, 2), even(50, 2), new Rigidity(1e9, 1e9, 0, 1e9))
            .onSprings(10);

        int middle = nearest(plate, 0, 25);

        assertEquals(5, plate.deflection()[middle][middle], 1e-4);
        assertEquals(0, plate.deflection()[middle][nearest(plate, 100, 0)], 1e-4);
        // The free corner depends on the three others by 1, 1 and −1; the middle of the plate by ½, ½ and 0.
        int free = nearest(plate, 100, 50);
        int centre = nearest(plate, 50, 25);
        assertEquals(10 * (1 + 1 + 1), plate.deflection()[free][free], 1e-4);
        assertEquals(10 * (0.5 + 0.5), plate.deflection()[free][centre], 1e-4);
        assertEquals(10 * (0.25 + 0.25), plate.deflection()[centre][centre], 1e-4);
    }

    @Test
    void linesThatDoNotRiseAreRefused() {
        Rigidity rigidity = isotropic(0.3);

        Exception refused = assertThrows(IllegalArgumentException.class,
            () -> OrthotropicPlate.compliance(new double[] {0, 2, 2}, even(1, 2), rigidity));

        assertEquals("lines of a mesh must start at 0 and rise, got [0.0, 2.0, 2.0]", refused.getMessage());
        for (double[] lines : new double[][] {{}, {0}, {1, 2}, {0, 2, 1}, {0, Double.POSITIVE_INFINITY}}) {
            assertThrows(IllegalArgumentException.class,
                () -> OrthotropicPlate.compliance(even(1, 2), lines, rigidity));
        }
    }

    // By definition: the three corners are held, so no force moves them and a force on them moves nothing.
    @Test
    void heldCornersNeitherMoveNorYield() {
        Compliance plate = OrthotropicPlate.compliance(even(60, 3), even(20, 2), isotropic(0.3));

        for (int node = 0; node < plate.size(); node++) {
            boolean held = plate.x()[node] == 0 && plate.y()[node] != 10
                || plate.x()[node] == 60 && plate.y()[node] == 0;
            assertEquals(!held, plate.deflection()[node][node] > 0, "node " + node);
            for (int other = 0; other < plate.size() && held; other++) {
                assertEquals(0, plate.deflection()[node][other], 1e-9);
                assertEquals(0, plate.deflection()[other][node], 1e-9);
            }
        }
    }

    // Closed form: one element bent by a force F at its free corner (a, b), the other three held, is a pure twist,
    // w = k·x·y, which the element holds exactly; F·w/2 = ½·4·Dxy·k²·a·b gives w = F·a·b/(4·Dxy).
    @Test
    void oneElementHeldAtThreeCornersIsTwistedByAForceOnTheFourth() {
        Compliance plate = OrthotropicPlate.compliance(even(60, 1), even(20, 1), new Rigidity(5000, 700, 90, 800));

        assertEquals(60 * 20 / (4.0 * 800), plate.deflection()[3][3], 1e-12);
    }

    private static Rigidity isotropic(double poisson) {
        return new Rigidity(1, 1, poisson, (1 - poisson) / 2);
    }

    private static double[] even(double length, int elements) {
        return IntStream.rangeClosed(0, elements).mapToDouble(i -> length * i / elements).toArray();
    }

    private static double simplySupportedCentre(double a, double b, Rigidity rigidity, int along, int across) {
        Compliance plate = OrthotropicPlate.compliance(even(a, along), even(b, across), rigidity);
        IntPredicate edge = node -> plate.x()[node] == 0 || plate.x()[node] == a || plate.y()[node] == 0
            || plate.y()[node] == b;
        return deflection(plate, edge, nearest(plate, a / 2, b / 2));
    }

    private static int nearest(Compliance plate, double x, double y) {
        return IntStream.range(0, plate.size()).boxed().min((p, q) -> Double.compare(
            Math.hypot(plate.x()[p] - x, plate.y()[p] - y), Math.hypot(plate.x()[q] - x, plate.y()[q] - y))).get();
    }

    /** Deflection under a unit force where it acts, the supported nodes held both ways. */
    private static double deflection(Compliance plate, IntPredicate supported, int at) {
        List<Integer> nodes = new ArrayList<>(IntStream.range(0, plate.size()).filter(supported).boxed().toList());
        int n = nodes.size();
        DMatrixRMaj system = new DMatrixRMaj(n + 3, n + 3);
        DMatrixRMaj right = new DMatrixRMaj(n + 3, 1);
        // Supports take −λ up, the force acts down: w = C·(e − λ) + plane = 0 at the supports, forces in balance.
        double[] force = plane(plate, at);
        for (int i = 0; i < n; i++) {
            double[] here = plane(plate, nodes.get(i));
            for (int j = 0; j < n; j++) {
                system.set(i, j, plate.deflection()[nodes.get(i)][nodes.get(j)]);
            }
            for (int k = 0; k < 3; k++) {
                system.set(i, n + k, -here[k]);
                system.set(n + k, i, here[k]);
                right.set(n + k, 0, force[k]);
            }
            right.set(i, 0, plate.deflection()[nodes.get(i)][at]);
        }
        DMatrixRMaj solution = new DMatrixRMaj(n + 3, 1);
        assertTrue(CommonOps_DDRM.solve(system, right, solution), Arrays.toString(force));
        double w = plate.deflection()[at][at];
        for (int i = 0; i < n; i++) {
            w -= plate.deflection()[at][nodes.get(i)] * solution.get(i, 0);
        }
        for (int k = 0; k < 3; k++) {
            w += force[k] * solution.get(n + k, 0);
        }
        return w;
    }

    private static double[] plane(Compliance plate, int node) {
        return new double[] {1, plate.x()[node] / plate.x()[plate.size() - 1],
            plate.y()[node] / plate.y()[plate.size() - 1]};
    }
}
