package outwind.board.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.Fault.Kind;
import outwind.board.LengthReader;
import outwind.board.Price;
import outwind.board.Quantity;
import outwind.board.Reading;
import outwind.board.ScannedFace;
import outwind.board.Trim;
import outwind.board.Turned;
import outwind.board.Underside;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Cell;
import outwind.board.text.Delimiter;
import outwind.board.text.FaultList;
import outwind.board.text.Sheet;

/**
 * Puts a board together from its keys, from what is stated beside the file and from its table, and notes what is
 * missing or does not agree.
 */
final class Assembly {

    /** Share of the length at an end beyond which touch-offs elsewhere hardly tell of it: our choice. */
    private static final double UNTOUCHED = 0.25;

    /** What is thinner and shorter than this in mm is no board to flatten, but may be one in inches: our choice. */
    private static final double CHIP_THICKNESS = 4;
    private static final double CHIP_LENGTH = 240;

    private final Keys<Key> keys;
    private final Defaults given;
    private final LengthReader gauge;
    private final int fewest;
    private final FaultList faults;

    /** @param fewest touch-offs on face A that there must be */
    Assembly(Keys<Key> keys, Defaults given, LengthReader gauge, int fewest, FaultList faults) {
        this.keys = keys;
        this.given = given;
        this.gauge = gauge;
        this.fewest = fewest;
        this.faults = faults;
    }

    /** The board, or every fault found in the file. */
    Board board(Sheet sheet, String defaultName) throws BadBoardFile {
        OptionalDouble statedLength = length();
        OptionalDouble statedWidth = width();
        OptionalDouble thickness = thickness();

        Measurements measured = new Measurements(gauge, statedLength, statedWidth, faults);
        if (Table.read(sheet, gauge.units(), measured, faults)) {
            requireThickness(thickness, measured);
            requireReadings(measured);
        }
        if (measured.fitOnlyExchanged()) {
            refuseExchanged(statedLength.getAsDouble(), statedWidth.getAsDouble(), measured.firstOff());
        } else {
            measured.requireOnBoard();
        }
        refuseHeightsDownwards(measured.readings());

        List<String> remarks = new ArrayList<>();
        remarkOnUnits(remarks);
        if (measured.hasDepths()) {
            remarks.add("Depths count downwards: the numbers are turned round, so that the deepest reading is the lowest.");
        }
        boolean reachTells = sheet.delimiter() == Delimiter.SPACE;
        OptionalDouble length = reachTells ? reach(Quantity.LENGTH, statedLength, measured, remarks) : statedLength;
        OptionalDouble width = reachTells ? reach(Quantity.WIDTH, statedWidth, measured, remarks) : statedWidth;
        requireSide(Key.LENGTH, Quantity.LENGTH, length, measured);
        requireSide(Key.WIDTH, Quantity.WIDTH, width, measured);

        List<Reading> readings = PastedRows.once(measured.readings(), remarks);
        requireDistinct(readings, measured);
        return assembled(defaultName, length, width, thickness, readings, measured.calipers(), remarks,
            Optional.empty());
    }

    /** The length that is stated (mm). */
    OptionalDouble length() {
        return stated(Key.LENGTH, Quantity.LENGTH, given.length());
    }

    /** The width that is stated (mm). */
    OptionalDouble width() {
        return stated(Key.WIDTH, Quantity.WIDTH, given.width());
    }

    /** The thickness that is stated (mm). */
    OptionalDouble thickness() {
        Optional<StatedThickness> stated = statedThickness();
        return stated.isPresent() ? OptionalDouble.of(stated.get().figure()) : OptionalDouble.empty();
    }

    private Optional<StatedThickness> statedThickness() {
        return keys.has(Key.THICKNESS) || given.thickness().isEmpty()
            ? keys.one(Key.THICKNESS, text -> StatedThickness.parse(text, gauge))
            : beside(given.thickness().get(), text -> StatedThickness.parse(text, gauge));
    }

