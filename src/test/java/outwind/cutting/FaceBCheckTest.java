package outwind.cutting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.Face;
import outwind.numeric.plane.Plane;
import outwind.surface.MeasuredShape;
import outwind.surface.ShapeOf;

class FaceBCheckTest {

    // Worked by hand: in by 20 mm, or a tenth of a small board. Over (x, y) on face B lies (x, W − y) of a board 30 mm
    // thick whose face A, a plane, was cut at −1 mm.
    @ParameterizedTest
    @CsvSource({"900, 180, 20, 18", "100, 50, 10, 5", "1200, 400, 20, 20"})
    void sixPlacesLieOppositeToFaceA(double length, double width, double inX, double inY) {
        ShapeOf shape = new ShapeOf(length, width, 30, ShapeOf.board().underside(), ShapeOf.board().target(),
            ShapeOf.board().trim());
        Board board = shape.read(5, 3, (x, y) -> 0.002 * x + 0.005 * y);
        Cut faceA = new Cut(Face.A, new Plane(-1, 0, 0), 1, 1, 1, 29, Datum.BED);

        List<FaceBCheck> checks = FaceBCheck.of(board, MeasuredShape.of(board), new CuttingPlan(faceA, faceA, 25, 1),
            0.05, 1);

        double[] x = {inX, length / 2, length - inX, inX, length / 2, length - inX};
        double[] y = {inY, inY, inY, width - inY, width - inY, width - inY};
        assertArrayEquals(x, checks.stream().mapToDouble(FaceBCheck::x).toArray(), 1e-9);
        assertArrayEquals(y, checks.stream().mapToDouble(FaceBCheck::y).toArray(), 1e-9);
        for (int i = 0; i < 6; i++) {
            assertEquals(-1 - 0.002 * x[i] - 0.005 * (width - y[i]) + 30, checks.get(i).height(), 1e-6);
        }
    }

    // Worked by hand.
    @Test
    void theMeanIsTakenOut() {
        assertArrayEquals(new double[] {-2, 0, 2}, FaceBCheck.lessTheirMean(new double[] {1, 3, 5}), 1e-12);
    }
}
