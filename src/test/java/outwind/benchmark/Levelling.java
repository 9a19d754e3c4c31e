package outwind.benchmark;

import java.util.Arrays;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.flatten.Slab;
import outwind.numeric.plane.Gap;
import outwind.numeric.plane.WidestGap;
import outwind.setup.RestingPose;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * What levelling saves over cutting a board as it lies by itself (mid-rock if it rocks), on made-up boards read on a
 * 5x3
 * grid: thickness of the slab, and roughing passes of 0.5 mm over both faces.
 */
final class Levelling {

    private static final double STEP_DOWN = 0.5;

    private Levelling() { }

    static void print(int boards) {
        System.out.println("| family | boards | saves, mean | median | 95 % save under | roughing passes saved,"
            + " mean |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            double[] saved = new double[boards];
            double passes = 0;
            for (int i = 0; i < boards; i++) {
                SplittableRandom random = new SplittableRandom(1_000_003L * i + 17 * family.ordinal());
                Board board = SimulatedBoard.of(family, random).read(5, 3, OptionalDouble.empty(), random);
                SampledBoard whole = MeasuredShape.of(board).at(
                    Places.fine(board, Region.whole(board)));
                Slab lying = Slab.of(whole, RestingPose.of(whole, 600).bed(), 0);
                Gap level = WidestGap.thickestSlab(whole.x(), whole.y(), whole.top(), whole.underside());
                saved[i] = level.width() - lying.thickness();
                passes += saved[i] / STEP_DOWN;
            }
            Arrays.sort(saved);
            System.out.printf(Locale.ROOT, "| %s | %d | %.2f mm | %.2f mm | %.2f mm | %.1f |%n",
                family.name().toLowerCase(Locale.ROOT), boards, Arrays.stream(saved).average().orElseThrow(),
                saved[boards / 2], saved[(int) Math.ceil(0.95 * boards) - 1], passes / boards);
        }
    }
}