    /** The board with what its keys state, the rest being known; or every fault found in them. */
    Board assembled(String defaultName, OptionalDouble length, OptionalDouble width, OptionalDouble thickness,
            List<Reading> readings, List<CaliperReading> calipers, List<String> remarks, Optional<ScannedFace> scan)
            throws BadBoardFile {
        OptionalDouble thickest = Board.thickest(thickness, calipers);
        Optional<String> name = keys.one(Key.BOARD, text -> Keys.text(Key.BOARD, text));
        Optional<String> species = keys.one(Key.SPECIES, text -> Keys.text(Key.SPECIES, text));
        Optional<String> grade = keys.one(Key.GRADE, text -> Keys.text(Key.GRADE, text));
        OptionalDouble repeatability = size(Key.REPEATABILITY, Quantity.REPEATABILITY);
        Optional<Price> price = keys.one(Key.PRICE, text -> Price.parse(text, gauge.decimalComma()));
        OptionalDouble target = size(Key.TARGET, Quantity.TARGET);
        OptionalDouble skim = optional(keys.one(Key.SKIM, text -> skim(text, thickest)));
        Optional<Trim> trim = keys.one(Key.TRIM, text -> trim(text, length, width));
        Optional<Underside> underside = keys.one(Key.UNDERSIDE, Underside::named);
        Optional<Turned> turned = keys.one(Key.TURNED, Turned::named);
        List<Defect> defects = keys.each(Key.DEFECT, text -> Defect.parse(text, gauge, length, width));

        faults.throwIfAny();
        refuseBareInches(length.getAsDouble(), width.getAsDouble(), thickest);
        if (scan.isEmpty()) {
            remarkOnUntouchedEnds(length.getAsDouble(), readings, remarks);
        }
        if (thickest.isPresent() && thickest.getAsDouble() > width.getAsDouble()) {
            remarks.add("LOOK AGAIN at the sizes: the board is thicker than wide, " + gauge.shown(
                thickest.getAsDouble()) + " by " + gauge.shown(width.getAsDouble()) + ".");
        }
        remarkOnCalipers(thickness, calipers, remarks);
        Board board = new Board(name.orElse(defaultName), gauge.units(), length.getAsDouble(), width.getAsDouble(),
            thickness, species, repeatability, price, target, skim, trim.orElse(Trim.NONE),
            underside.orElse(Underside.ALIKE), turned, defects, readings, calipers, remarks, scan,
            thickness.isPresent() && statedThickness().filter(StatedThickness::everywhere).isPresent() ? 0 : Board.SAWN,
            grade);
        requireTie(board);
        return board;
    }

    private void requireTie(Board board) throws BadBoardFile {
        board.missingTie().ifPresent(missing -> faults.addForFile("face B tied to face A", "too little for that",
            Character.toUpperCase(missing.charAt(0)) + missing.substring(1) + "."));
        faults.throwIfAny();
    }

    /** What the file says, or else what is stated beside it (mm). */
    private OptionalDouble stated(Key key, Quantity quantity, Optional<String> beside) {
        return keys.has(key) || beside.isEmpty() ? size(key, quantity)
            : optional(beside(beside.get(), text -> gauge.read(quantity, text)));
    }

    /** What is stated beside the file; a fault for the file as a whole if it cannot be. */
    private <T> Optional<T> beside(String text, Function<String, T> reader) {
        try {
            return Optional.of(reader.apply(text));
        } catch (BadValue refused) {
            faults.addForFile(refused.expected(), refused.found(), refused.mend());
            return Optional.empty();
        }
    }

    private OptionalDouble size(Key key, Quantity quantity) {
        return optional(keys.one(key, text -> gauge.read(quantity, text)));
    }

    /** Places that lie on the board only if x is y: either the columns or the two sizes are the wrong way round. */
    private void refuseExchanged(double length, double width, Cell firstOff) {
        if (length >= width) {
            faults.add(firstOff, "x along the length and y across", "All readings lie on the board if x and y change"
                + " places: x goes from 0 to " + gauge.shown(length) + ", y from 0 to " + gauge.shown(width)
                + ". Exchange the names of the columns.");
        } else {
            faults.add(keys.place(Key.LENGTH).orElse(firstOff), "length along x and width across", "All readings lie on"
                + " the board if length and width change places: write length " + gauge.units().plain(width)
                + " and width " + gauge.units().plain(length) + ".");
        }
    }

