package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.numeric.plate.OrthotropicPlate;

class BoardMeshTest {

    /** 9000 and 450 MPa, 450 kg/m³. */
    private static final Stiffness WOOD = Stiffness.of(Optional.empty());

    private static BoardMesh mesh(double length, double width, double thickness, DoubleBinaryOperator gap) {
        return BoardMesh.of(length, width, thickness, WOOD, gap, (x, y) -> gap.applyAsDouble(x, y) < 0.05, Push.USUAL);
    }

    // Identity: the nodes share the weight of the board, 450 kg/m³ · 1.2 · 0.2 · 0.03 m³ · 9.80665 N/kg, and balance in
    // its middle.
    @Test
    void nodesShareTheWeightOfTheBoard() {
        BoardMesh mesh = mesh(1200, 200, 30, (x, y) -> 0);
        double weight = 450 * 1.2 * 0.2 * 0.03 * 9.80665;

        double sum = 0;
        double momentX = 0;
        double momentY = 0;
        for (int node = 0; node < mesh.weight().length; node++) {
            sum += mesh.weight()[node];
            momentX += mesh.weight()[node] * mesh.x()[mesh.lineAlong(node)];
            momentY += mesh.weight()[node] * mesh.y()[mesh.lineAcross(node)];
        }

        assertEquals(weight, sum, 1e-9);
        assertEquals(600 * weight, momentX, 1e-6);
        assertEquals(100 * weight, momentY, 1e-6);
        // A corner bears a quarter of the cell beside it, which is as wide as the inset.
        assertEquals(weight / (1200 * 200) * mesh.x()[1] * mesh.y()[1] / 4, mesh.weight()[0], 1e-12);
    }

    // Worked by hand on the limits given in the class. Long board: 40 mm, clear of the corner. Light board of 300 x 100
    // x 20 mm, 2.648 N: a push of 50 N tips it at 2.648·150/52.648 = 7.54 mm, half of which is under 5 mm, so the shims
    // lie under the corners. A board of 500 x 200 x 20 mm, 8.826 N: 8.826·250/58.826/2 = 18.75 mm. A stout block of 53
    // N: a tenth of its length.
    @ParameterizedTest
    @CsvSource({"long, 1200, 300, 40, 40", "light, 300, 100, 20, 0", "between, 500, 200, 20, 18.7537",
        "stout, 300, 400, 100, 30"})
    void outermostShimsLieClearOfTheCornersOfABoardThatDoesNotTip(String board, double length, double width,
            double thickness, double inset) {
        BoardMesh mesh = mesh(length, width, thickness, (x, y) -> 1);

        assertEquals(inset, mesh.x()[mesh.first()], 1e-3, board);
        assertEquals(length - inset, mesh.x()[mesh.x().length - 1 - mesh.first()], 1e-3, board);
    }

    @ParameterizedTest
    @CsvSource({"300, 100, 20", "1200, 300, 40", "2400, 200, 25"})
    void linesRunEvenlyFromEndToEndAndEdgeToEdge(double length, double width, double thickness) {
        BoardMesh mesh = mesh(length, width, thickness, (x, y) -> 1);
        int first = mesh.first();
        int last = mesh.x().length - 1 - first;

        assertEquals(0, mesh.x()[0]);
        assertEquals(length, mesh.x()[mesh.x().length - 1]);
        double element = (mesh.x()[last] - mesh.x()[first]) / (last - first);
        for (int i = first; i < last; i++) {
            assertEquals(element, mesh.x()[i + 1] - mesh.x()[i], 1e-9);
        }
        assertArrayEquals(IntStream.rangeClosed(0, 6).mapToDouble(j -> width * j / 6).toArray(), mesh.y(), 1e-12);
        // At least four elements to a span that beam theory allows, unless there are forty; never fewer than sixteen.
        assertTrue(last - first == 40 || element <= mesh.limit().along() / 4 + 1e-9, element + " mm");
        assertTrue(last - first == 16
            || (last - first - 1) * mesh.limit().along() / 4 < mesh.x()[last] - mesh.x()[first]);
        assertTrue(last - first >= 16 && last - first <= 40, last - first + " elements");
    }

