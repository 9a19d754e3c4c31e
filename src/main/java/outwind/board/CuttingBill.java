package outwind.board;

import java.util.List;

/**
 * The blanks that somebody wants out of a board.
 *
 * @param items   at least one; either all of them state a value or none does
 * @param ignored names of columns that were not read
 */
public record CuttingBill(List<BillItem> items, List<String> ignored) {

    public CuttingBill {
        items = List.copyOf(items);
        ignored = List.copyOf(ignored);
        long valued = items.stream().filter(item -> item.value().isPresent()).count();
        if (items.isEmpty() || valued != 0 && valued != items.size()) {
            throw new IllegalArgumentException("a bill needs items, and a value for each or for none, got " + items);
        }
    }

    /** A bill of which everything was read. */
    public CuttingBill(List<BillItem> items) {
        this(items, List.of());
    }

    /** Whether the bill says what blanks are worth. */
    public boolean hasValues() {
        return items.get(0).value().isPresent();
    }

    /** Whether some row asks for a kind of wood. */
    public boolean asksForKinds() {
        return items.stream().anyMatch(item -> !item.kind().equals(WoodKind.ANY));
    }

    /** What one blank of an item is worth: its stated value, or else its area (mm²). */
    public double worth(BillItem item) {
        return item.value().orElse(item.area());
    }

    /** What one blank of each item is worth. */
    public double[] worths() {
        return items.stream().mapToDouble(this::worth).toArray();
    }

    /** What all blanks together are worth. */
    public double worth() {
        return items.stream().mapToDouble(item -> item.quantity() * worth(item)).sum();
    }

    /** Area of one blank of each item (mm²). */
    public double[] areas() {
        return items.stream().mapToDouble(BillItem::area).toArray();
    }

    /** How many blanks of each item are wanted. */
    public int[] quantities() {
        return items.stream().mapToInt(BillItem::quantity).toArray();
    }

    /** How many blanks are wanted in all. */
    public int wanted() {
        return items.stream().mapToInt(BillItem::quantity).sum();
    }
}
