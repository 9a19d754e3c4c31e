package outwind.cli.option;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import outwind.board.Price;
import outwind.stock.Pack;
import outwind.stock.PackWorth;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;
import outwind.stock.Surfaced;
import outwind.stock.Uses;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The boards are a sample of a pack, and what its finished boards are sold for. */
public final class PackOptions {

    @Option(names = "--pack", paramLabel = "NUMBER",
        description = "The boards are a sample of a pack of so many: what the whole pack holds, and what to bid.")
    private Integer size;

    @Option(names = "--sells", paramLabel = "PRICE", converter = PriceConverter.class,
        description = "What finished boards bring: \"70 EUR per m2\", \"12 per bf\"; once for all targets, or once for each.")
    private List<Price> sells = List.of();

    @Option(names = "--profit", paramLabel = "PERCENT", converter = ShareConverter.class,
        description = "Share of what the finished boards bring that is to be left (usually 0 %%).")
    private Double profit;

    @Option(names = "--surfaced", paramLabel = "hardwood|softwood", converter = StandardConverter.class,
        description = "Compare the standard surfaced thicknesses that the boards may make.")
    private Surfaced surfaced;

    /**
     * What is asked for in vain, as a sentence.
     *
     * @param targets how many are stated
     */
    public Optional<String> fault(int targets) {
        return surfaced != null && targets > 1 ? Optional.of("state several targets or --surfaced, not both")
            : size == null && (!sells.isEmpty() && targets < 2 && surfaced == null || profit != null)
            ? Optional.of("--sells and --profit go with --pack, and --sells with several targets")
            : sells.size() > 1 && sells.size() != targets ? Optional.of("state --sells once, or once for each target")
            : profit != null && sells.isEmpty() ? Optional.of("--profit needs --sells, the price of finished boards")
            : profit != null && profit >= 1 ? Optional.of("--profit must be below 100 %") : Optional.empty();
    }

    /** True if anything was said of a pack. */
    public boolean isGiven() {
        return size != null || !sells.isEmpty() || profit != null || surfaced != null;
    }

    /** Labels of the money that finished boards bring, some perhaps empty. */
    public List<String> currencies() {
        return sells.stream().map(Price::currency).toList();
    }

    /**
     * What the boards may be used for; empty unless there are several targets.
     *
     * @param targets thicknesses (mm)
     * @throws IllegalArgumentException if there are too many
     */
    public Optional<Uses> uses(Stack stack, List<Double> targets) {
        List<Double> compared = surfaced != null ? surfaced.within(stack) : targets;
        return surfaced == null && targets.size() < 2 ? Optional.empty() : Optional.of(new Uses(stack,
            IntStream.range(0, compared.size()).mapToObj(i -> new Uses.Aim(compared.get(i), price(i))).toList(),
            Optional.ofNullable(surfaced)));
    }

    private Optional<Price> price(int target) {
        return sells.isEmpty() ? Optional.empty() : Optional.of(sells.get(Math.min(target, sells.size() - 1)));
    }

    /**
     * The pack that the boards are a sample of, if they are.
     *
     * @param rate of an hour of flattening, if it is known
     * @throws IllegalArgumentException if they cannot be a sample of such a pack
     */
    public Optional<Pack> pack(List<PricedBoard> measured, Optional<BigDecimal> rate, long seed) {
        return size == null ? Optional.empty() : Optional.of(Pack.of(measured, size, price(0).map(price ->
            new PackWorth.Terms(price, profit == null ? 0 : profit, rate)), seed));
    }

    /** Reads whose standard thicknesses are meant. */
    static final class StandardConverter implements ITypeConverter<Surfaced> {

        @Override
        public Surfaced convert(String text) {
            return Arrays.stream(Surfaced.values()).filter(one -> one.word().equalsIgnoreCase(text.strip())).findFirst()
                .orElseThrow(() -> new TypeConversionException("expected hardwood or softwood but found \"" + text + "\""));
        }
    }
}
