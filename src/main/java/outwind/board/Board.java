package outwind.board;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One rough board as a person measured it. All lengths in mm; x runs along the grain from 0 to {@code length}, y
 * across from 0 to {@code width}, z up.
 *
 * @param name          what its owner calls it, not blank
 * @param units         unit in which its owner reads and writes
 * @param length        along the grain (mm), positive
 * @param width         across the grain (mm), positive
 * @param thickness     rough thickness with a caliper (mm), positive; where empty, {@code calipers} tell it
 * @param species       the wood
 * @param repeatability standard deviation of one touch-off (mm), never negative
 * @param price         what it costs
 * @param target        thickness it should finish at (mm), positive
 * @param skim          least depth to come off everywhere on a rough face (mm), less than half the thickness
 * @param trim          wood at ends and edges that need not clean up
 * @param underside     what is known of the face that lies on the bed
 * @param turned        how it was turned over before face B was touched
 * @param defects       wood of no use, all on the board
 * @param readings      touch-offs on all faces, in the order of the file; those on A and B lie on the board
 * @param calipers      thickness at single places, on the board
 * @param remarks       sentences on what was assumed when the board was read
 */
public record Board(String name, Units units, double length, double width, OptionalDouble thickness,
        Optional<String> species, OptionalDouble repeatability, Optional<Price> price, OptionalDouble target,
        OptionalDouble skim, Trim trim, Underside underside, Optional<Turned> turned, List<Defect> defects,
        List<Reading> readings, List<CaliperReading> calipers, List<String> remarks) {

    public Board {
        require(!name.isBlank(), "board needs a name");
        Objects.requireNonNull(units, "units");
        Objects.requireNonNull(species, "species");
        Objects.requireNonNull(price, "price");
        Objects.requireNonNull(underside, "underside");
        Objects.requireNonNull(turned, "turned");
        defects = List.copyOf(defects);
        readings = List.copyOf(readings);
        calipers = List.copyOf(calipers);
        remarks = List.copyOf(remarks);
        requireSizes(length, width, thickness, repeatability, target, skim);
        require(trim.leavesWoodOf(length, width), "trim leaves nothing of the board: " + trim);
        requireOnBoard(length, width, defects, readings, calipers);
        requireSkimLeavesWood(skim, thickest(thickness, calipers));
    }

    /** The touch-offs on one face, in the order of the file. */
    public List<Reading> readingsOf(Face face) {
        return readings.stream().filter(reading -> reading.face() == face).toList();
    }

    /**
     * This board with another target (mm).
     *
     * @throws IllegalArgumentException if the target is not positive or is beyond what a board can be
     */
    public Board withTarget(double newTarget) {
        return new Board(name, units, length, width, thickness, species, repeatability, price,
            OptionalDouble.of(newTarget), skim, trim, underside, turned, defects, readings, calipers, remarks);
    }

    /**
     * This board with another skim (mm).
     *
     * @throws IllegalArgumentException if the skim is negative or leaves no wood between the faces
     */
    public Board withSkim(double newSkim) {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target,
            OptionalDouble.of(newSkim), trim, underside, turned, defects, readings, calipers, remarks);
    }

    /** The stated thickness (mm), or else the thickest caliper reading; empty if there is neither. */
    static OptionalDouble thickest(OptionalDouble stated, List<CaliperReading> calipers) {
        return stated.isPresent() ? stated : calipers.stream().mapToDouble(CaliperReading::thickness).max();
    }

    private static void requireSizes(double length, double width, OptionalDouble thickness,
            OptionalDouble repeatability, OptionalDouble target, OptionalDouble skim) {
        Quantity.LENGTH.require(length);
        Quantity.WIDTH.require(width);
        thickness.ifPresent(Quantity.THICKNESS::require);
        repeatability.ifPresent(Quantity.REPEATABILITY::require);
        target.ifPresent(Quantity.TARGET::require);
        skim.ifPresent(Quantity.SKIM::require);
    }

    private static void requireOnBoard(double length, double width, List<Defect> defects, List<Reading> readings,
            List<CaliperReading> calipers) {
        for (Defect defect : defects) {
            require(defect.liesOn(length, width), "defect lies off the board: " + defect);
        }
        for (Reading reading : readings) {
            require(reading.face() == Face.BED || isOn(reading.x(), reading.y(), length, width),
                "reading lies off the board: " + reading);
        }
        for (CaliperReading caliper : calipers) {
            require(isOn(caliper.x(), caliper.y(), length, width), "caliper reading lies off the board: " + caliper);
        }
    }

    private static void requireSkimLeavesWood(OptionalDouble skim, OptionalDouble thickest) {
        if (skim.isPresent() && thickest.isPresent()) {
            require(2 * skim.getAsDouble() < thickest.getAsDouble(), "skim must be less than half the thickness of "
                + Units.MILLIMETRES.plain(thickest.getAsDouble()) + " mm, got "
                + Units.MILLIMETRES.plain(skim.getAsDouble()) + " mm");
        }
    }

    private static boolean isOn(double x, double y, double length, double width) {
        return x >= 0 && x <= length && y >= 0 && y <= width;
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
