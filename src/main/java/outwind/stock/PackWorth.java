package outwind.stock;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import outwind.board.Price;
import outwind.flatten.Verdict;

/**
 * What a pack is worth to somebody who sells finished boards, and what to bid for it.
 *
 * <pre>
 *   bid = takings·(1 − profit) − labour      on average, and as much as nine packs in ten leave
 * </pre>
 * Money is the label's of the price of finished boards, to two places.
 *
 * @param terms       on which it would be bought
 * @param takings     what its finished boards bring, on average
 * @param takingsLow  one pack in twenty brings less
 * @param takingsHigh one pack in twenty brings more
 * @param labour      flattening, on average; empty where no shop rate or no cutter is known
 * @param bid         most to bid, so that the profit is left on average
 * @param sureBid     most to bid, so that the profit is left with a chance of 90 %
 * @param asked       what it costs at the prices of the measured boards; empty unless all are known
 * @param reached     chance that the profit is left at that price
 * @param boardFeet   rough board feet of the pack by volume, going by the measured boards
 * @param volume      rough volume of the pack (mm³), going by the measured boards
 */
public record PackWorth(Terms terms, BigDecimal takings, BigDecimal takingsLow, BigDecimal takingsHigh,
        Optional<BigDecimal> labour, BigDecimal bid, BigDecimal sureBid, Optional<BigDecimal> asked,
        Optional<Double> reached, double boardFeet, double volume) {

    /**
     * On what terms a pack is bought.
     *
     * @param finished what finished boards bring
     * @param profit   share of what they bring that is to be left, 0 to 1
     * @param rate     of an hour of flattening
     */
    public record Terms(Price finished, double profit, Optional<BigDecimal> rate) { }

    /** What may come of a pack, draw by draw. */
    static final class Ledger {

        private final List<PricedBoard> measured;
        private final int size;
        // How many boards of each measured board's size make it, and how many are worked, in each draw.
        private final int[][] made;
        private final int[][] all;
        private int draw;

        Ledger(List<PricedBoard> measured, int size, int draws) {
            this.measured = measured;
            this.size = size;
            this.made = new int[draws][measured.size()];
            this.all = new int[draws][measured.size()];
        }

        void enter(boolean[] makes, int[] like) {
            for (int i = 0; i < makes.length; i++) {
                made[draw][like[i]] += makes[i] ? 1 : 0;
                all[draw][like[i]]++;
            }
            draw++;
        }

        PackWorth worth(Terms terms) {
            boolean timed = terms.rate.isPresent()
                && measured.stream().allMatch(board -> board.minutes().isPresent());
            double[] brings = measured.stream().mapToDouble(board -> brings(board, terms.finished)).toArray();
            // Nobody flattens a board that is sure to fail.
            double[] work = measured.stream().mapToDouble(board -> timed && board.verdict() != Verdict.NO
                ? board.minutes().getAsDouble() / 60 * terms.rate.get().doubleValue() : 0).toArray();
            double[] takings = new double[draw];
            double[] bids = new double[draw];
            double labour = 0;
            for (int d = 0; d < draw; d++) {
                double worked = 0;
                for (int j = 0; j < brings.length; j++) {
                    takings[d] += made[d][j] * brings[j];
                    worked += all[d][j] * work[j];
                }
                labour += worked / draw;
                bids[d] = takings[d] * (1 - terms.profit) - worked;
            }
            Arrays.sort(takings);
            Arrays.sort(bids);
            double whole = size / (double) measured.size();
            Optional<BigDecimal> asked = measured.stream().allMatch(board -> board.wood().isPresent())
                ? Optional.of(money(whole * measured.stream().mapToDouble(board -> board.wood().get().doubleValue())
                    .sum())) : Optional.empty();
            return new PackWorth(terms, money(mean(takings)), money(takings[draw / 20]),
                money(takings[draw - 1 - draw / 20]), timed ? Optional.of(money(labour)) : Optional.empty(),
                money(Math.max(0, mean(bids))), money(Math.max(0, bids[draw / 10])), asked,
                asked.map(price -> Arrays.stream(bids).filter(bid -> bid >= price.doubleValue()).count()
                    / (double) draw), whole * measured.stream().mapToDouble(board -> board.feet().exact()).sum(),
                whole * measured.stream().mapToDouble(PricedBoard::roughVolume).sum());
        }

        private static double brings(PricedBoard board, Price price) {
            // A cubic foot is twelve board feet.
            return price.amount().doubleValue() * Rates.counted(price.per(),
                board.finishedVolume() / Rates.CUBIC_FOOT * 12, board.finishedVolume(), board.finishedArea());
        }

        private static double mean(double[] values) {
            return Arrays.stream(values).average().orElseThrow();
        }

        private static BigDecimal money(double amount) {
            return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_EVEN);
        }
    }
}