    /** The bed cannot lie above the board. */
    private void refuseHeightsDownwards(List<Reading> readings) {
        Optional<Reading> bed = readings.stream().filter(reading -> reading.face() == Face.BED)
            .min(Comparator.comparingDouble(Reading::z));
        DoubleSummaryStatistics face = readings.stream().filter(reading -> reading.face() != Face.BED)
            .mapToDouble(Reading::z).summaryStatistics();
        if (face.getCount() > 0 && (bed.isPresent() || given.onBed())
                && face.getMax() < bed.map(Reading::z).orElse(0.0)) {
            faults.add(bed.map(Reading::line).orElse(1), 1, "heights measured upwards", "a board below its bed",
                "Turn the sign of every height round, or name their column depth.");
        }
    }

    private void requireThickness(OptionalDouble thickness, Measurements measured) {
        if (!given.onBed() && thickness.isEmpty() && !keys.has(Key.THICKNESS) && measured.calipered() == 0) {
            faults.addForFile(Kind.MISSING_SIZE, "the board's thickness", "nothing", "Add a line such as \"# thickness: "
                + Quantity.THICKNESS.example(gauge.units())
                + "\", or a column named thickness with at least one caliper reading.");
        }
    }

    private void requireReadings(Measurements measured) {
        if (measured.touchedOnA() < fewest) {
            faults.addForFile("at least " + fewest + " touch-offs on face A",
                String.valueOf(measured.touchedOnA()),
                measured.touchedOnA() == 0 ? "Fill in the heights first."
                    : "Touch off more points: fewer than three fix no plane, so there is nothing to judge.");
        }
    }

    /** Rows that were enough may be few once each counts once; where something else is wrong, that may be why. */
    private void requireDistinct(List<Reading> once, Measurements measured) {
        long onA = once.stream().filter(reading -> reading.face() == Face.A).count();
        if (faults.isEmpty() && once.size() < measured.readings().size() && onA < fewest) {
            faults.addForFile("at least " + fewest + " touch-offs on face A that differ", String.valueOf(onA),
                "The other rows repeat these to the last digit: touch off more points.");
        }
    }

    void remarkOnUnits(List<String> remarks) {
        if (!keys.has(Key.UNITS) && given.units().isEmpty()) {
            remarks.add("No units are stated: bare numbers are read in " + gauge.units().symbol() + ".");
        }
    }

    /** Sizes without a unit that make a thin chip in mm and a board in inches: read either way, it might be wrong. */
    private void refuseBareInches(double length, double width, OptionalDouble thickest) throws BadBoardFile {
        boolean isStated = keys.has(Key.UNITS) || given.units().isPresent();
        if (!isStated && thickest.isPresent() && thickest.getAsDouble() < CHIP_THICKNESS && length < CHIP_LENGTH) {
            Optional<Cell> place = keys.place(Key.LENGTH);
            faults.add(place.map(Cell::line).orElse(1), place.map(Cell::column).orElse(1), "the units of a board of "
                + gauge.units().plain(length) + " x " + gauge.units().plain(width) + " x "
                + gauge.units().plain(thickest.getAsDouble()), "nothing", "Add a line \"# units: in\", or \"# units: mm\" if it is as small as that.");
            faults.throwIfAny();
        }
    }

    /** Says where a caliper contradicts the stated thickness: one of the two is most likely misread. */
    private void remarkOnCalipers(OptionalDouble thickness, List<CaliperReading> calipers, List<String> remarks) {
        if (thickness.isEmpty()) {
            return;
        }
        double stated = thickness.getAsDouble();
        calipers.stream().filter(caliper -> Math.abs(caliper.thickness() - stated) > Math.max(2, stated / 10)).findFirst()
            .ifPresent(caliper -> remarks.add("LOOK AGAIN at the thickness: " + gauge.shown(stated) + " is stated, but"
                + " the caliper reads " + gauge.shown(caliper.thickness()) + " in line " + caliper.line()
                + ". The caliper readings are used."));
    }

