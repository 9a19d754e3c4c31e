package outwind.board;

import java.util.List;

/**
 * The blanks that somebody wants out of a board.
 *
 * @param items at least one; either all of them state a value or none does
 */
public record CuttingBill(List<BillItem> items) {

    public CuttingBill {
        items = List.copyOf(items);
        long valued = items.stream().filter(item -> item.value().isPresent()).count();
        if (items.isEmpty() || valued != 0 && valued != items.size()) {
            throw new IllegalArgumentException("a bill needs items, and a value for each or for none, got " + items);
        }
    }

    /** Whether the bill says what blanks are worth. */
    public boolean hasValues() {
        return items.get(0).value().isPresent();
    }

    /** What one blank of an item is worth: its stated value, or else its area (mm²). */
    public double worth(BillItem item) {
        return item.value().orElse(item.length() * item.width());
    }
}
