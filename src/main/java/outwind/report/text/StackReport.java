package outwind.report.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.board.Units;
import outwind.flatten.Verdict;
import outwind.report.words.BlankSheet;
import outwind.report.words.BuySheet;
import outwind.report.words.Figures;
import outwind.report.words.PackSheet;
import outwind.report.words.Page;
import outwind.report.words.UseSheet;
import outwind.stock.BoardFeet;
import outwind.stock.PricedBoard;
import outwind.stock.Purchase;
import outwind.stock.Stack;
import outwind.stock.StackPlan;
import outwind.stock.Uses;
import outwind.stock.Wanted;

/** A priced stack in words and numbers: what to expect of it first, then each board, the best buys on top. */
public final class StackReport {

    private final Stack stack;
    private final Figures figures;
    private final Optional<Wanted> wanted;
    private final Optional<BuySheet> bought;
    private final Page page = new Page();

    private StackReport(Stack stack, Figures figures, Optional<Wanted> wanted, Optional<StackPlan> plan) {
        this.stack = stack;
        this.figures = figures;
        this.wanted = wanted;
        this.bought = plan.map(known -> BuySheet.of(known, stack.currency(), figures));
    }

    /**
     * Writes the report.
     *
     * @param wanted finished area that is wanted, if one is
     * @param plan   of a cutting bill against the stack, if there is one
     * @param uses   of its boards, where several thicknesses are thought of
     * @param pack   that the stack is a sample of, if it is
     * @param remark on how all boards were computed, if there is anything to say
     */
    public static String of(Stack stack, Figures figures, Optional<Wanted> wanted, Optional<StackPlan> plan,
                            Optional<Uses> uses, Optional<PackSheet> pack, Optional<String> remark) {
        StackReport report = new StackReport(stack, figures, wanted, plan);
        uses.ifPresent(report::uses);
        pack.ifPresent(report::pack);
        report.bought.ifPresent(report::buy);
        if (pack.isPresent() || plan.isPresent() || uses.isPresent()) {
            report.page.heading("The stack");
        }
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
            page.paragraph("The cut sheets beside this report show where to cut.");
        }
    }

    private void uses(Uses uses) {
        page.paragraph(UseSheet.verdict(uses, figures));
        page.paragraph(UseSheet.explanation(uses, figures));
        page.gap();
        List<String> header = UseSheet.header(uses, figures);
        page.table("  ", header, UseSheet.totals(uses, figures));
        page.heading("Chance of each thickness, and the best use");
        page.table("", UseSheet.boardHeader(uses, figures), IntStream.range(0, stack.boards().size()).mapToObj(i -> {
            PricedBoard board = stack.boards().get(i);
            List<String> row = new ArrayList<>(List.of(String.format(Locale.ROOT, "%2d  %s", i + 1, shortened(board.name()))));
            row.addAll(UseSheet.chances(uses, board, figures));
            return row;
        }).toList());
        page.gap();
    }

    private void pack(PackSheet sheet) {
        page.paragraph(sheet.verdict());
        sheet.details().forEach(page::paragraph);
        page.gap();
    }

    /** What to expect of the stack, in one or two sentences. */
    public static String expectation(Stack stack) {
        int count = stack.boards().size();
        int fewest = stack.fewest();
        int most = stack.most();
        return "Of " + Figures.count(count, "board", "boards") + (fewest == most ? " " + fewest + " should make it."
            : " about " + Figures.decimals(stack.expected(), 0) + " should make it, " + fewest + " to " + most + " (90\u00a0%).");
    }

    private void expectation() {
        page.paragraph(expectation(stack));
        if (wanted.isPresent()) {
            String area = figures.area(wanted.get().area());
            page.paragraph(wanted.get().bought().map(bought -> buying(bought, area))
                .orElse("The whole stack is not enough for " + area + " of finished boards at a chance of "
                    + Figures.percent(Stack.CONFIDENCE) + "."));
        }
        stack.cost().ifPresent(cost -> page.paragraph("All of them cost " + money(cost) + ", for "
            + (labour().signum() > 0 ? money(cost.subtract(labour())) + " of wood and " + money(labour())
                + " of labour." : "the wood alone.")));
        stack.unevenness().ifPresent(known -> page.paragraph("Within the " + known.boards() + " boards read with calipers"
            + " the thickness strays by " + figures.fineLength(known.deviation()) + " (standard deviation). Boards with"
            + " one stated thickness are taken to stray as much."));
        List<PricedBoard> aimless = stack.withoutTarget();
        if (!aimless.isEmpty()) {
            page.paragraph("No target is stated for " + aimless.stream().map(PricedBoard::name)
                .collect(Collectors.joining(", ")) + ": nothing is expected of "
                + (aimless.size() == 1 ? "it." : "them.") + " State one with --target.");
        }
    }

    /** What flattening all boards costs, those that are sure to fail left out. */
    private BigDecimal labour() {
        return stack.boards().stream().flatMap(board -> board.labour().stream()).reduce(BigDecimal.ZERO,
            BigDecimal::add);
    }

    private String buying(Purchase bought, String area) {
        String numbers = bought.boards().stream().map(board -> String.valueOf(stack.boards().indexOf(board) + 1))
            .collect(Collectors.joining(", "));
        Optional<BigDecimal> cost = Stack.costOf(bought.boards());
        String least = bought.gap() < BlankSheet.WORTH_SAYING ? "No choice that is as sure "
            + (cost.isPresent() ? "costs less." : "takes less rough wood.")
            : "Another choice might save up to " + Figures.decimals(100 * bought.gap(), 1) + "\u00a0%.";
        return "For " + area + " of finished boards buy " + (bought.boards().size() == 1 ? "board " : "boards ")
            + numbers + " of the list" + cost.map(known -> ", for " + money(known)).orElse("") + ". The chance that they do is "
            + Figures.chance(Math.floor(100 * bought.chance()) / 100) + ". " + least;
    }

    private void unpriced() {
        List<String> names = stack.boards().stream().filter(board -> board.cost().isEmpty()).map(PricedBoard::name)
            .toList();
        if (!names.isEmpty() && names.size() < stack.boards().size()) {
            page.paragraph("No price for " + String.join(", ", names) + ": listed last, and left out of the sums.");
        }
    }

    private void boards() {
        page.heading("Boards, the best buys first");
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < stack.boards().size(); i++) {
            PricedBoard board = stack.boards().get(i);
            rows.add(List.of(String.format(Locale.ROOT, "%2d  %s", i + 1, shortened(board.name())),
                board.verdict().word(),
                board.target().isEmpty() ? "-"
                    : board.chance().stream().mapToObj(Figures::chance).findFirst().orElse("-"),
                figures.number(board.median()), Figures.decimals(100 * board.waste(), 0) + " %",
                board.wood().map(BigDecimal::toPlainString).orElse("-"),
                board.labour().map(BigDecimal::toPlainString).orElse("-"), board.costPerFinishedArea().stream()
                    .mapToObj(cost -> Figures.decimals(cost * figures.areaUnitSquareMillimetres(), 2)).findFirst()
                    .orElse("-")));
        }
        page.table("", List.of("    board", "verdict", "chance", "finishes", "waste", "wood", "labour",
            "per " + figures.areaUnit()), rows);
        page.gap();
        page.paragraph("Finishes: thickness to expect in " + figures.unitInFull()
            + ", levelled where needed. Waste: share"
            + " of rough wood that ends as shavings, trim or defects. Wood"
            + (stack.currency().isEmpty() ? "" : ", in " + stack.currency()) + ": the price of the board. Labour:"
            + " flattening it; nothing for a board that is sure to fail. Per " + figures.areaUnit()
            + ": the cost of finished board, with the failed ones paid for.");
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= 18 ? name
            : name.substring(0, name.offsetByCodePoints(0, 17)).stripTrailing() + "…";
    }

    private void totals() {
        page.heading("In all");
        List<PricedBoard> boards = stack.boards();
        double rough = boards.stream().mapToDouble(PricedBoard::roughVolume).sum();
        double finished = boards.stream().mapToDouble(b -> b.finishedVolume() * b.makesIt()).sum();
        double area = boards.stream().mapToDouble(b -> b.finishedArea() * b.makesIt()).sum();
        List<List<String>> rows = new ArrayList<>(List.of(
            List.of("rough wood by tally", Figures.decimals(boards.stream().mapToDouble(b -> b.feet().tallied()).sum(),
                1) + " board feet"),
            List.of("rough wood by volume", Figures.decimals(boards.stream().mapToDouble(b -> b.feet().exact()).sum(),
                1) + " board feet"),
            List.of("", figures.wood(rough)),
            List.of("finished wood to expect", figures.wood(finished)),
            List.of("finished boards to expect", figures.area(area)),
            List.of("waste, failed boards whole", Figures.decimals(100 * (1 - finished / rough), 0) + " %"),
            List.of("flattening, without sure failures", boards.stream().allMatch(board -> board.minutes().isPresent())
                ? Figures.minutes(boards.stream().filter(board -> board.verdict() != Verdict.NO)
                    .mapToDouble(board -> board.minutes().getAsDouble()).sum())
                : "no cutter stated")));
        if (figures.units() == Units.INCHES) {
            rows.add(4, List.of("", Figures.decimals(BoardFeet.of(finished), 1) + " board feet"));
        }
        page.table("  ", List.of("finished and rough wood", "in all"), rows);
    }

    private String money(BigDecimal amount) {
        return Figures.money(amount.toPlainString(), stack.currency());
    }

    /**
     * One line for each board, in mm, mm² and mm³; a header; commas, quotes where a name needs them.
     *
     * @param uses of its boards, where several thicknesses are thought of
     */
    public static String csv(Stack stack, Optional<Uses> uses) {
        StringBuilder text = new StringBuilder("board,file,species,grade,verdict,chance,target,low,median,high,length,width,"
            + "rough_board_"
            + "feet,tallied_board_feet,rough_volume,finished_volume,finished_area,waste,minutes,cost,wood,labour,currency,best_target\n");
        for (PricedBoard b : stack.boards()) {
            text.append(Stream.of(CsvText.cell(b.name()), CsvText.cell(b.file()), kind(b.kind().species()),
                kind(b.kind().grade()), b.verdict().word(), optional(b.chance()),
                optional(b.target()), number(b.low()), number(b.median()), number(b.high()), number(b.feet().length()),
                number(b.feet().width()), number(b.feet().exact()), number(b.feet().tallied()),
                number(b.roughVolume()), number(b.finishedVolume()), number(b.finishedArea()), number(b.waste()),
                b.minutes().isPresent() ? number(b.minutes().getAsDouble()) : "", money(b.cost()), money(b.wood()),
                money(b.labour()), CsvText.cell(stack.currency()),
                uses.flatMap(known -> known.best(b)).map(aim -> number(aim.thickness())).orElse(""))
                .collect(Collectors.joining(",", "", "\n")));
        }
        return CsvText.table(text);
    }

    private static String kind(Optional<String> words) {
        return CsvText.cell(words.orElse(""));
    }

    private static String money(Optional<BigDecimal> amount) {
        return amount.map(BigDecimal::toPlainString).orElse("");
    }

    private static String optional(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value).replaceAll("\\.?0+$", "");
    }
}
