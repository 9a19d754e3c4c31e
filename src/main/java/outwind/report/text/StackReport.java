package outwind.report.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import outwind.report.words.BuySheet;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;
import outwind.stock.StackPlan;

/** A priced stack in words and numbers: what to expect of it first, then each board, the best buys on top. */
public final class StackReport {

    private final Stack stack;
    private final Figures figures;
    private final OptionalDouble wanted;
    private final Optional<BuySheet> bought;
    private final Page page = new Page();

    private StackReport(Stack stack, Figures figures, OptionalDouble wanted, Optional<StackPlan> plan) {
        this.stack = stack;
        this.figures = figures;
        this.wanted = wanted;
        this.bought = plan.map(known -> BuySheet.of(known, stack.currency(), figures));
    }

    /**
     * Writes the report.
     *
     * @param wanted finished area that is wanted (mm²), if one is
     * @param plan   of a cutting bill against the stack, if there is one
     * @param remark on how all boards were reckoned, if there is anything to say
     */
    public static String of(Stack stack, Figures figures, OptionalDouble wanted, Optional<StackPlan> plan,
                            Optional<String> remark) {
        StackReport report = new StackReport(stack, figures, wanted, plan);
        report.bought.ifPresent(report::buy);
        report.expectation();
        remark.ifPresent(report.page::paragraph);
        report.unpriced();
        report.boards();
        report.totals();
        return report.page.toString();
    }

    private void buy(BuySheet sheet) {
        page.paragraph(sheet.verdict());
        sheet.details().forEach(page::paragraph);
        sheet.missing().forEach(sentence -> page.item("-", sentence));
        if (!sheet.boards().isEmpty()) {
            page.heading("Buy and cut");
            for (int i = 0; i < sheet.boards().size(); i++) {
                page.item(String.format(Locale.ROOT, "%2d.", i + 1), sheet.boards().get(i));
            }
            page.paragraph("Where to cut stands on the cut sheets beside this report.");
        }
        page.heading("The stack");
    }

    /** What to expect of the stack, in one or two sentences. */
    public static String expectation(Stack stack) {
        int count = stack.boards().size();
        if (stack.deviation() < 0.05) {
            return "Of " + Figures.count(count, "board", "boards") + " " + Figures.decimals(stack.expected(), 0)
                + " should make it.";
        }
        return "Of " + Figures.count(count, "board", "boards") + " about " + Figures.decimals(stack.expected(), 1)
            + " should make it, give or take " + Figures.decimals(2 * stack.deviation(), 1) + ".";
    }

    private void expectation() {
        page.paragraph(expectation(stack));
        if (wanted.isPresent()) {
            OptionalInt enough = stack.enoughFor(wanted.getAsDouble());
            String area = figures.area(wanted.getAsDouble());
            String sure = Figures.percent(Stack.CONFIDENCE);
            page.paragraph(enough.isPresent()
                ? "For " + area + " of finished boards buy the first " + enough.getAsInt() + " of the list"
                    + stack.costOfBest(enough.getAsInt()).map(cost -> ", for " + money(cost)).orElse("")
                    + ": then it is " + sure + " sure or more."
                : "The whole stack is not enough for " + area + " of finished boards to be " + sure + " sure.");
        }
        boolean cutting = stack.boards().stream().anyMatch(board -> !board.cost().equals(board.wood()));
        stack.cost().ifPresent(cost -> page.paragraph("All of them cost " + money(cost)
            + (cutting ? ", cutting included." : ".")));
    }

    private void unpriced() {
        List<String> names = stack.boards().stream().filter(board -> board.cost().isEmpty()).map(PricedBoard::name)
            .toList();
        if (!names.isEmpty() && names.size() < stack.boards().size()) {
            page.paragraph("No price is known of " + String.join(", ", names) + ": counted last, and not in any sum of"
                + " money.");
        }
    }

