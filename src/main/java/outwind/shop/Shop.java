package outwind.shop;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a shop has and how it works, stated once for all boards.
 *
 * @param bed     what the machine reaches, if it is known
 * @param cutters those at hand; empty if none is known
 * @param clamps  height of the clamps above the bed (mm)
 * @param stops   height of the stops above the bed (mm)
 * @param shims   thicknesses at hand (mm), ascending
 * @param wedge   tapered shims, if those are used
 * @param rate    price of an hour of the machine
 * @param skim    usual depth to come off each rough face (mm)
 * @param push    that a board has to stand (N)
 * @param sled    what carries the board where that is not the machine's bed
 * @param limits  of the saw, where blanks are cut
 */
public record Shop(Optional<BedSize> bed, List<Cutter> cutters, OptionalDouble clamps,
                   OptionalDouble stops, List<Double> shims, Optional<Wedge> wedge, Optional<BigDecimal> rate,
                   OptionalDouble skim, OptionalDouble push, Optional<Sled> sled, SawLimits limits) {

    /** Nothing is known of the shop. */
    public static final Shop UNKNOWN = new Shop(Optional.empty(), List.of(), OptionalDouble.empty(),
        OptionalDouble.empty(), List.of(), Optional.empty(), Optional.empty(), OptionalDouble.empty(),
        OptionalDouble.empty(), Optional.empty(), SawLimits.NONE);

    public Shop {
        cutters = List.copyOf(cutters);
        shims = shims.stream().sorted().toList();
    }

    /** The same with other cutters. */
    public Shop with(List<Cutter> others) {
        return new Shop(bed, others, clamps, stops, shims, wedge, rate, skim, push, sled, limits);
    }

    /** The same with another bed. */
    public Shop with(BedSize other) {
        return new Shop(Optional.of(other), cutters, clamps, stops, shims, wedge, rate, skim, push, sled, limits);
    }

    /** The same on a sled. */
    public Shop on(Sled other) {
        return new Shop(bed, cutters, clamps, stops, shims, wedge, rate, skim, push, Optional.of(other), limits);
    }

    /** The same with clamps of another height (mm). */
    public Shop withClamps(double height) {
        return new Shop(bed, cutters, OptionalDouble.of(height), stops, shims, wedge, rate, skim, push, sled, limits);
    }

    /** The same with tapered shims. */
    public Shop withWedges(Wedge wedges) {
        return new Shop(bed, cutters, clamps, stops, shims, Optional.of(wedges), rate, skim, push, sled, limits);
    }

    /** Cutters that are run in rows over the board; none where the board goes through a planer. */
    public List<Cutter> cuttersInRows() {
        return sled.filter(Sled.PLANER::equals).isPresent() ? List.of() : cutters;
    }

    /** What the board lies on while it is cut, in words. */
    public String bedInWords() {
        return sled.map(Sled::words).orElse("the bed");
    }
}
