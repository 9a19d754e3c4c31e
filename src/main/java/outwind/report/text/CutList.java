package outwind.report.text;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.Layout;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.report.words.Figures;
import outwind.stock.StackPlan;

/**
 * The blanks that are cut, as a table for a spreadsheet: one line for each, a header, lengths in the user's unit.
 *
 * <p>Length and width are finished sizes along and across the grain. Along and across are what it is cut to on the board,
 * with over-length and over-width: what stop and fence are set to. The wood of a blank is its share, by area, of all that is bought.
 */
public final class CutList {

    private static final String HEADER = "board,file,species,grade,section,blank,part,unit,length,width,along,across,thickness,"
        + "makes,chance,x,y,grain_across,wood,currency\n";

    private final Figures figures;
    private final StringBuilder text = new StringBuilder(HEADER);

    private CutList(Figures figures) {
        this.figures = figures;
    }

    /**
     * Writes what one board is cut into.
     *
     * @param file the board's
     */
    public static String of(BlankPlan plan, String file, Figures figures) {
        CutList list = new CutList(figures);
        list.add(plan.bill(), plan.board(), file, plan.chosen(), Optional.empty(), "");
        return CsvText.table(list.text);
    }

    /**
     * Writes what the boards of a stack are cut into.
     *
     * @param currency label of the money, perhaps empty
     */
    public static String of(StackPlan plan, String currency, Figures figures) {
        CutList list = new CutList(figures);
        double[] areas = plan.bill().areas();
        double area = IntStream.range(0, areas.length).mapToDouble(i -> areas[i] * plan.cut(i)).sum();
        Optional<Double> perArea = plan.measure() == StackPlan.Measure.MONEY && area > 0
            ? Optional.of(plan.cost().doubleValue() / area) : Optional.empty();
        plan.cuts().forEach(cut -> list.add(plan.bill(), cut.board(), cut.priced().file(), cut.layout(), perArea, currency));
        return CsvText.table(list.text);
    }

    private void add(CuttingBill bill, Board board, String file, Layout layout, Optional<Double> perArea, String currency) {
        int number = 0;
        for (int section = 0; section < layout.allSections().size(); section++) {
            for (Blank blank : layout.allSections().get(section)) {
                number++;
                BillItem item = bill.items().get(blank.item());
                text.append(Stream.of(CsvText.cell(board.name()), CsvText.cell(file),
                    CsvText.cell(board.species().orElse("")), CsvText.cell(board.grade().orElse("")),
                    String.valueOf(section + 1), String.valueOf(number), CsvText.cell(blank.name()), figures.unit(),
                    figures.fine(item.length()), figures.fine(item.width()), figures.fine(blank.along()), figures.fine(blank.across()), figures.fine(blank.wanted()),
                    figures.fine(blank.range().median()), Figures.decimals(blank.chance(), 3),
                    figures.fine(blank.region().x1()), figures.fine(blank.region().y1()),
                    blank.turned() ? "yes" : "no",
                    perArea.map(cost -> Figures.decimals(cost * item.length() * item.width(), 2)).orElse(""),
                    perArea.isPresent() ? CsvText.cell(currency) : "")
                    .collect(Collectors.joining(",", "", "\n")));
            }
        }
    }
}
