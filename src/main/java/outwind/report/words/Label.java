package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.Layout;
import outwind.board.BillItem;
import outwind.board.CuttingBill;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;
import outwind.stock.StackPlan;

/**
 * What is stuck on a board or a blank.
 *
 * @param name  number and name, as the report has them
 * @param size  of the blank as finished, or of the rough board
 * @param notes what else there is to say, one short line each
 */
public record Label(String name, String size, List<String> notes) {

    public Label {
        notes = List.copyOf(notes);
    }

    /** A label for each board of a stack, in the order of its list. */
    public static List<Label> of(Stack stack, Figures figures) {
        List<Label> labels = new ArrayList<>();
        for (PricedBoard board : stack.boards()) {
            String size = figures.place(board.feet().length()) + " x " + figures.place(board.feet().width()) + " x "
                + figures.length(board.feet().thickness());
            Stream<String> verdict = Stream.of(board.verdict().word() + board.chance().stream()
                .mapToObj(chance -> ", " + Figures.chance(chance)).findFirst().orElse("") + ": finishes "
                + figures.length(board.median()));
            Stream<String> price = board.wood().stream().map(wood -> Figures.money(wood.toPlainString(), stack.currency()));
            labels.add(new Label((labels.size() + 1) + ". " + board.name(), size, Stream.of(verdict,
                Stream.of(board.kind().words()).filter(words -> !words.isEmpty()), price).flatMap(lines -> lines).toList()));
        }
        return labels;
    }

    /** A label for each blank of a board. */
    public static List<Label> of(BlankPlan plan, Figures figures) {
        return of(plan.bill(), plan.chosen(), plan.board().name(), figures);
    }

    /** A label for each blank of a stack, board by board in the order of the cut sheets. */
    public static List<Label> of(StackPlan plan, Figures figures) {
        return IntStream.range(0, plan.cuts().size()).boxed().flatMap(i -> of(plan.bill(), plan.cuts().get(i).layout(),
            "board " + (i + 1) + ", " + plan.cuts().get(i).board().name(), figures).stream()).toList();
    }

    private static List<Label> of(CuttingBill bill, Layout layout, String board, Figures figures) {
        List<Label> labels = new ArrayList<>();
        for (int section = 0; section < layout.allSections().size(); section++) {
            for (Blank blank : layout.allSections().get(section)) {
                BillItem item = bill.items().get(blank.item());
                boolean over = Math.abs(blank.region().area() - item.length() * item.width()) > 1e-3;
                String from = board + ", section " + (section + 1);
                labels.add(new Label((labels.size() + 1) + "  " + blank.name(),
                    BlankSheet.sides(item.length(), item.width(), figures) + " x " + figures.length(item.thickness()),
                    over ? List.of("as cut " + BlankSheet.sides(blank, figures), from) : List.of(from)));
            }
        }
        return labels;
    }
}
