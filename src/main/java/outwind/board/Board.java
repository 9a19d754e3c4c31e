package outwind.board;

import java.util.ArrayList;
import java.util.Comparator;
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
 * @param scan          face A as it was scanned; {@code readings} on it are then the heights of the scan's cells
 * @param unevenness    how much the thickness strays, as a multiple of what it does on sawn boards; 0 if the stated
 *                      thickness is the same everywhere, as where it was planed. Else that is one caliper reading at a
 *                      place that nobody wrote down
 * @param grade         what its seller sorted it as, in any words
 */
public record Board(String name, Units units, double length, double width, OptionalDouble thickness,
        Optional<String> species, OptionalDouble repeatability, Optional<Price> price, OptionalDouble target,
        OptionalDouble skim, Trim trim, Underside underside, Optional<Turned> turned, List<Defect> defects,
        List<Reading> readings, List<CaliperReading> calipers, List<String> remarks, Optional<ScannedFace> scan,
        double unevenness, Optional<String> grade) {

    /** The unevenness of a sawn board of which nothing more is known. */
    public static final double SAWN = 1;

    private static final int FEWEST_TO_TIE = 3;

    public Board {
        require(!name.isBlank(), "board needs a name, got ", name);
        Objects.requireNonNull(units, "units");
        Objects.requireNonNull(species, "species");
        Objects.requireNonNull(price, "price");
        Objects.requireNonNull(underside, "underside");
        Objects.requireNonNull(turned, "turned");
        Objects.requireNonNull(scan, "scan");
        Objects.requireNonNull(grade, "grade");
        defects = List.copyOf(defects);
        readings = List.copyOf(readings);
        calipers = List.copyOf(calipers);
        remarks = List.copyOf(remarks);
        require(unevenness >= 0 && Double.isFinite(unevenness), "unevenness is a number not below zero, got ", unevenness);
        require(unevenness > 0 || thickness.isPresent(), "an even thickness needs a figure, got ", thickness);
        requireSizes(length, width, thickness, repeatability, target, skim);
        require(trim.leavesWoodOf(length, width), "trim leaves nothing of the board: ", trim);
        requireOnBoard(length, width, defects, readings, calipers);
        requireSkimLeavesWood(skim, thickest(thickness, calipers));
    }

    /** A board whose grade nobody stated. */
    public Board(String name, Units units, double length, double width, OptionalDouble thickness,
            Optional<String> species, OptionalDouble repeatability, Optional<Price> price, OptionalDouble target,
            OptionalDouble skim, Trim trim, Underside underside, Optional<Turned> turned, List<Defect> defects,
            List<Reading> readings, List<CaliperReading> calipers, List<String> remarks, Optional<ScannedFace> scan,
            boolean evenThickness) {
        this(name, units, length, width, thickness, species, repeatability, price, target, skim, trim, underside,
            turned, defects, readings, calipers, remarks, scan, evenThickness ? 0 : SAWN, Optional.empty());
    }

    /** A board that was touched off, not scanned. */
    public Board(String name, Units units, double length, double width, OptionalDouble thickness,
            Optional<String> species, OptionalDouble repeatability, Optional<Price> price, OptionalDouble target,
            OptionalDouble skim, Trim trim, Underside underside, Optional<Turned> turned, List<Defect> defects,
            List<Reading> readings, List<CaliperReading> calipers, List<String> remarks) {
        this(name, units, length, width, thickness, species, repeatability, price, target, skim, trim, underside,
            turned, defects, readings, calipers, remarks, Optional.empty(), false);
    }

    /**
     * Begins a board that is put together in code.
     *
     * @param name   what its owner calls it
     * @param length along the grain (mm)
     * @param width  across the grain (mm)
     * @return a builder that takes readings and whatever else is known
     */
    public static BoardBuilder builder(String name, double length, double width) {
        return new BoardBuilder(name, length, width);
    }

    /** What kind of wood it is, as far as is stated. */
    public WoodKind kind() {
        return new WoodKind(species, grade);
    }

    /** How often face A was touched: touch-offs, or points of a scan. */
    public int pointsOnFaceA() {
        return scan.map(face -> face.points().size()).orElseGet(() -> readingsOf(Face.A).size());
    }

    /** Whether heights are measured from the bed, because it was touched off or scanned too. */
    public boolean isToldFromBed() {
        return !readingsOf(Face.BED).isEmpty() || scan.map(ScannedFace::aboveBed).orElse(false);
    }

    /**
     * A board that nobody has touched off yet.
     *
     * @throws IllegalArgumentException if a size is beyond what a board can be
     */
    public static Board untouched(String name, Units units, double length, double width, OptionalDouble thickness,
            OptionalDouble target) {
        return new Board(name, units, length, width, thickness, Optional.empty(), OptionalDouble.empty(),
            Optional.empty(), target, OptionalDouble.empty(), Trim.NONE, Underside.ALIKE, Optional.empty(), List.of(),
            List.of(), List.of(), List.of());
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
            OptionalDouble.of(newTarget), skim, trim, underside, turned, defects, readings, calipers, remarks, scan, unevenness,
            grade);
    }

    /**
     * This board with another skim (mm).
     *
     * @throws IllegalArgumentException if the skim is negative or leaves no wood between the faces
     */
    public Board withSkim(double newSkim) {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target,
            OptionalDouble.of(newSkim), trim, underside, turned, defects, readings, calipers, remarks, scan, unevenness,
            grade);
    }

    /** This board with other touch-offs in place of its own, or of its scan. */
    public Board withReadings(List<Reading> others) {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, others, calipers, remarks, Optional.empty(), unevenness,
            grade);
    }

    /** This board known to be as thick everywhere as is stated. */
    public Board evenlyThick() {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, readings, calipers, remarks, scan, 0, grade);
    }

    /** Whether the stated thickness is the same everywhere. */
    public boolean evenThickness() {
        return unevenness == 0;
    }

    /** This board where it is known how much the thickness of its like strays, as a multiple of sawn boards' usual. */
    public Board strayingBy(double multiple) {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, readings, calipers, remarks, scan, multiple, grade);
    }

    /** This board called something else. */
    public Board named(String other) {
        return new Board(other, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, readings, calipers, remarks, scan, unevenness,
            grade);
    }

    /** This board with one more remark on how it was read. */
    public Board remarked(String remark) {
        List<String> more = new ArrayList<>(remarks);
        more.add(remark);
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, readings, calipers, more, scan, unevenness,
            grade);
    }

    /**
     * At how many places along the length face A was touched off; those nearer to each other than a twentieth of it
     * count as one.
     */
    public int columnsTouched() {
        return (int) readingsOf(Face.A).stream().mapToDouble(r -> Math.rint(r.x() / length * 20)).distinct().count();
    }

    /** This board with face B as it was read in a file of its own, and how it was turned over for that. */
    public Board withFaceB(List<Reading> faceB, Turned turnedOver) {
        List<Reading> all = new ArrayList<>(readings);
        faceB.forEach(r -> all.add(new Reading(r.x(), r.y(), r.z(), Face.B, r.note(), 0)));
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, Optional.of(turnedOver), defects, all, calipers, remarks, scan, unevenness,
            grade);
    }

    /**
     * What readings on face B lack to be tied to face A, as a sentence; empty if they lack nothing or there are none.
     * The board lay otherwise when face B was touched: how high and how tilted, three caliper readings tell that do
     * not lie in one line.
     */
    public Optional<String> missingTie() {
        int onB = readingsOf(Face.B).size();
        if (onB == 0) {
            return Optional.empty();
        }
        if (turned.isEmpty()) {
            return Optional.of("readings on face B need to know how the board was turned over: add \"# turned: along\""
                + " or \"# turned: end over end\"");
        }
        if (onB < FEWEST_TO_TIE) {
            return Optional.of("face B has " + onB + " touch-offs; it takes " + (FEWEST_TO_TIE - onB) + " more");
        }
        if (calipers.size() < FEWEST_TO_TIE) {
            return Optional.of("face B is tied to face A by caliper readings, and there are " + calipers.size()
                + "; it takes " + (FEWEST_TO_TIE - calipers.size()) + " more, not all in one line");
        }
        return calipersLieInLine()
            ? Optional.of("the caliper readings that should tie face B to face A lie in one line;"
            + " it takes 1 more beside that line") : Optional.empty();
    }

    /** Seen from the first, the one furthest away shows the line: no two can lie further apart than twice as far. */
    private boolean calipersLieInLine() {
        CaliperReading first = calipers.get(0);
        CaliperReading far = calipers.stream()
            .max(Comparator.comparingDouble(c -> Math.hypot(c.x() - first.x(), c.y() - first.y()))).orElseThrow();
        // Beside a line by less than a hundredth of the board, a caliper reading says nothing of the tilt.
        return calipers.stream().allMatch(third -> Math.abs((far.x() - first.x()) * (third.y() - first.y())
            - (third.x() - first.x()) * (far.y() - first.y())) <= 0.01 * length * width);
    }

    /** This board lying on a face that is flat. */
    public Board onFlatUnderside() {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            Underside.FLAT, turned, defects, readings, calipers, remarks, scan, unevenness,
            grade);
    }

    /** This board with heights that are counted from the bed: where that was not read, zero was set on it. */
    public Board zeroedOnBed() {
        if (isToldFromBed()) {
            return this;
        }
        List<Reading> all = new ArrayList<>(readings);
        all.add(new Reading(0, 0, 0, Face.BED, "", 0));
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, all, calipers, remarks, scan, unevenness,
            grade);
    }

    /** This board without one touch-off; caliper readings on its line stay. */
    public Board without(Reading reading) {
        return withReadings(readings.stream().filter(other -> !other.equals(reading)).toList());
    }

    /** This board without what was read on one line of its file; see {@link Reading#line}. */
    public Board without(int line) {
        return new Board(name, units, length, width, thickness, species, repeatability, price, target, skim, trim,
            underside, turned, defects, readings.stream().filter(reading -> reading.line() != line).toList(),
            calipers.stream().filter(caliper -> caliper.line() != line).toList(), remarks, scan, unevenness,
            grade);
    }

    /** The stated thickness (mm), or else the thickest caliper reading; empty if there is neither. */
    public OptionalDouble thickest() {
        return thickest(thickness, calipers);
    }

    public static OptionalDouble thickest(OptionalDouble stated, List<CaliperReading> calipers) {
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
            require(defect.liesOn(length, width), "defect lies off the board: ", defect);
        }
        for (Reading reading : readings) {
            require(reading.face() == Face.BED || isOn(reading.x(), reading.y(), length, width),
                "reading lies off the board: ", reading);
        }
        for (CaliperReading caliper : calipers) {
            require(isOn(caliper.x(), caliper.y(), length, width), "caliper reading lies off the board: ", caliper);
        }
    }

    private static void requireSkimLeavesWood(OptionalDouble skim, OptionalDouble thickest) {
        if (skim.isPresent() && thickest.isPresent()) {
            require(2 * skim.getAsDouble() < thickest.getAsDouble(), "skim must be less than half the thickness of "
                + Units.MILLIMETRES.plain(thickest.getAsDouble()) + " mm, got ",
                Units.MILLIMETRES.plain(skim.getAsDouble()) + " mm");
        }
    }

    private static boolean isOn(double x, double y, double length, double width) {
        return x >= 0 && x <= length && y >= 0 && y <= width;
    }

    private static void require(boolean holds, String otherwise, Object found) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise + found);
        }
    }
}
