package outwind.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import outwind.blanks.BlankPlaces;
import outwind.blanks.CutOrder;
import outwind.blanks.Piece;
import outwind.blanks.Sections;
import outwind.blanks.TwoStage;

/**
 * Patterns of one board by the two nested programmes, in both orders of cutting. What follows from the places of its
 * blanks is set up once; and a search for prices at which quantities hold begins where the last one ended.
 */
final class BoardYield implements Yield {

    /** Steps in which a pattern with all that is wanted is looked for before labels are. */
    private static final int STEPS = 25;

    private final List<Piece> pieces;
    private final double[] areas;
    private final Map<CutOrder, Sections> sections = new EnumMap<>(CutOrder.class);
    private final Map<CutOrder, double[]> last = new EnumMap<>(CutOrder.class);

    /** @param places with a chance of 0 or 1: a blank counts or does not */
    BoardYield(BlankPlaces places) {
        this(places.pieces(), places.bill().areas(), places.sections(CutOrder.CROSSCUT_FIRST),
            places.sections(CutOrder.RIP_FIRST));
    }

    /** @param areas of a blank of each item (mm²) */
    BoardYield(List<Piece> pieces, double[] areas, Sections crosscut, Sections rip) {
        this.pieces = List.copyOf(pieces);
        this.areas = areas.clone();
        sections.put(CutOrder.CROSSCUT_FIRST, crosscut);
        sections.put(CutOrder.RIP_FIRST, rip);
        for (CutOrder order : CutOrder.values()) {
            last.put(order, new double[areas.length]);
        }
    }

    @Override
    public Offer best(double[] prices, int[] wanted, int steps) {
        double[] worth = prices.clone();
        for (int i = 0; i < worth.length; i++) {
            worth[i] = wanted[i] > 0 ? worth[i] : 0;
        }
        Offer best = new Offer(Pattern.of(CutOrder.CROSSCUT_FIRST, List.of(), List.of(), wanted.length), 0);
        for (CutOrder order : CutOrder.values()) {
            double[] from = last.get(order).clone();
            for (int i = 0; i < from.length; i++) {
                from[i] = Math.min(from[i], worth[i]);
            }
            TwoStage stage = TwoStage.priced(sections.get(order), worth, wanted, from, steps);
            last.put(order, stage.prices());
            Pattern pattern = pattern(stage.first(), order, wanted);
            boolean better = pattern.worth(prices) > best.pattern().worth(prices);
            best = new Offer(better ? pattern : best.pattern(), Math.max(best.bound(), stage.first().bound()));
        }
        return best;
    }

    @Override
    public Pattern own(int[] wanted, double[] worth, boolean whole) {
        Pattern best = Pattern.of(CutOrder.CROSSCUT_FIRST, List.of(), List.of(), wanted.length);
        for (CutOrder order : CutOrder.values()) {
            TwoStage stage = TwoStage.priced(sections.get(order), worth, wanted);
            double reached = best.worth(worth);
            if (stage.first().bound() > reached) {
                Pattern pattern = pattern(whole ? stage.searched(reached) : stage.glimpsed(), order, wanted);
                best = pattern.worth(worth) > reached ? pattern : best;
            }
        }
        return best;
    }

    @Override
    public Optional<Pattern> whole(int[] wanted) {
        double all = 0;
        for (int i = 0; i < wanted.length; i++) {
            all += areas[i] * wanted[i];
        }
        for (CutOrder order : CutOrder.values()) {
            TwoStage stage = TwoStage.priced(sections.get(order), areas, wanted, new double[wanted.length], STEPS);
            if (stage.first().bound() < all * (1 - 1e-9)) {
                continue;
            }
            Pattern pattern = pattern(stage.first(), order, wanted);
            if (!Arrays.equals(pattern.counts(), wanted)) {
                pattern = pattern(stage.glimpsed(), order, wanted);
            }
            if (Arrays.equals(pattern.counts(), wanted)) {
                return Optional.of(pattern);
            }
        }
        return Optional.empty();
    }

    @Override
    public Optional<List<Pattern>> every(int[] wanted) {
        List<Pattern> all = new ArrayList<>();
        for (CutOrder order : CutOrder.values()) {
            Optional<List<List<TwoStage.Spot>>> ways = EveryPattern.of(sections.get(order), wanted);
            if (ways.isEmpty()) {
                return Optional.empty();
            }
            ways.get().forEach(spots -> all.add(pattern(spots, order, wanted)));
        }
        List<Pattern> kept = new ArrayList<>();
        for (Pattern pattern : all) {
            if (kept.stream().noneMatch(other -> EveryPattern.hasAll(other.counts(), pattern.counts()))) {
                kept.removeIf(other -> EveryPattern.hasAll(pattern.counts(), other.counts()));
                kept.add(pattern);
            }
        }
        return Optional.of(kept);
    }

    private Pattern pattern(TwoStage.Cutting cutting, CutOrder order, int[] wanted) {
        return pattern(cutting.spots(), order, wanted);
    }

    private Pattern pattern(List<TwoStage.Spot> spots, CutOrder order, int[] wanted) {
        return Pattern.of(order, spots, spots.stream()
            .map(spot -> pieces.get(spot.piece()).item()).toList(), wanted.length).atMost(wanted);
    }
}
