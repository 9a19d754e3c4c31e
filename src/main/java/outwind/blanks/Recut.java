package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import outwind.board.CuttingBill;
import outwind.surface.Region;

/**
 * Cuts the offcuts of a layout again, the largest first, each like a board of its own in two stages of cuts: blanks that
 * two stages find no room for may still come out.
 *
 * <p>What any cuts right through can bring is bounded by area. Blanks lie a kerf apart, so that blanks larger by a kerf
 * each way do not meet on a board larger by a kerf each way:
 *
 * <pre>
 *   Σ (a_i + k)·(b_i + k)·x_i ≤ (L + k)·(W + k),   x_i ≤ wanted_i;   the best such Σ worth_i·x_i takes items by worth for
 *   area, the last one in part
 * </pre>
 */
final class Recut {

    private final BlankPlaces places;

    Recut(BlankPlaces places) {
        this.places = places;
    }

    /**
     * The same layout with what comes out of its offcuts.
     *
     * @param wanted how many blanks of each item of those
     */
    Layout of(Layout layout, int[] wanted) {
        int[] left = wanted.clone();
        List<Layout> again = new ArrayList<>();
        for (Region offcut : layout.offcuts()) {
            Layout best = best(offcut, left);
            if (!best.sections().isEmpty()) {
                again.add(best);
                Arrays.setAll(left, i -> left[i] - best.count(i));
            }
        }
        return new Layout(layout.order(), layout.board(), layout.sections(), layout.kerf(), Math.max(layout.value()
            + again.stream().mapToDouble(Layout::value).sum(), bound()), again);
    }

    private Layout best(Region offcut, int[] left) {
        Layout best = new Layout(CutOrder.CROSSCUT_FIRST, offcut, List.of(), places.saw().kerf(), 0);
        BlankPlaces inside = places.within(offcut, left);
        if (inside.pieces().isEmpty()) {
            return best;
        }
        for (CutOrder order : CutOrder.values()) {
            TwoStage.Cutting cutting = TwoStage.priced(inside.sections(order), places.bill().worths(), left)
                .searched(best.value());
            Layout layout = inside.layout(cutting, order, offcut);
            best = layout.value() > best.value() ? layout : best;
        }
        return best;
    }

    /** No cuts right through bring more than this, in however many stages. */
    double bound() {
        CuttingBill bill = places.bill();
        double kerf = places.saw().kerf();
        Region usable = places.usable();
        double area = (usable.x2() - usable.x1() + kerf) * (usable.y2() - usable.y1() + kerf);
        double[] worth = bill.worths();
        int[] wanted = bill.quantities();
        // All ways in which a blank may lie take the same area.
        double[] each = IntStream.range(0, worth.length).mapToDouble(item -> places.pieces().stream()
            .filter(piece -> piece.item() == item && places.takes(item)).findFirst()
            .map(piece -> (piece.along() + kerf) * (piece.across() + kerf)).orElse(Double.NaN)).toArray();
        double bound = 0;
        for (int item : IntStream.range(0, worth.length).filter(i -> !Double.isNaN(each[i])).boxed()
                .sorted(Comparator.comparingDouble(i -> -worth[i] / each[i])).toList()) {
            double count = Math.min(wanted[item], area / each[item]);
            bound += count * worth[item];
            area -= count * each[item];
        }
        return bound;
    }
}