    /** What lies far beyond the touch-offs is their trend carried on, if it is there at all. */
    private void remarkOnUntouchedEnds(double length, List<Reading> readings, List<String> remarks) {
        DoubleSummaryStatistics touched = readings.stream().filter(reading -> reading.face() == Face.A)
            .mapToDouble(Reading::x).summaryStatistics();
        if (touched.getCount() == 0) {
            return;
        }
        String untouched = length - touched.getMax() > UNTOUCHED * length ? "beyond x " + gauge.shown(touched.getMax())
            : touched.getMin() > UNTOUCHED * length ? "before x " + gauge.shown(touched.getMin()) : "";
        if (!untouched.isEmpty()) {
            remarks.add("LOOK AGAIN at the length: nothing was touched off " + untouched + " of "
                + gauge.shown(length) + ". What is said of that part only carries the rest on, and may be far off.");
        }
    }

    /**
     * The stated size, or else how far the readings reach along that side, said in a remark. Readings that begin below
     * 0 show that the board's corner is not the origin, so that their reach tells nothing.
     */
    private OptionalDouble reach(Quantity side, OptionalDouble stated, Measurements measured, List<String> remarks) {
        DoubleSummaryStatistics places = places(side, measured);
        if (stated.isPresent() || places.getMin() < 0 || !side.admits(places.getMax())) {
            return stated;
        }
        remarks.add("No " + side.word() + " is stated: " + gauge.shown(places.getMax())
            + " is taken, which is as far as the readings reach.");
        return OptionalDouble.of(places.getMax());
    }

    private void requireSide(Key key, Quantity side, OptionalDouble known, Measurements measured) {
        if (known.isEmpty() && !keys.has(key)) {
            faults.addForFile(Kind.MISSING_SIZE, "the board's " + side.word(), "nothing", "Add a line such as \"# " + key.word() + ": "
                + side.example(gauge.units()) + "\"" + reachInWords(side, measured) + ".");
        }
    }

    private String reachInWords(Quantity side, Measurements measured) {
        DoubleSummaryStatistics places = places(side, measured);
        return places.getCount() == 0 ? "" : "; the readings reach from " + axis(side) + " = "
            + gauge.units().plain(places.getMin()) + " to " + gauge.shown(places.getMax());
    }

    private static String axis(Quantity side) {
        return side == Quantity.LENGTH ? Quantity.X.word() : Quantity.Y.word();
    }

    private static DoubleSummaryStatistics places(Quantity side, Measurements measured) {
        ToDoubleFunction<Reading> place = side == Quantity.LENGTH ? Reading::x : Reading::y;
        return measured.readings().stream().filter(reading -> reading.face() != Face.BED)
            .mapToDouble(place).summaryStatistics();
    }

    private double skim(String text, OptionalDouble thickest) {
        double skim = gauge.read(Quantity.SKIM, text);
        if (thickest.isPresent() && 2 * skim >= thickest.getAsDouble()) {
            throw new BadValue("skim less than half the thickness of " + gauge.shown(thickest.getAsDouble()), text,
                "The skim comes off both faces and must leave wood between them.");
        }
        return skim;
    }

    private Trim trim(String text, OptionalDouble length, OptionalDouble width) {
        Trim trim = Trim.parse(text, gauge);
        if (length.isPresent() && width.isPresent() && !trim.leavesWoodOf(length.getAsDouble(), width.getAsDouble())) {
            throw new BadValue("trim that leaves wood of " + gauge.units().plain(length.getAsDouble()) + " x "
                + gauge.shown(width.getAsDouble()), text, "The trim comes off each end and each edge; lessen it.");
        }
        return trim;
    }

    private static OptionalDouble optional(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
