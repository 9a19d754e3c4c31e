package outwind.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts a board together in code, one fact at a time; {@link #build} checks them all. Lengths in mm; x runs along the
 * grain, y across, z up. Not for use by several threads at once.
 */
public final class BoardBuilder {

    private final String name;
    private final double length;
    private final double width;
    private final List<Reading> readings = new ArrayList<>();
    private final List<CaliperReading> calipers = new ArrayList<>();
    private final List<Defect> defects = new ArrayList<>();
    private Units units = Units.MILLIMETRES;
    private OptionalDouble thickness = OptionalDouble.empty();
    private OptionalDouble target = OptionalDouble.empty();
    private OptionalDouble skim = OptionalDouble.empty();
    private OptionalDouble repeatability = OptionalDouble.empty();
    private Optional<String> species = Optional.empty();
    private Optional<String> grade = Optional.empty();
    private Optional<Turned> turned = Optional.empty();
    private Underside underside = Underside.ALIKE;

    BoardBuilder(String name, double length, double width) {
        this.name = name;
        this.length = length;
        this.width = width;
    }

    /**
     * Adds a reading of face A.
     *
     * @param x place along the grain (mm)
     * @param y place across (mm)
     * @param z height (mm), positive up, from any one zero
     * @return this builder
     */
    public BoardBuilder reading(double x, double y, double z) {
        return reading(Face.A, x, y, z);
    }

    /**
     * Adds a reading of a face, or of the bed.
     *
     * @param face what was read; face B needs {@link #turned} and three caliper readings
     * @param x    place along the grain (mm), as it lies when that face is up
     * @param y    place across (mm)
     * @param z    height (mm), positive up
     * @return this builder
     */
    public BoardBuilder reading(Face face, double x, double y, double z) {
        readings.add(new Reading(x, y, z, face, "", 0));
        return this;
    }

    /**
     * Adds a caliper reading.
     *
     * @param x              place along the grain (mm)
     * @param y              place across (mm)
     * @param roughThickness face to face (mm)
     * @return this builder
     */
    public BoardBuilder caliper(double x, double y, double roughThickness) {
        calipers.add(new CaliperReading(x, y, roughThickness, 0));
        return this;
    }

    /**
     * Adds wood of no use.
     *
     * @param defect a rectangle on the board
     * @return this builder
     */
    public BoardBuilder defect(Defect defect) {
        defects.add(defect);
        return this;
    }

    /**
     * States the thickness of the rough board.
     *
     * @param roughThickness one caliper reading at a place that nobody wrote down (mm)
     * @return this builder
     */
    public BoardBuilder thickness(double roughThickness) {
        thickness = OptionalDouble.of(roughThickness);
        return this;
    }

    /**
     * States what it should finish at.
     *
     * @param finishedThickness in mm
     * @return this builder
     */
    public BoardBuilder target(double finishedThickness) {
        target = OptionalDouble.of(finishedThickness);
        return this;
    }

    /**
     * States the least depth to come off everywhere on a rough face.
     *
     * @param depth in mm, not negative
     * @return this builder
     */
    public BoardBuilder skim(double depth) {
        skim = OptionalDouble.of(depth);
        return this;
    }

    /**
     * States how well two readings of one place agree.
     *
     * @param deviation standard deviation of one reading (mm)
     * @return this builder
     */
    public BoardBuilder repeatability(double deviation) {
        repeatability = OptionalDouble.of(deviation);
        return this;
    }

    /**
     * Names the wood, from which its stiffness and weight follow.
     *
     * @param wood as in a board file, for instance {@code white oak}
     * @return this builder
     */
    public BoardBuilder species(String wood) {
        species = Optional.of(wood);
        return this;
    }

    /**
     * States what the board was sorted as, for cutting bills that ask for it.
     *
     * @param sorted as in a board file, for instance {@code select}
     * @return this builder
     */
    public BoardBuilder grade(String sorted) {
        grade = Optional.of(sorted);
        return this;
    }

    /**
     * Says how the board was turned over before face B was read.
     *
     * @param way along its length or end over end
     * @return this builder
     */
    public BoardBuilder turned(Turned way) {
        turned = Optional.of(way);
        return this;
    }

    /**
     * Says what is known of the face that lies on the bed; without a word it is taken to be shaped like the other.
     *
     * @param shape flat, or like face A
     * @return this builder
     */
    public BoardBuilder underside(Underside shape) {
        underside = shape;
        return this;
    }

    /**
     * Names the unit that reports are written in; what is given to this builder stays in mm.
     *
     * @param written mm or inches
     * @return this builder
     */
    public BoardBuilder units(Units written) {
        units = written;
        return this;
    }

    /**
     * Makes the board.
     *
     * @return a board of what was stated so far
     * @throws IllegalArgumentException if these are not the figures of any board; the message names the one at fault
     */
    public Board build() {
        return new Board(name, units, length, width, thickness, species, repeatability, Optional.empty(), target, skim,
            Trim.NONE, underside, turned, defects, readings, calipers, List.of(), Optional.empty(), Board.SAWN, grade);
    }
}
