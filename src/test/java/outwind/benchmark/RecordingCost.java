package outwind.benchmark;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import outwind.board.Board;
import outwind.board.Reading;
import outwind.board.TouchGrid;
import outwind.flatten.Verdict;
import outwind.judge.Prospect;
import outwind.surface.PredictedHeight;
import outwind.surface.MeasuredShape;
import outwind.surface.SuspectReading;

/**
 * What guided entry costs and gains on simulated boards of which every place of a 5x3 grid is touched in its travel
 * order: how long the prompt waits for the verdict so far; how often a sound height is asked for again, and how often a
 * wrong one; how many touch-offs a settled verdict saves, and how often those would have changed it.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=RecordingCost}.
 */
public final class RecordingCost {

    /** Time on a core of one's own, however busy the others are; all is done on one. */
    private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

    private static final int FEWEST_TO_PREDICT = 4;
    private static final double[] MISREAD = {0.5, 1, 3};

    private final List<Double> milliseconds = new ArrayList<>();
    private final int[] misreadFound = new int[MISREAD.length];
    private int misreadTried;
    private int sound;
    private int askedAgain;
    private int boards;
    private int settled;
    private int saved;
    private int changed;
    private int turned;

    private RecordingCost() { }

    /** Boards of each family. */
    private static final int BOARDS = 400;

    public static void main(String[] args) {
        for (SimulatedBoard.Family family : SimulatedBoard.Family.values()) {
            RecordingCost cost = new RecordingCost();
            SplittableRandom random = new SplittableRandom(20261125 + family.ordinal());
            for (int trial = 0; trial < BOARDS; trial++) {
                cost.record(SimulatedBoard.of(family, random), random);
            }
            cost.print(family.name().toLowerCase(Locale.ROOT));
        }
    }

    private void record(SimulatedBoard truth, SplittableRandom random) {
        double slab = truth.trueSlab();
        // Targets from hopeless to easy, as boards are bought.
        Board whole = truth.read(5, 3, OptionalDouble.of(slab + random.nextDouble(-3, 1)), random);
        List<TouchGrid.Spot> tour = new TouchGrid(truth.length(), truth.width(), 5, 3, 15, 0).tour();
        List<Reading> readings = new ArrayList<>();
        boolean stopped = false;
        Verdict early = Verdict.NONE;
        Verdict last = Verdict.NONE;
        for (TouchGrid.Spot spot : tour) {
            Reading reading = truth.touchOff(spot.x(), spot.y(), readings.size() + 2, random);
            if (readings.size() >= FEWEST_TO_PREDICT) {
                hold(SimulatedBoard.with(whole, readings), reading, tour.size() + 3, random);
            }
            readings.add(reading);
            if (readings.size() >= Prospect.FEWEST) {
                long start = CLOCK.getCurrentThreadCpuTime();
                Prospect prospect = Prospect.of(SimulatedBoard.with(whole, readings));
                boolean over = prospect.isSettled();
                milliseconds.add((CLOCK.getCurrentThreadCpuTime() - start) / 1e6);
                last = prospect.verdict();
                if (over && !stopped) {
                    stopped = true;
                    early = last;
                    settled++;
                    saved += tour.size() - readings.size();
                }
            }
        }
        boards++;
        changed += stopped && early != last ? 1 : 0;
        boolean turnedOver = early == Verdict.YES && last == Verdict.NO || early == Verdict.NO && last == Verdict.YES;
        turned += stopped && turnedOver ? 1 : 0;
    }

    private void hold(Board board, Reading reading, int planned, SplittableRandom random) {
        PredictedHeight predicted = MeasuredShape.of(board).predict(reading.x(), reading.y());
        double most = SuspectReading.bound(planned) * predicted.deviation();
        sound++;
        askedAgain += Math.abs(reading.z() - predicted.mean()) > most ? 1 : 0;
        misreadTried++;
        double way = random.nextBoolean() ? 1 : -1;
        for (int i = 0; i < MISREAD.length; i++) {
            misreadFound[i] += Math.abs(reading.z() + way * MISREAD[i] - predicted.mean()) > most ? 1 : 0;
        }
    }

    private void print(String family) {
        double[] sorted = milliseconds.stream().skip(milliseconds.size() / 5).mapToDouble(d -> d).sorted().toArray();
        System.out.printf(Locale.ROOT, "%s, %d boards: verdict so far in %.0f ms, slowest of a hundred %.0f ms; a sound"
            + " height asked for again once in %.0f, a misreading of %s mm in %s %%; settled early %.0f %%, saving %.1f"
            + " touch-offs each; those would have changed the verdict of %d, turned it over for %d%n", family, boards,
            sorted[sorted.length / 2], sorted[sorted.length * 99 / 100], sound / (double) Math.max(1, askedAgain),
            Arrays.toString(MISREAD), Arrays.toString(Arrays.stream(misreadFound)
                .map(found -> 100 * found / misreadTried).toArray()), 100.0 * settled / boards,
            saved / (double) Math.max(1, settled), changed, turned);
    }
}
