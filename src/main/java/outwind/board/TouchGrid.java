package outwind.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Where to touch a board off: columns along the grain × rows across, evenly spaced between insets from ends and edges,
 * and the order that takes the cutter least far.
 *
 * <p>The tour is closed: it ends where it began, so that the first spot can be touched again. With a step a between
 * columns and b between rows it goes out along the near row and comes back through all the others, up one column and
 * down the next. It crosses every gap between columns twice, as any closed tour must, and moves by b for the rest:
 * <pre>
 *   2·(columns − 1)·a + (columns·rows − 2·(columns − 1))·b
 * </pre>
 * which nothing undercuts if b ≤ a. That closes if the columns are even in number or the rows are two. Otherwise the
 * last column would be left at the wrong end; the cheapest of three ways about that is taken. Columns and rows change
 * places where that is shorter. Where both are odd, no tour can be of grid steps alone: they change the colour of a
 * chessboard, and there is one square more of one colour.
 *
 * @param length of the board (mm)
 * @param width  of the board (mm)
 * @param columns along the grain, at least 2
 * @param rows   across, at least 2
 * @param inset  from ends and edges (mm), below half of the length and of the width
 * @param step   spots fall on whole multiples of this (mm) so that they can be found with a rule; 0 leaves them exact
 */
public record TouchGrid(double length, double width, int columns, int rows, double inset, double step) {

    /** Room for the cutter inside ends and edges, and still near the corners (mm); common practice. */
    public static final double USUAL_INSET = 15;

    /** An eighth of an inch (mm). */
    private static final double EIGHTH = Units.INCHES.toMillimetres(0.125);

    /** On a narrow board the outer rows still stand at least this share of the width from the edges, and no more. */
    private static final double MOST_INSET = 1 / 6.0;

    /** How far in from an edge the jaws of a caliper reach (mm); common practice. */
    public static final double JAWS = 40;

    /** Boards up to the one are measured by caliper at the corners, up to the other in the middle too (mm): our choice. */
    private static final double SHORT = 500;
    private static final double LONG = 2000;

    /**
     * One place to touch.
     *
     * @param x      from the end (mm)
     * @param y      from the near edge (mm)
     * @param column counted from 0 at the end
     * @param row    counted from 0 at the near edge
     */
    public record Spot(double x, double y, int column, int row) {

        public Place place() {
            return new Place(x, y);
        }

        /** How far the cutter goes from here to there (mm). */
        public double to(Spot other) {
            return Math.hypot(other.x - x, other.y - y);
        }
    }

    public TouchGrid {
        if (!(length > 0 && width > 0 && length < 1e9 && width < 1e9)) {
            throw new IllegalArgumentException("a board has a length and a width, got " + length + " x " + width);
        }
        if (columns < 2 || rows < 2) {
            throw new IllegalArgumentException("a grid has 2 columns and 2 rows or more, got " + columns + " x "
                + rows);
        }
        if (!(inset >= 0 && inset < Math.min(length, width) / 2)) {
            throw new IllegalArgumentException("the inset must leave room between the edges, got " + inset + " mm");
        }
        requireRoom(length - 2 * inset, columns, step, "columns");
        requireRoom(width - 2 * inset, rows, step, "rows");
    }

    private static void requireRoom(double extent, int count, double step, String what) {
        if (!(step >= 0 && extent / (count - 1) >= step)) {
            throw new IllegalArgumentException(count + " " + what + " would stand closer than can be distinguished on "
                + Units.MILLIMETRES.plain(extent) + " mm");
        }
    }

    /** Spots on whole millimetres. */
    public TouchGrid(double length, double width, int columns, int rows, double inset) {
        this(length, width, columns, rows, inset, 1);
    }

    /**
     * A grid that is found with a rule: spots on whole mm, or on eighths of an inch.
     *
     * @param inset mm; empty for the usual one that the board bears
     * @throws IllegalArgumentException if it does not fit
     */
    public static TouchGrid byRule(double length, double width, int columns, int rows, OptionalDouble inset,
                                   Units units) {
        return new TouchGrid(length, width, columns, rows, inset.orElseGet(() -> insetFor(length, width, USUAL_INSET)),
            units == Units.INCHES ? EIGHTH : 1);
    }

    /** The inset (mm) that a board bears: the one wanted, or a sixth of its lesser side. */
    public static double insetFor(double length, double width, double wanted) {
        return Math.min(wanted, Math.min(length, width) * MOST_INSET);
    }

    /** Another number of columns and rows on the same board. */
    public TouchGrid with(int otherColumns, int otherRows) {
        return new TouchGrid(length, width, otherColumns, otherRows, inset, step);
    }

    /** The spot in a column and a row, both counted from 0. */
    public Spot spot(int column, int row) {
        return new Spot(place(length, columns, column), place(width, rows, row), column, row);
    }

