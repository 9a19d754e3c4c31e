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

    private final LengthReader gauge;
    private final OptionalDouble length;
    private final OptionalDouble width;
    private final FaultList faults;
    private final List<Reading> readings = new ArrayList<>();
    private final List<CaliperReading> calipers = new ArrayList<>();
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
        OptionalDouble limit = face == Face.BED ? OptionalDouble.empty() : length;
        return faults.read(cell, text -> gauge.readOnBoard(Quantity.X, text, Quantity.LENGTH, limit));
    }

    /** The place across (mm) that a cell states; on the bed it may lie anywhere. */
    Optional<Double> y(Cell cell, Face face) {
        OptionalDouble limit = face == Face.BED ? OptionalDouble.empty() : width;
        return faults.read(cell, text -> gauge.readOnBoard(Quantity.Y, text, Quantity.WIDTH, limit));
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
            readings.add(new Reading(x.get(), y.get(), height.get(), face, note, z.line()));
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
