package outwind.report.words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import outwind.board.Units;
import outwind.stock.Pack;
import outwind.stock.PackWorth;
import outwind.stock.PricedBoard;

/**
 * What is said of a pack of which only some boards were measured.
 *
 * @param verdict how many make it
 * @param details what else there is to say, one paragraph each
 */
public record PackSheet(String verdict, List<String> details) {

    /** More names than this nobody reads. */
    private static final int MOST_NAMES = 5;

    private static final double CUBIC_METRE = 1e9;

    /** @param currency label of the money, perhaps empty */
    public static PackSheet of(Pack pack, String currency, Figures figures) {
        List<String> details = new ArrayList<>();
        details.add(Figures.count(pack.measured().size(), "board was", "boards were") + " measured. The figures hold only"
            + " if those were taken as they came, not picked.");
        details.add("A board of this pack is about " + span(pack.rough(), figures) + " rough. It loses "
            + span(pack.loss(), figures) + " until both faces are flat.");
        details.add(settled(pack));
        pack.worth().ifPresent(worth -> details.addAll(worth(worth, currency, figures)));
        return new PackSheet("Of the " + pack.size() + " boards of the pack about "
            + Figures.decimals(pack.expected(), 0) + " should make " + figures.length(pack.target()) + ", "
            + range(pack) + " (90\u00a0%).", details);
    }

    private static String range(Pack pack) {
        return pack.low() == pack.high() ? "no more and no fewer" : pack.low() + " to " + pack.high();
    }

    private static String span(Pack.Span span, Figures figures) {
        return figures.length(span.median()) + " (" + figures.number(span.low()) + " to " + figures.number(span.high())
            + ")";
    }

    private static String settled(Pack pack) {
        List<PricedBoard> doubtful = pack.doubtful();
        String within = "within a tenth of the pack";
        String boards = pack.more().isEmpty()
            ? "More boards alone will not bring the number " + within + "."
            : pack.more().getAsInt() == 0 ? "That is settled: the number is known " + within + "."
            : "Measure " + Figures.count(pack.more().getAsInt(), "more board", "more boards")
                + ", taken as they come, to know the number " + within + ".";
        return doubtful.isEmpty() ? boards : boards + " Readings leave in doubt: " + doubtful.stream().limit(MOST_NAMES)
            .map(PricedBoard::name).collect(Collectors.joining(", "))
            + (doubtful.size() > MOST_NAMES ? " and " + (doubtful.size() - MOST_NAMES) + " more" : "")
            + ". Read " + (doubtful.size() == 1 ? "it" : "these") + " at more places.";
    }

    private static List<String> worth(PackWorth worth, String currency, Figures figures) {
        List<String> details = new ArrayList<>();
        details.add("Its finished boards should bring about " + money(worth.takings(), currency) + ", "
            + worth.takingsLow().toPlainString() + " to " + money(worth.takingsHigh(), currency) + " (90\u00a0%). "
            + worth.labour().map(labour -> "Flattening costs about " + money(labour, currency) + ".")
                .orElse("Flattening is not counted: no shop rate or no cutter is stated."));
        if (worth.bid().signum() == 0) {
            details.add("At these figures no bid leaves " + (worth.terms().profit() > 0
                ? Figures.percent(worth.terms().profit()) + " of that." : "anything."));
            return details;
        }
        String left = worth.terms().profit() > 0
            ? "is left " + Figures.percent(worth.terms().profit()) + " of that" : "loses nothing";
        details.add("Who bids " + money(worth.bid(), currency) + each(worth, worth.bid(), currency, figures) + " " + left
            + " on average. At " + money(worth.sureBid(), currency) + each(worth, worth.sureBid(), currency, figures)
            + " the chance of that is 90\u00a0%.");
        worth.asked().ifPresent(asked -> details.add("At the prices of the boards the pack costs about "
            + money(asked, currency) + ". The chance of that profit is then " + Figures.chance(worth.reached()
                .orElseThrow()) + "."));
        return details;
    }

    /** The same for each board foot or cubic metre of rough wood. */
    private static String each(PackWorth worth, BigDecimal bid, String currency, Figures figures) {
        boolean inches = figures.units() == Units.INCHES;
        double amount = bid.doubleValue() / (inches ? worth.boardFeet() : worth.volume() / CUBIC_METRE);
        return " (" + Figures.money(Figures.decimals(amount, 2), currency)
            + (inches ? " per board foot)" : " per m³)");
    }

    private static String money(BigDecimal amount, String currency) {
        return Figures.money(amount.toPlainString(), currency);
    }
}
