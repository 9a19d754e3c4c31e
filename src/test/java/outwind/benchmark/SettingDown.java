package outwind.benchmark;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.numeric.plane.Plane;
import outwind.setup.RestingPose;
import outwind.setup.Setup;
import outwind.setup.Shim;

/** What is said of setting a board down, on boards whose two faces are known. */
public final class SettingDown {

    /** A contact that is open by more than this is none (mm). */
    private static final double OPEN = 0.1;

    /** Of wood of no stated species (kg per m³). */
    private static final double DENSITY = 450;

    private SettingDown() { }

    /** Counts over the boards of one family and one way of holding them. */
    private static final class Counts {

        private int shims;
        private int within;
        private int contacts;
        private int open;
        private int held;
        private int setups;
        private final List<Integer> numbers = new ArrayList<>();

        void add(TrueBoard truth, Setup setup, Plane slopes) {
            setups++;
            held += setup.held().holds() ? 1 : 0;
            for (Shim place : setup.places()) {
                double gap = truth.gap(place.x(), place.y(), slopes);
                if (place.isNeeded()) {
                    shims++;
                    within += Math.abs(gap - place.height()) <= setup.errorOf(place) ? 1 : 0;
                } else {
                    contacts++;
                    open += gap > OPEN ? 1 : 0;
                }
            }
            if (setup.held().holds()) {
                numbers.add(setup.shims().size());
            }
        }

        String row() {
            Collections.sort(numbers);
            return String.format(Locale.ROOT, "%d of %d | %d / %d | %.1f | %s | %s", held, setups,
                numbers.get(numbers.size() / 2), numbers.get(numbers.size() * 9 / 10),
                contacts / (double) Math.max(1, numbers.size()), percent(open, contacts), percent(within, shims));
        }
    }

    public static void main(String[] args) {
        int boards = args.length > 0 && args[0].matches("\\d+") ? Integer.parseInt(args[0]) : 100;
        System.out.println("| family | held as | held | shims, median / 90 % | contacts a board | contacts open | gap"
            + " within the shim's ± |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
        int steady = 0;
        int moves = 0;
        for (TrueBoard.Family family : TrueBoard.Family.named(args)) {
            Counts lying = new Counts();
            Counts levelled = new Counts();
            for (int i = 0; i < boards; i++) {
                SplittableRandom random = new SplittableRandom(7_919L * i + family.ordinal());
                TrueBoard truth = TrueBoard.of(family, random);
                Board read = truth.read(OptionalDouble.empty(), random);
                Judgement judged = Judgement.of(read, JudgeOptions.usual(read));
                lying.add(truth, judged.asMeasured(), new Plane(0, 0, 0));
                levelled.add(truth, judged.levelled(), judged.planes().best().slab().faceA());
                if (judged.faceDown().isSteady()) {
                    steady++;
                    moves += RestingPose.of(truth.sampled(), DENSITY).rocks() ? 1 : 0;
                }
            }
            String name = family.name().toLowerCase(Locale.ROOT).replace('_', ' ');
            System.out.println("| " + name + " | as measured | " + lying.row() + " |");
            System.out.println("| " + name + " | levelled | " + levelled.row() + " |");
        }
        System.out.println();
        System.out.println("Called steady: " + steady + " boards, of which " + moves + " move more than 0.1 mm under 5 N.");
    }

    private static String percent(int part, int all) {
        return all == 0 ? "-" : String.format(Locale.ROOT, "%.0f %%", 100.0 * part / all);
    }
}
