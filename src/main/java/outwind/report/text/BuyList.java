package outwind.report.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import outwind.blanks.Blank;
import outwind.board.BillItem;
import outwind.board.Units;
import outwind.report.words.Figures;
import outwind.stock.PricedBoard;
import outwind.stock.Purchase;
import outwind.stock.Stack;
import outwind.stock.StackPlan;

/**
 * The boards to buy, as a table for a spreadsheet: one line for each, a header, a line of totals, in the user's units.
 *
 * <p>The number of a board is that of the stack's list. Finished area and chance are the board's where an area is
 * wanted. With a bill they are those of its blanks, the least chance of them; labour is then left open, for blanks are
 * flattened one by one. A sum is left open unless all its parts are known.
 */
public final class BuyList {

    private static final String HEADER = "number,board,file,species,grade,unit,length,width,thickness,area_unit,finished_area,"
        + "volume_unit,rough_volume,rough_board_feet,chance,wood,labour,cost,currency\n";

    /** A board to buy, for a finished area (mm²) with a chance. */
    private record Line(int number, PricedBoard board, double area, OptionalDouble chance, Optional<BigDecimal> labour,
                        Optional<BigDecimal> cost) { }

    private BuyList() { }

    /** Writes what to buy for a finished area. */
    public static String of(Stack stack, Purchase bought, Figures figures) {
        return text(bought.boards().stream().map(board -> new Line(stack.boards().indexOf(board) + 1, board,
            board.finishedArea(), board.chance(), board.labour(), board.cost())).toList(), OptionalDouble.of(bought.chance()),
            stack.currency(), figures);
    }

    /** Writes what to buy for a bill. */
    public static String of(Stack stack, StackPlan plan, Figures figures) {
        List<String> files = stack.boards().stream().map(PricedBoard::file).toList();
        List<Line> lines = new ArrayList<>();
        for (StackPlan.BoardCut cut : plan.cuts()) {
            List<Blank> blanks = cut.layout().blanks();
            lines.add(new Line(files.indexOf(cut.priced().file()) + 1, cut.priced(), blanks.stream().mapToDouble(blank -> {
                BillItem item = plan.bill().items().get(blank.item());
                return item.length() * item.width();
            }).sum(), blanks.stream().mapToDouble(Blank::chance).min(), Optional.empty(), cut.priced().wood()));
        }
        lines.sort(Comparator.comparingInt(Line::number));
        return text(lines, OptionalDouble.empty(), stack.currency(), figures);
    }

    private static String text(List<Line> lines, OptionalDouble chance, String currency, Figures figures) {
        StringBuilder text = new StringBuilder(HEADER);
        for (Line line : lines) {
            PricedBoard board = line.board;
            text.append(Stream.of(String.valueOf(line.number), CsvText.cell(board.name()), CsvText.cell(board.file()),
                CsvText.cell(board.kind().species().orElse("")), CsvText.cell(board.kind().grade().orElse("")),
                figures.unit(), figures.fine(board.feet().length()), figures.fine(board.feet().width()),
                figures.fine(board.feet().thickness()), amounts(line.area, board.roughVolume(), board.feet().exact(),
                    line.chance, figures), money(board.wood()), money(line.labour), money(line.cost), CsvText.cell(currency))
                .collect(Collectors.joining(",", "", "\n")));
        }
        return CsvText.table(text.append(Stream.of("total,,,,,,,,", amounts(sum(lines, Line::area), sum(lines, line ->
                line.board.roughVolume()), sum(lines, line -> line.board.feet().exact()), chance, figures),
            money(total(lines, line -> line.board.wood())), money(total(lines, Line::labour)), money(total(lines, Line::cost)),
            CsvText.cell(currency)).collect(Collectors.joining(",", "", "\n"))));
    }

    /** Cells from the unit of area to the chance; plain letters, which every spreadsheet reads alike. */
    private static String amounts(double area, double volume, double feet, OptionalDouble chance, Figures figures) {
        boolean inches = figures.units() == Units.INCHES;
        return String.join(",", inches ? "ft2" : "m2", Figures.decimals(area / figures.areaUnitSquareMillimetres(), 4),
            inches ? "ft3" : "m3", Figures.decimals(volume / figures.woodUnitCubicMillimetres(), 5), Figures.decimals(feet, 3),
            chance.isPresent() ? Figures.decimals(chance.getAsDouble(), 3) : "");
    }

    private static double sum(List<Line> lines, Function<Line, Double> part) {
        return lines.stream().mapToDouble(part::apply).sum();
    }

    /** Empty unless every part is known. */
    private static Optional<BigDecimal> total(List<Line> lines, Function<Line, Optional<BigDecimal>> part) {
        return lines.stream().map(part).reduce(Optional.of(BigDecimal.ZERO.setScale(2)), (sum, one) ->
            sum.flatMap(known -> one.map(known::add)));
    }

    private static String money(Optional<BigDecimal> amount) {
        return amount.map(BigDecimal::toPlainString).orElse("");
    }
}