    private double place(double extent, int count, int i) {
        double exact = inset + (extent - 2 * inset) * i / (count - 1);
        // Whole steps that lie on the board; a millionth of a step is the rounding of a fraction of an inch.
        return step == 0 ? exact : Math.min(Math.rint(exact / step), Math.floor(extent / step + 1e-6)) * step;
    }

    /** Every spot once, in the order to touch them; begins at the near corner at the end measured from. */
    public List<Spot> tour() {
        // Rounded places must not choose between tours that are equally long, nor must rounded sums.
        TouchGrid exact = new TouchGrid(length, width, columns, rows, inset, 0);
        return Stream.concat(tours(columns, rows).stream(), tours(rows, columns).stream().map(TouchGrid::transposed))
            .min(Comparator.comparingDouble(cells -> Math.rint(1e6 * travel(exact.spots(cells)) / length)))
            .map(this::spots).orElseThrow();
    }

    private List<Spot> spots(List<int[]> cells) {
        return cells.stream().map(cell -> spot(cell[0], cell[1])).toList();
    }

    /**
     * Which of some places a caliper should measure as well: those nearest to the corners and, on all but short boards,
     * to the middle of both edges; on long ones to the thirds. Eight at most, four where there are so many.
     */
    public static List<Place> byCaliper(List<Place> planned, double length, double width) {
        int stations = length <= SHORT ? 2 : length <= LONG ? 3 : 4;
        List<Place> chosen = new ArrayList<>();
        for (int k = 0; k < 2 * stations; k++) {
            boolean isNear = k < stations;
            Place wanted = new Place(length * (isNear ? k : 2 * stations - 1 - k) / (stations - 1), isNear ? 0 : width);
            planned.stream().filter(place -> Math.min(place.y(), width - place.y()) <= JAWS)
                .min(Comparator.comparingDouble(place -> Math.hypot(place.x() - wanted.x(), place.y() - wanted.y())))
                .filter(place -> !chosen.contains(place)).ifPresent(chosen::add);
        }
        return List.copyOf(chosen);
    }

    /** How far the cutter goes from spot to spot and back to the first (mm). */
    public static double travel(List<Spot> tour) {
        double sum = tour.get(tour.size() - 1).to(tour.get(0));
        for (int i = 1; i < tour.size(); i++) {
            sum += tour.get(i - 1).to(tour.get(i));
        }
        return sum;
    }

    private static List<int[]> transposed(List<int[]> cells) {
        return cells.stream().map(cell -> new int[] {cell[1], cell[0]}).toList();
    }

    /** Closed tours as {column, row} that go out along row 0; the first is the plain one. */
    private static List<List<int[]>> tours(int columns, int rows) {
        List<List<int[]>> tours = new ArrayList<>();
        tours.add(zigzagBack(columns, rows, columns));
        if (columns % 2 == 1 && rows > 2) {
            tours.add(combedEnd(columns, rows));
            if (rows == 4) {
                tours.add(splitColumn(columns));
            }
        }
        return tours;
    }

    /** Out along row 0, back through the given number of columns from the far end, up one and down the next. */
    private static List<int[]> zigzagBack(int columns, int rows, int through) {
        List<int[]> cells = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            cells.add(new int[] {i, 0});
        }
        for (int i = columns - 1; i >= columns - through; i--) {
            // The last column is always gone down, so that it ends beside the start, be it after a longer step.
            boolean up = (columns - 1 - i) % 2 == 0 && i > 0;
            for (int k = 1; k < rows; k++) {
                cells.add(new int[] {i, up ? k : rows - k});
            }
        }
        return cells;
    }

    /** The last two columns are gone down together, to and fro between them. */
    private static List<int[]> combedEnd(int columns, int rows) {
        List<int[]> cells = zigzagBack(columns, rows, columns - 2);
        for (int k = 1; k < rows; k++) {
            // Ends in column 0: where the rows to go are even in number, the last step across is a slanting one.
            boolean nearFirst = k % 2 == 0 && !(rows % 2 == 1 && k == rows - 1);
            cells.add(new int[] {nearFirst ? 0 : 1, rows - k});
            cells.add(new int[] {nearFirst ? 1 : 0, rows - k});
        }
        return cells;
    }

    /** Of four rows the way out takes two and the way back two in column 1: each enters and leaves it at one end. */
    private static List<int[]> splitColumn(int columns) {
        List<int[]> cells = new ArrayList<>(List.of(new int[] {0, 0}, new int[] {1, 0}, new int[] {1, 1}));
        List<int[]> beyond = zigzagBack(columns, 4, columns - 2);
        cells.addAll(beyond.subList(2, beyond.size()));
        cells.addAll(List.of(new int[] {1, 2}, new int[] {1, 3}, new int[] {0, 3}, new int[] {0, 2},
            new int[] {0, 1}));
        return cells;
    }
}
