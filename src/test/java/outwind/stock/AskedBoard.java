package outwind.stock;

import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A board that answers like another, keeps the prices that it was asked at, and may know less.
 *
 * @param asked prices at which its best pattern was asked for
 * @param alone whether it was asked long for what it gives alone, where that was asked
 * @param loose what its bounds are too high by, as a factor
 * @param blind whether it finds no pattern at any prices
 */
record AskedBoard(ListedBoard board, Queue<double[]> asked, Set<Boolean> alone, double loose, boolean blind)
    implements Yield {

    AskedBoard(ListedBoard board, Queue<double[]> asked, double loose, boolean blind) {
        this(board, asked, ConcurrentHashMap.newKeySet(), loose, blind);
    }

    @Override
    public Offer best(double[] prices, int[] wanted, int steps) {
        asked.add(prices.clone());
        Offer offer = board.best(prices, wanted, steps);
        return new Offer(blind ? ListedBoard.pattern(new int[wanted.length]) : offer.pattern(),
            offer.bound() * loose);
    }

    @Override
    public Pattern own(int[] wanted, double[] worth, boolean whole) {
        alone.add(whole);
        return board.own(wanted, worth, whole);
    }

    @Override
    public Optional<Pattern> whole(int[] wanted) {
        return board.whole(wanted);
    }

    @Override
    public Optional<List<Pattern>> every(int[] wanted) {
        return board.every(wanted);
    }
}
