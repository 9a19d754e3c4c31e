package outwind.cli.option;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import outwind.board.Price;
import outwind.stock.Pack;
import outwind.stock.PackWorth;
import outwind.stock.PricedBoard;
import picocli.CommandLine.Option;

/** The boards are a sample of a pack, and what its finished boards are sold for. */
public final class PackOptions {

    @Option(names = "--pack", paramLabel = "NUMBER",
        description = "The boards are a sample of a pack of so many: what the whole pack holds, and what to bid.")
    private Integer size;

    @Option(names = "--sells", paramLabel = "PRICE", converter = PriceConverter.class,
        description = "What finished boards bring: \"70 EUR per m2\", \"12 per bf\".")
    private Price sells;

    @Option(names = "--profit", paramLabel = "PERCENT", converter = ShareConverter.class,
        description = "Share of what the finished boards bring that is to be left (usually 0 %%).")
    private Double profit;

    /** What is asked for in vain, as a sentence. */
    public Optional<String> fault() {
        return size == null && (sells != null || profit != null) ? Optional.of("--sells and --profit go with --pack")
            : profit != null && sells == null ? Optional.of("--profit needs --sells, the price of finished boards")
            : profit != null && profit >= 1 ? Optional.of("--profit must be below 100 %") : Optional.empty();
    }

    /** Label of the money that finished boards bring, perhaps empty. */
    public String currency() {
        return sells == null ? "" : sells.currency();
    }

    /**
     * The pack that the boards are a sample of, if they are.
     *
     * @param rate of an hour of flattening, if it is known
     * @throws IllegalArgumentException if they cannot be a sample of such a pack
     */
    public Optional<Pack> pack(List<PricedBoard> measured, Optional<BigDecimal> rate, long seed) {
        return size == null ? Optional.empty() : Optional.of(Pack.of(measured, size, Optional.ofNullable(sells).map(price ->
            new PackWorth.Terms(price, profit == null ? 0 : profit, rate)), seed));
    }
}
