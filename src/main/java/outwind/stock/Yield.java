package outwind.stock;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import outwind.blanks.CutOrder;
import outwind.blanks.TwoStage;

/** What one board can be cut into. */
interface Yield {

    /**
     * A way to cut a board.
     *
     * @param order  which cuts go right through
     * @param spots  where the blanks lie
     * @param items  the item that each of them is of
     * @param counts blanks of each item
     */
    public record Pattern(CutOrder order, List<TwoStage.Spot> spots, List<Integer> items, int[] counts) {

        public static Pattern of(CutOrder order, List<TwoStage.Spot> spots, List<Integer> items, int kinds) {
            int[] counts = new int[kinds];
            items.forEach(item -> counts[item]++);
            return new Pattern(order, spots, items, counts);
        }

        /** The same without what is too much of an item. */
        Pattern atMost(int[] wanted) {
            int[] left = wanted.clone();
            List<Integer> kept = IntStream.range(0, spots.size()).filter(s -> left[items.get(s)]-- > 0).boxed()
                .toList();
            return of(order, kept.stream().map(spots::get).toList(), kept.stream().map(items::get).toList(),
                wanted.length);
        }

        /** What it brings at prices of the items. */
        double worth(double[] prices) {
            double worth = 0;
            for (int i = 0; i < counts.length; i++) {
                worth += prices[i] * counts[i];
            }
            return worth;
        }
    }

    /**
     * The best pattern found at some prices.
     *
     * @param bound no pattern within the quantities is worth more at these prices
     */
    record Offer(Pattern pattern, double bound) { }

    /**
     * A pattern of great worth.
     *
     * @param prices of the items, none below zero
     * @param wanted how often each item at most
     * @param steps  how long to look at quantities that bind, in steps of the relaxation
     */
    Offer best(double[] prices, int[] wanted, int steps);

    /**
     * The pattern that is cut where no other board is thought of.
     *
     * @param wanted how often each item at most
     * @param worth  of a blank of each item
     * @param whole  whether to search as long as for a board alone
     */
    Pattern own(int[] wanted, double[] worth, boolean whole);

    /** A pattern with all that is wanted, if one is found. */
    Optional<Pattern> whole(int[] wanted);

    /** Every pattern that no other betters within the quantities; empty if there are too many to list. */
    Optional<List<Pattern>> every(int[] wanted);
}
