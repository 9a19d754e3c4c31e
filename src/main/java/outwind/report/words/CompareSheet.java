package outwind.report.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import outwind.stock.Offered;
import outwind.stock.Stack;

/**
 * What is said of stacks side by side, in text and on the chart alike.
 *
 * @param offered  the stacks; the cheapest finished board first, or where some cost is not known, the greatest yield
 * @param currency label of the money, perhaps empty
 */
public record CompareSheet(List<Offered> offered, String currency, Figures figures) {

    /** Nineteen stacks in twenty come out better than at the one end, one in twenty better than at the other. */
    public static final double SURE = 0.95;
    public static final double HOPED = 0.05;

    public CompareSheet {
        boolean priced = inMoney(offered);
        offered = offered.stream().sorted(Comparator.comparingDouble(one -> priced
            ? one.cost(one.area()).orElseThrow() : -one.yield(one.area()))).toList();
    }

    private static boolean inMoney(List<Offered> offered) {
        return offered.stream().allMatch(one -> one.cost(one.area()).isPresent());
    }

    /** Whether costs are compared, not yields. */
    public boolean inMoney() {
        return inMoney(offered);
    }

    /** Which is best, in a sentence or two. */
    public String verdict() {
        Offered best = offered.get(0);
        String expected = number(best, best.area());
        String worst = best.cost(best.area(SURE)).isPresent() ? money(number(best, best.area(SURE))) : "any amount";
        return inMoney() ? best.name() + " is the cheapest: expect " + money(expected) + " for a finished " + figures.areaUnit()
            + (worst.equals(money(expected)) ? "." : ", at most " + worst + " (95\u00a0%).")
            : best.name() + " yields most: expect " + Figures.percent(best.yield(best.area()))
                + " of its face. Costs are not compared, because some are not known.";
    }

    /** What the figures are. */
    public String explanation() {
        return "Cost: all boards, and flattening where it is known, over the finished area to expect, and over that of 90\u00a0% of"
            + " such stacks. Yield: share of the face bought that is finished. Boards that fail are paid for and yield nothing.";
    }

    public List<String> header() {
        return List.of("stack", "boards", "make it", "yield", "90\u00a0%", currency.isEmpty() ? "cost per " + figures.areaUnit()
            : currency + " per " + figures.areaUnit(), "90\u00a0%");
    }

    public List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        for (Offered one : offered) {
            Stack stack = one.stack();
            rows.add(List.of(one.name(), String.valueOf(stack.boards().size()),
                stack.fewest() == stack.most() ? "" + stack.fewest() : stack.fewest() + " to " + stack.most(),
                Figures.percent(one.yield(one.area())), span(Figures.percent(one.yield(one.area(SURE))),
                    Figures.percent(one.yield(one.area(HOPED)))), number(one, one.area()),
                span(number(one, one.area(HOPED)), number(one, one.area(SURE)))));
        }
        return rows;
    }

    private static String span(String low, String high) {
        return low.equals(high) ? low : low.replace("\u00a0%", "") + " to " + high;
    }

    private String money(String amount) {
        return Figures.money(amount, currency);
    }

    /** What a finished m² or ft² costs if so much comes out (mm²). */
    private String number(Offered one, double area) {
        Optional<Double> cost = one.cost(area);
        return cost.map(known -> Figures.decimals(known * figures.areaUnitSquareMillimetres(), 2)).orElse("-");
    }
}