    @Test
    void gapsBelongToTheirNodesAndAreNeverNegative() {
        BoardMesh mesh = mesh(1200, 200, 30, (x, y) -> 0.01 * x - 0.02 * y);

        for (int i = 0; i < mesh.x().length; i++) {
            for (int j = 0; j < mesh.y().length; j++) {
                int node = mesh.node(i, j);
                assertEquals(i, mesh.lineAlong(node));
                assertEquals(j, mesh.lineAcross(node));
                assertEquals(new Shim(mesh.x()[i], mesh.y()[j],
                    mesh.touches()[node] ? 0 : 0.01 * mesh.x()[i] - 0.02 * mesh.y()[j], mesh.touches()[node]),
                    mesh.support(node));
                assertEquals(0.01 * mesh.x()[i] - 0.02 * mesh.y()[j] < 0.05, mesh.touches()[node]);
            }
        }
    }

    @Test
    void theBedSupportsWhereTheBoardTouches() {
        BoardMesh mesh = mesh(1200, 200, 30, (x, y) -> x == 0 ? 0.049 : 0.05);

        assertEquals(IntStream.rangeClosed(0, BoardMesh.ACROSS).boxed().toList(), mesh.contacts());
        assertEquals(mesh.contacts().size(), new HashSet<>(mesh.contacts()).size());
    }

    // Worked by hand: of a board flat on the bed, every other line is left out along and across, but its rim is kept
    // wherever the line is; a line of contacts that stand alone along an end has only every other place left out.
    @Test
    void insideAPatchOfContactsEveryOtherLineCounts() {
        BoardMesh flat = mesh(1200, 200, 30, (x, y) -> 0);
        Set<Integer> counted = new HashSet<>(flat.countedContacts());
        int last = flat.x().length - 1;
        for (int i = 0; i <= last; i++) {
            for (int j = 0; j <= BoardMesh.ACROSS; j++) {
                boolean leftOut = i % 2 == 1 && i < last || j % 2 == 1;
                assertEquals(!leftOut, counted.contains(flat.node(i, j)), i + ", " + j);
            }
        }

        BoardMesh end = mesh(1200, 200, 30, (x, y) -> x == 0 ? 0 : 1);
        assertEquals(List.of(0, 2, 4, 6), end.countedContacts());

    }

    // A line that lies between two others only on one side carries the rim of its patch.
    @ParameterizedTest
    @CsvSource({"first two across, 0, 0, 0, 1", "second two across, 0, 0, 1, 2", "first two along, 0, 1, 2, 2",
        "second two along, 1, 2, 2, 2", "one alone, 3, 3, 3, 3"})
    void theRimOfAPatchOfContactsCounts(String patch, int i1, int i2, int j1, int j2) {
        BoardMesh lines = mesh(1200, 200, 30, (x, y) -> 1);
        BoardMesh mesh = mesh(1200, 200, 30, (x, y) -> x >= lines.x()[i1] && x <= lines.x()[i2]
            && y >= lines.y()[j1] && y <= lines.y()[j2] ? 0 : 1);

        assertEquals((i2 - i1 + 1) * (j2 - j1 + 1), mesh.contacts().size(), patch);
        assertEquals(mesh.contacts(), mesh.countedContacts(), patch);
    }

    // Identity: held down on the three corners that the compliance holds, the board moves under a push as the
    // compliance tells, and by what wood dents: under the push, and at each corner by the square of its share of it.
    @Test
    void theHeldBoardIsMadeOfTheseNodes() {
        BoardMesh mesh = mesh(1200, 200, 30, (x, y) -> 1);
        int last = mesh.x().length - 1;
        List<Integer> corners = List.of(mesh.node(0, 0), mesh.node(last, 0), mesh.node(0, BoardMesh.ACROSS));
        double[] heavy = mesh.weight().clone();
        corners.forEach(corner -> heavy[corner] += 1000);
        HeldBoard held = new BoardMesh(mesh.x(), mesh.y(), mesh.first(), mesh.gap(), mesh.touches(), heavy, mesh.rigidity(),
            mesh.push(), mesh.limit()).held();
        double[][] deflection = OrthotropicPlate.compliance(mesh.x(), mesh.y(), mesh.rigidity()).deflection();

        held.restOn(corners);

        for (int p = 0; p < deflection.length; p++) {
            double along = mesh.x()[mesh.lineAlong(p)] / 1200;
            double across = mesh.y()[mesh.lineAcross(p)] / 200;
            double shares = Math.pow(1 - along - across, 2) + along * along + across * across;
            double expected = corners.contains(p) ? 0 : 50 * deflection[p][p] + 50 * 2e-6 * (1 + shares);
            assertEquals(expected < 10 ? expected : Double.POSITIVE_INFINITY, held.movement(p), 1e-6, "node " + p);
        }
    }
}