    private void boards() {
        page.heading("Boards, the best buys first");
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < stack.boards().size(); i++) {
            PricedBoard board = stack.boards().get(i);
            rows.add(List.of(String.format(Locale.ROOT, "%2d  %s", i + 1, shortened(board.name())),
                board.verdict().word(),
                board.chance().stream().mapToObj(Figures::chance).findFirst().orElse("-"),
                figures.number(board.median()), Figures.decimals(100 * board.waste(), 0) + " %",
                board.cost().map(BigDecimal::toPlainString).orElse("-"), board.costPerFinishedArea().stream()
                    .mapToObj(cost -> Figures.decimals(cost * figures.areaUnitSquareMillimetres(), 2)).findFirst()
                    .orElse("-")));
        }
        page.table("", List.of("    board", "verdict", "chance", "finishes", "waste", "cost",
            "per " + figures.areaUnit()), rows);
        page.gap();
        page.paragraph("Finishes: thickness to expect in " + figures.unitInFull()
            + ", levelled where needed. Waste: share"
            + " of the rough wood that ends as shavings. Cost"
            + (stack.currency().isEmpty() ? "" : " in " + stack.currency()) + ": the board and cutting it. Per "
            + figures.areaUnit() + ": of finished board, those that fail paid for as well.");
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= 20 ? name
            : name.substring(0, name.offsetByCodePoints(0, 19)).stripTrailing() + "…";
    }

    private void totals() {
        page.heading("In all");
        List<PricedBoard> boards = stack.boards();
        double rough = boards.stream().mapToDouble(PricedBoard::roughVolume).sum();
        double finished = boards.stream().mapToDouble(b -> b.finishedVolume() * b.makesIt()).sum();
        double area = boards.stream().mapToDouble(b -> b.finishedArea() * b.makesIt()).sum();
        page.table("  ", List.of("finished and rough wood", "in all"), List.of(
            List.of("rough wood by tally", Figures.decimals(boards.stream().mapToDouble(b -> b.feet().tallied()).sum(),
                1) + " board feet"),
            List.of("rough wood by volume", Figures.decimals(boards.stream().mapToDouble(b -> b.feet().exact()).sum(),
                1) + " board feet"),
            List.of("", Figures.decimals(rough / 1e9, 4) + " m³"),
            List.of("finished wood to expect", Figures.decimals(finished / 1e9, 4) + " m³"),
            List.of("finished boards to expect", figures.area(area)),
            List.of("waste, failed boards whole", Figures.decimals(100 * (1 - finished / rough), 0) + " %"),
            List.of("cutting", boards.stream().allMatch(board -> board.minutes().isPresent())
                ? Figures.minutes(boards.stream().mapToDouble(board -> board.minutes().getAsDouble()).sum())
                : "no cutter stated")));
    }

    private String money(BigDecimal amount) {
        return amount.toPlainString() + (stack.currency().isEmpty() ? "" : "\u00a0" + stack.currency());
    }

    /** One line for each board, in mm, mm² and mm³; a header; commas, quotes where a name needs them. */
    public static String csv(Stack stack) {
        StringBuilder text = new StringBuilder("board,file,verdict,chance,target,low,median,high,length,width,"
            + "rough_board_"
            + "feet,tallied_board_feet,rough_volume,finished_volume,finished_area,waste,minutes,cost\n");
        for (PricedBoard b : stack.boards()) {
            text.append(List.of(CsvText.cell(b.name()), CsvText.cell(b.file()), b.verdict().word(), optional(b.chance()),
                optional(b.target()), number(b.low()), number(b.median()), number(b.high()), number(b.feet().length()),
                number(b.feet().width()), number(b.feet().exact()), number(b.feet().tallied()),
                number(b.roughVolume()), number(b.finishedVolume()), number(b.finishedArea()), number(b.waste()),
                b.minutes().isPresent() ? number(b.minutes().getAsDouble()) : "", b.cost().map(BigDecimal::toPlainString).orElse("")).stream()
                .collect(Collectors.joining(",", "", "\n")));
        }
        return text.toString();
    }

    private static String optional(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value).replaceAll("\\.?0+$", "");
    }
}
