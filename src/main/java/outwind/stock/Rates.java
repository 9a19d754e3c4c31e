package outwind.stock;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.Price;
import outwind.board.PriceUnit;

/**
 * What wood and work cost. Money is decimal, and each board's cost is rounded to two places once, so that a column of
 * costs adds up to its total.
 *
 * @param price     of boards whose file states none
 * @param shopRate  for an hour of cutting
 */
public record Rates(Optional<Price> price, Optional<BigDecimal> shopRate) {

    /** mm³ in a cubic foot of exactly 304.8 mm. */
    static final double CUBIC_FOOT = 304.8 * 304.8 * 304.8;

    /** mm² in a square foot of exactly 304.8 mm a side. */
    public static final double SQUARE_FOOT = 304.8 * 304.8;

    private static final BigDecimal MINUTES_AN_HOUR = BigDecimal.valueOf(60);

    /** Label of the money that a board is priced in; empty if it has no price or the price no label. */
    public String currencyOf(Board board) {
        return board.price().or(() -> price).map(Price::currency).orElse("");
    }

    /**
     * What is paid for a board, to two places; empty if its price is not known.
     *
     * @param rough volume (mm³)
     */
    Optional<BigDecimal> woodOf(Board board, BoardFeet feet, double rough) {
        return exactly(board, feet, rough).map(price -> price.setScale(2, RoundingMode.HALF_UP));
    }

    /**
     * Cost of a board and of cutting it.
     *
     * @param rough   volume (mm³)
     * @param minutes of cutting, if they are known
     * @return the cost to two places; empty if its price is not known, for then cutting alone would make it look cheap
     */
    Optional<BigDecimal> costOf(Board board, BoardFeet feet, double rough, OptionalDouble minutes) {
        Optional<BigDecimal> work = shopRate.filter(rate -> minutes.isPresent())
            .map(rate -> rate.multiply(BigDecimal.valueOf(minutes.getAsDouble()))
            .divide(MINUTES_AN_HOUR, 10, RoundingMode.HALF_EVEN));
        return exactly(board, feet, rough)
            .map(price -> price.add(work.orElse(BigDecimal.ZERO)).setScale(2, RoundingMode.HALF_UP));
    }

    private Optional<BigDecimal> exactly(Board board, BoardFeet feet, double rough) {
        return board.price().or(() -> price).map(known -> known.amount().multiply(
            BigDecimal.valueOf(counted(known.per(), feet.paid(), rough, board.length() * board.width()))));
    }

    /**
     * How many of what a price is asked for a board has.
     *
     * @param boardFeet as the price counts them
     * @param volume    mm³
     * @param area      mm²
     */
    static double counted(PriceUnit per, double boardFeet, double volume, double area) {
        return switch (per) {
            case BOARD_FOOT -> boardFeet;
            case CUBIC_FOOT -> volume / CUBIC_FOOT;
            case CUBIC_METRE -> volume / 1e9;
            case SQUARE_METRE -> area / 1e6;
            case SQUARE_FOOT -> area / SQUARE_FOOT;
            case BOARD -> 1;
        };
    }
}
