package outwind.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.BoardBuilder;
import outwind.cutting.Cut;
import outwind.cutting.FaceBCheck;
import outwind.flatten.ThicknessRange;
import outwind.forecast.JudgeOptions;
import outwind.setup.Setup;
import outwind.setup.Shim;

/** Whoever walks round to the other end or the other edge of the bed must get the same plan, seen from there. */
class MirroredBoardTest {

    private static final double LENGTH = 1180;
    private static final double WIDTH = 212;

    /** Rounding, after some ten thousand sums of heights of a few mm. */
    private static final double ROUNDING = 1e-6;

    /** A board seen from another corner. */
    private record Mirror(boolean along, boolean across) {

        double x(double x) {
            return along ? LENGTH - x : x;
        }

        double y(double y) {
            return across ? WIDTH - y : y;
        }
    }

    private static Board board(String shape, Mirror mirror) {
        SplittableRandom random = new SplittableRandom(shape.hashCode());
        DoubleBinaryOperator height = switch (shape) {
            case "twisted" -> (u, v) -> 2.6 * u * v + 0.4 * u;
            case "kinked" -> (u, v) -> 3 * Math.max(0, u - 0.2) + 0.3 * v;
            case "cupped" -> (u, v) -> 1.4 * v * v + 0.5 * u * v * v - 0.3 * u;
            default -> (u, v) -> Math.sin(2.4 * u + v) * 0.9;
        };
        BoardBuilder board = Board.builder(shape, LENGTH, WIDTH).target(25).skim(0.2);
        for (int j = 0; j < 3; j++) {
            for (int i = 0; i < 5; i++) {
                double x = 20 + (LENGTH - 40) * i / 4 + random.nextDouble(-9, 9);
                double y = 15 + (WIDTH - 30) * j / 2 + random.nextDouble(-4, 4);
                double z = height.applyAsDouble(2 * x / LENGTH - 1, 2 * y / WIDTH - 1) + random.nextGaussian(0, 0.07);
                board.reading(mirror.x(x), mirror.y(y), z);
            }
        }
        if (shape.equals("twisted")) {
            return board.thickness(31).build();
        }
        for (double[] at : new double[][] {{10, 40, 30.9}, {1170, 30, 31.4}, {600, 5, 31.2}, {30, 200, 31.0}}) {
            board.caliper(mirror.x(at[0]), mirror.y(at[1]), at[2]);
        }
        return board.build();
    }

    @ParameterizedTest
    @CsvSource({"twisted, true, false", "twisted, false, true", "kinked, true, false", "kinked, true, true",
        "cupped, false, true", "cupped, true, true", "wavy, true, false", "wavy, false, true"})
    void aBoardSeenFromAnotherCornerGetsTheSamePlanSeenFromThere(String shape, boolean along, boolean across) {
        Mirror mirror = new Mirror(along, across);
        Board near = board(shape, new Mirror(false, false));
        Board far = board(shape, mirror);
        Judgement plain = Judgement.of(near, JudgeOptions.usual(near));
        Judgement mirrored = Judgement.of(far, JudgeOptions.usual(far));

        assertEquals(plain.verdict(), mirrored.verdict());
        assertEquals(plain.planned(), mirrored.planned());
        assertRange(plain.outlook().asMeasured(), mirrored.outlook().asMeasured());
        assertRange(plain.outlook().levelled(), mirrored.outlook().levelled());
        assertCut(plain.cuts().faceA(), mirrored.cuts().faceA(), mirror);
        assertCut(plain.cuts().faceB(), mirrored.cuts().faceB(), mirror);
        assertSetup(plain.asMeasured(), mirrored.asMeasured(), mirror);
        assertSetup(plain.levelled(), mirrored.levelled(), mirror);
        assertChecks(plain.checks(), mirrored.checks(), mirror);
        assertEquals(plain.pose().rocks(), mirrored.pose().rocks());
        assertEquals(plain.pose().widest(), mirrored.pose().widest(), ROUNDING);
    }

    private static void assertRange(ThicknessRange plain, ThicknessRange mirrored) {
        assertEquals(plain.low(), mirrored.low(), ROUNDING);
        assertEquals(plain.median(), mirrored.median(), ROUNDING);
        assertEquals(plain.high(), mirrored.high(), ROUNDING);
    }

    private static void assertCut(Cut plain, Cut mirrored, Mirror mirror) {
        assertEquals(plain.depth(), mirrored.depth(), ROUNDING);
        assertEquals(plain.datum(), mirrored.datum());
        for (double[] at : new double[][] {{0, 0}, {LENGTH, 0}, {0, WIDTH}}) {
            assertEquals(plain.plane().at(at[0], at[1]), mirrored.plane().at(mirror.x(at[0]), mirror.y(at[1])), ROUNDING);
        }
    }

    private static void assertSetup(Setup plain, Setup mirrored, Mirror mirror) {
        List<Shim> left = new ArrayList<>(mirrored.held().places());
        assertEquals(plain.held().places().size(), left.size());
        for (Shim shim : plain.held().places()) {
            Shim there = left.stream().filter(other -> Math.hypot(other.x() - mirror.x(shim.x()),
                other.y() - mirror.y(shim.y())) < ROUNDING).findAny().orElseThrow(() -> new AssertionError("none at "
                + shim + " among " + mirrored.held().places()));
            left.remove(there);
            assertEquals(shim.height(), there.height(), ROUNDING);
            assertEquals(shim.touches(), there.touches());
            assertEquals(plain.errorOf(shim), mirrored.errorOf(there), ROUNDING);
        }
        assertTrue(left.isEmpty());
    }

    /** Face B lies turned over along the length, and so does that of the mirrored board. */
    private static void assertChecks(List<FaceBCheck> plain, List<FaceBCheck> mirrored, Mirror mirror) {
        assertEquals(6, plain.size());
        for (FaceBCheck check : plain) {
            FaceBCheck there = mirrored.stream().filter(other -> Math.hypot(other.x() - mirror.x(check.x()),
                other.y() - mirror.y(check.y())) < ROUNDING).findAny().orElseThrow();
            assertEquals(check.height(), there.height(), ROUNDING);
            assertEquals(check.tolerance(), there.tolerance(), ROUNDING);
        }
    }
}
