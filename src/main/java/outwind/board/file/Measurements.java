package outwind.board.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.LengthReader;
import outwind.board.Quantity;
import outwind.board.Reading;
import outwind.board.text.Cell;
import outwind.board.text.FaultList;

/** Collects what the rows of a table hold, each value checked against the board as far as its size is known. */
final class Measurements {

    /** Two readings may both be slips; three that fit only with x and y exchanged are none. */
    private static final int FEWEST_TO_SHOW_IT = 3;

    /** A place off the board. */
    private record Off(Cell cell, Quantity axis) { }

    private final LengthReader gauge;
    private final OptionalDouble length;
    private final OptionalDouble width;
    private final FaultList faults;
    private final List<Reading> readings = new ArrayList<>();
    private final List<CaliperReading> calipers = new ArrayList<>();
    private final List<Off> off = new ArrayList<>();
    private boolean depths;
    private int touchedOnA;
    private int calipered;

    Measurements(LengthReader gauge, OptionalDouble length, OptionalDouble width, FaultList faults) {
        this.gauge = gauge;
        this.length = length;
        this.width = width;
        this.faults = faults;
    }

    /** The place along the grain (mm) that a cell states; on the bed it may lie anywhere. */
    Optional<Double> x(Cell cell, Face face) {
        return place(cell, face, Quantity.X);
    }

    /** The place across (mm) that a cell states; on the bed it may lie anywhere. */
    Optional<Double> y(Cell cell, Face face) {
        return place(cell, face, Quantity.Y);
    }

    private Optional<Double> place(Cell cell, Face face, Quantity axis) {
        Optional<Double> at = faults.read(cell, text -> gauge.read(axis, text));
        if (at.isPresent() && face != Face.BED && isOff(axis, at.get())) {
            off.add(new Off(cell, axis));
        }
        return at;
    }

    private boolean isOff(Quantity axis, double at) {
        OptionalDouble limit = axis == Quantity.X ? length : width;
        return limit.isPresent() && (at < 0 || at > limit.getAsDouble());
    }

    /** Whether some readings lie off the board, and all lie on it if x and y change places. */
    boolean fitOnlyExchanged() {
        List<Reading> onBoard = readings.stream().filter(reading -> reading.face() != Face.BED).toList();
        return !off.isEmpty() && length.isPresent() && width.isPresent() && onBoard.size() >= FEWEST_TO_SHOW_IT
            && onBoard.stream().noneMatch(reading -> isOff(Quantity.X, reading.y()) || isOff(Quantity.Y, reading.x()))
            && calipers.stream().noneMatch(one -> isOff(Quantity.X, one.y()) || isOff(Quantity.Y, one.x()));
    }

    /** The first place that lies off the board. */
    Cell firstOff() {
        return off.get(0).cell();
    }

    /** Notes a fault for every place that lies off the board. */
    void requireOnBoard() {
        for (Off place : off) {
            boolean along = place.axis() == Quantity.X;
            faults.read(place.cell(), text -> gauge.readOnBoard(place.axis(), text,
                along ? Quantity.LENGTH : Quantity.WIDTH, along ? length : width));
        }
    }

    /** Whether heights are measured downwards here. */
    boolean hasDepths() {
        return depths;
    }

    /** From here on heights are measured downwards. */
    void countDownwards() {
        depths = true;
    }

    /** Takes a touch-off; an empty {@code z} was not touched. */
    void touch(Optional<Double> x, Optional<Double> y, Cell z, Face face, String note) {
        if (z.isBlank()) {
            return;
        }
        touchedOnA += face == Face.A ? 1 : 0;
        Optional<Double> height =
            faults.read(z, text -> gauge.readTouched(Quantity.Z, text, "the point was not touched"));
        if (x.isPresent() && y.isPresent() && height.isPresent()) {
            // Zero has no sign on a board.
            readings.add(new Reading(x.get(), y.get(), depths ? 0 - height.get() : height.get(), face, note, z.line()));
        }
    }

    /** Takes a caliper reading; an empty {@code thickness} was not measured. */
    void caliper(Optional<Double> x, Optional<Double> y, Cell thickness, Face face) {
        if (thickness.isBlank()) {
            return;
        }
        calipered++;
        if (face == Face.BED) {
            faults.add(thickness, "no thickness in a row of the bed", "Leave the cell empty, or correct the face.");
            return;
        }
        if (face == Face.B) {
            faults.add(thickness, "no thickness in a row of face B",
                "Write caliper readings in rows of face A, at the places as they lie on face A.");
            return;
        }
        Optional<Double> measured = faults.read(thickness,
            text -> gauge.readTouched(Quantity.THICKNESS, text, "it was not measured there"));
        if (x.isPresent() && y.isPresent() && measured.isPresent()) {
            calipers.add(new CaliperReading(x.get(), y.get(), measured.get(), thickness.line()));
        }
    }

    /** Counts a row that could not be distinguished into cells and may have held both. */
    void missRow() {
        touchedOnA++;
        calipered++;
    }

    List<Reading> readings() {
        return readings;
    }

    List<CaliperReading> calipers() {
        return calipers;
    }

    /** How many touch-offs on face A were tried, readable or not. */
    int touchedOnA() {
        return touchedOnA;
    }

    /** How many caliper readings were tried, readable or not. */
    int calipered() {
        return calipered;
    }
}
