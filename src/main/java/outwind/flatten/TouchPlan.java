package outwind.flatten;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Stream;
import outwind.board.TouchGrid;

/**
 * Which grid to touch a board off on: several compared by what they promise and what they take, and one chosen.
 *
 * @param promises the grids compared, the quickest first
 * @param chosen   one of them
 * @param reason   why it was chosen
 * @param pace     how long touching off takes
 */
public record TouchPlan(List<GridPromise> promises, GridPromise chosen, Reason reason, Pace pace) {

    /** Why a grid was chosen. */
    public enum Reason {
        /** It was asked for. */
        ASKED,
        /** The smallest that keeps the range as narrow as was asked. */
        NARROW_ENOUGH,
        /** None keeps the range as narrow as was asked; this one comes nearest. */
        NEAREST,
        /** The smallest from which a larger one narrows the range by less than {@link #WORTH_A_MINUTE} for a minute. */
        LITTLE_MORE
    }

    /**
     * How long touching off takes.
     *
     * @param seconds for each touch-off, with writing it down
     * @param feed    of the cutter from spot to spot (mm per minute)
     */
    public record Pace(double seconds, double feed) {

        /** Lowering the cutter onto paper or a feeler, reading and writing (s), and moving on; common practice. */
        public static final Pace USUAL = new Pace(40, 2500);

        public Pace {
            if (!(seconds >= 0 && seconds <= 3600 && feed > 0)) {
                throw new IllegalArgumentException("a touch-off takes from 0 to 3600 seconds, got " + seconds);
            }
        }

        /** Minutes for every spot of a grid, and the first once more. */
        public double minutes(TouchGrid grid) {
            List<TouchGrid.Spot> tour = grid.tour();
            return (tour.size() + 1) * seconds / 60 + TouchGrid.travel(tour) / feed;
        }
    }

    /** Minutes that nobody will spend to know the thickness 0.1 mm better; our choice. */
    public static final int MINUTES_FOR_A_TENTH = 8;

    /** A range narrower by less than this for a minute's work is not worth the minute (mm). */
    private static final double WORTH_A_MINUTE = 0.1 / MINUTES_FOR_A_TENTH;

    /** Columns and rows that are compared as far as they fit. */
    private static final int[][] GRIDS = {{3, 3}, {4, 3}, {5, 3}, {7, 3}, {9, 3}, {9, 5}};

    /** Nearer than this (mm), spots of columns or of rows tell the same. */
    private static final double LEAST_APART = 20;

    public TouchPlan {
        promises = List.copyOf(promises);
    }

    /**
     * Compares grids and chooses.
     *
     * @param corner a grid of the board's size with the inset and the step to keep; its columns and rows do not count
     * @param asked  the grid that is wanted anyhow
     * @param within width of the range that is narrow enough (mm), if that was said
     * @param kinked true if the board is known to have a kink; twist, bow and cup, however large, ask for no more spots
     */
    public static TouchPlan of(TouchGrid corner, Optional<TouchGrid> asked, OptionalDouble within, boolean kinked,
                               Pace pace, long seed) {
        List<GridPromise> promises = Stream.concat(fitting(corner).stream(), asked.stream()).distinct()
            .map(grid -> GridPromise.of(grid, seed))
            .sorted(Comparator.comparingDouble(promise -> pace.minutes(promise.grid()))).toList();
        return among(promises, asked, within, kinked, pace);
    }

    /** Chooses among what grids promise, those that take longer last. */
    static TouchPlan among(List<GridPromise> promises, Optional<TouchGrid> asked, OptionalDouble within, boolean kinked,
                           Pace pace) {
        if (asked.isPresent()) {
            GridPromise wanted = promises.stream().filter(promise -> promise.grid().equals(asked.get())).findFirst()
                .orElseThrow();
            return new TouchPlan(promises, wanted, Reason.ASKED, pace);
        }
        List<GridPromise> sound = sound(promises, kinked);
        return within.isPresent() ? narrowEnough(promises, sound, within.getAsDouble(), pace)
            : littleMore(promises, sound, pace);
    }

    private static List<TouchGrid> fitting(TouchGrid corner) {
        List<TouchGrid> grids = new ArrayList<>();
        int mostRows = fitting(corner.width() - 2 * corner.inset());
        int mostColumns = fitting(corner.length() - 2 * corner.inset());
        for (int[] grid : GRIDS) {
            TouchGrid fits = corner.with(Math.min(grid[0], mostColumns), Math.min(grid[1], mostRows));
            if (!grids.contains(fits)) {
                grids.add(fits);
            }
        }
        return grids;
    }

    /** How many lines fit on an extent (mm); the two at its ends always do. */
    private static int fitting(double extent) {
        return Math.max(2, 1 + (int) (extent / LEAST_APART));
    }

    private static TouchPlan narrowEnough(List<GridPromise> promises, List<GridPromise> sound, double within,
                                          Pace pace) {
        Optional<GridPromise> first = sound.stream().filter(promise -> promise.range() <= within).findFirst();
        return first.map(promise -> new TouchPlan(promises, promise, Reason.NARROW_ENOUGH, pace))
            .orElseGet(() -> new TouchPlan(promises,
                sound.stream().min(Comparator.comparingDouble(GridPromise::range)).orElseThrow(), Reason.NEAREST,
                pace));
    }

    private static TouchPlan littleMore(List<GridPromise> promises, List<GridPromise> sound, Pace pace) {
        GridPromise chosen = sound.stream().filter(promise -> sound.stream()
            .noneMatch(other -> isWorthIt(promise, other, pace))).findFirst().orElseThrow();
        return new TouchPlan(promises, chosen, Reason.LITTLE_MORE, pace);
    }

    /** True if the range narrows enough for the minutes that a larger grid takes. */
    private static boolean isWorthIt(GridPromise promise, GridPromise larger, Pace pace) {
        double minutes = pace.minutes(larger.grid()) - pace.minutes(promise.grid());
        return minutes > 0 && promise.range() - larger.range() > WORTH_A_MINUTE * minutes;
    }

    /** Those whose range can be believed; as near to that as the board is large enough for. */
    private static List<GridPromise> sound(List<GridPromise> promises, boolean kinked) {
        Predicate<GridPromise> kinks = GridPromise::seesKinks;
        Predicate<GridPromise> all = kinks.and(GridPromise::seesCup);
        return Stream.of(all.and(promise -> !kinked || promise.seesKinksWell()), all, kinks, promise -> true)
            .map(enough -> promises.stream().filter(enough).toList())
            .filter(grids -> !grids.isEmpty()).findFirst().orElseThrow();
    }

    /** Minutes that the chosen grid takes. */
    public double minutes() {
        return pace.minutes(chosen.grid());
    }
}
