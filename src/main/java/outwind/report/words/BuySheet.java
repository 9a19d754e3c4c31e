package outwind.report.words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import outwind.board.BillItem;
import outwind.stock.PricedBoard;
import outwind.stock.StackPlan;

/**
 * What is said of a cutting bill against a stack, in text and on the plan alike.
 *
 * @param verdict whether the bill is met, by how many boards and at what cost, and how near that is to the least
 * @param details what else there is to say of that, one paragraph each
 * @param missing what does not come out and why, one sentence each
 * @param boards  the boards to buy and what to cut each into, one paragraph each
 */
public record BuySheet(String verdict, List<String> details, List<String> missing, List<String> boards) {

    public static BuySheet of(StackPlan plan, String currency, Figures figures) {
        return new BuySheet(verdict(plan, currency, figures), details(plan, currency), missing(plan, figures),
            plan.cuts().stream().map(cut -> board(cut, plan.bill().asksForKinds(), currency)).toList());
    }

    private static String verdict(StackPlan plan, String currency, Figures figures) {
        String boards = plan.offered() == 1 ? "the one board" : plan.cuts().size() + " of the " + plan.offered()
            + " boards";
        String cost = cost(plan, plan.cost(), currency, figures);
        String choice = plan.recuts() ? "no choice in two stages of cuts can " : "no choice can ";
        String least = plan.gap() < BlankSheet.WORTH_SAYING ? choice + verb(plan) + " less."
            : choice + verb(plan) + " less than " + cost(plan, plan.least(), currency, figures) + " (gap "
                + Figures.decimals(100 * plan.gap(), 1) + "\u00a0%).";
        if (plan.isMet()) {
            return "The bill is met by " + boards + ", for " + cost + "; " + least;
        }
        if (plan.cut() == 0) {
            return "No blank of the bill comes out of the stack.";
        }
        String part = plan.cut() + " of the " + plan.bill().wanted() + " blanks wanted "
            + (plan.cut() == 1 ? "comes" : "come") + " out of " + boards + ", for " + cost
            + "; for as much, " + least;
        return (plan.isProvenShort() ? "The stack does not yield the whole bill: "
            : "No way to cut the whole bill was found: ") + part;
    }

    private static String verb(StackPlan plan) {
        return plan.measure() == StackPlan.Measure.MONEY ? "cost" : "take";
    }

    private static String cost(StackPlan plan, BigDecimal amount, String currency, Figures figures) {
        return plan.measure() == StackPlan.Measure.MONEY
            ? Figures.money(amount.toPlainString(), currency)
            : figures.wood(amount.doubleValue()) + " of rough wood";
    }

    private static List<String> details(StackPlan plan, String currency) {
        List<String> details = new ArrayList<>();
        if (plan.measure() == StackPlan.Measure.MONEY) {
            details.add("Costs are for the wood alone. Flattening the blanks comes on top.");
            pieces(plan, currency).ifPresent(details::add);
        }
        if (plan.measure() == StackPlan.Measure.ROUGH_WOOD) {
            details.add("Some boards have no price, so rough wood is counted instead of money.");
        }
        if (plan.more() >= BlankSheet.WORTH_SAYING) {
            details.add("Another cutting plan might bring up to " + Figures.decimals(100 * plan.more(), 1)
                + "\u00a0% of the bill's " + (plan.bill().hasValues() ? "value" : "area") + " more.");
        }
        if (plan.cut() > 0) {
            details.add("Level each blank on its own after cutting. Its chance of its thickness is at least\u00a0"
                + Figures.percent(plan.sure()) + ".");
        }
        BlankSheet.ignored(plan.bill()).ifPresent(details::add);
        return details;
    }

    /** What the wood of each piece costs: all that is bought, shared out by area. */
    private static Optional<String> pieces(StackPlan plan, String currency) {
        List<BillItem> items = plan.bill().items();
        double[] areas = plan.bill().areas();
        double area = IntStream.range(0, areas.length).mapToDouble(i -> areas[i] * plan.cut(i)).sum();
        return area <= 0 ? Optional.empty() : Optional.of("Wood for each piece, offcuts shared out by area: "
            + IntStream.range(0, areas.length).filter(i -> plan.cut(i) > 0).mapToObj(i -> items.get(i).name()
                + "\u00a0" + Figures.money(Figures.decimals(plan.cost().doubleValue() * areas[i] / area, 2),
                currency)).collect(Collectors.joining(", ")) + ".");
    }

    private static List<String> missing(StackPlan plan, Figures figures) {
        return BlankSheet.missing(plan.bill(), plan.missing(), plan::cut, figures, why -> switch (why) {
            case OTHER_WOOD -> "No board is of their wood: ";
            case OUT_OF_LIMITS -> "Too short to rip or too wide for the machine: ";
            case TOO_LARGE -> "Larger than every board: ";
            case TOO_THICK -> "Chance of their thickness too low on every board: ";
            case NO_ROOM -> plan.recuts() ? "No room in the whole stack, nor in the offcuts: "
                : "No room in the whole stack, in two stages of cuts: ";
        });
    }

    private static String board(StackPlan.BoardCut cut, boolean withKind, String currency) {
        PricedBoard priced = cut.priced();
        String cost = priced.wood().map(amount -> ", " + Figures.money(amount.toPlainString(), currency))
            .orElse("");
        String kind = cut.board().kind().words();
        return priced.name() + (withKind && !kind.isEmpty() ? " (" + kind + ")" : "") + cost + ": " + BlankSheet.named(cut.layout().blanks()) + "; "
            + cut.layout().order().words() + ".";
    }
}
