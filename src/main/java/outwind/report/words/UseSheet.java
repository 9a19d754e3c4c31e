package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import outwind.stock.PricedBoard;
import outwind.stock.Uses;

/** What is said of a stack that may be finished at several thicknesses. */
public final class UseSheet {

    private UseSheet() { }

    /** Which thickness is best for the whole stack, in a sentence, and what sorting the boards brings beside. */
    public static String verdict(Uses uses, Figures figures) {
        Uses.Aim best = uses.bestForAll();
        String alone = "Of one thickness for all boards " + figures.length(best.thickness()) + " brings most: "
            + value(uses, uses.wood(best), uses.inMoney() ? uses.money(best) : 0, figures) + ". ";
        return alone + "Each board at its best brings " + value(uses, uses.bestWood(), uses.inMoney() ? uses.bestMoney() : 0,
            figures) + ".";
    }

    private static String value(Uses uses, double wood, double money, Figures figures) {
        return uses.inMoney() ? Figures.money(Figures.decimals(money, 2), uses.stack().currency())
            : figures.wood(wood) + " of finished wood";
    }

    /** What the best use goes by, and what the list further down is for. */
    public static String explanation(Uses uses, Figures figures) {
        return (uses.inMoney() ? "The best use brings most money, boards that fail counted as nothing."
            : "The best use leaves most finished wood, boards that fail counted as nothing. State --sells to go by money.")
            + (uses.isJudgedForFirst() ? " Verdicts and costs of the stack are for "
                + figures.length(uses.aims().get(0).thickness()) + "." : "")
            + uses.standard().map(standard -> " Thicknesses are those of the " + standard.source() + ".").orElse("");
    }

    /** Heads of {@link #totals}. */
    public static List<String> header(Uses uses, Figures figures) {
        List<String> header = new ArrayList<>(List.of("thickness, " + figures.unit(), "boards that make it", "best for",
            "wood"));
        if (uses.inMoney()) {
            header.add("money");
        }
        return header;
    }

    /** A row for each thickness, then one for each board at its best. */
    public static List<List<String>> totals(Uses uses, Figures figures) {
        List<List<String>> rows = new ArrayList<>();
        int used = 0;
        for (Uses.Aim aim : uses.aims()) {
            int fewest = uses.fewest(aim);
            int most = uses.most(aim);
            used += uses.bestFor(aim);
            rows.add(row(uses, figures.number(aim.thickness()), fewest == most ? "" + fewest : fewest + " to " + most
                + " (90\u00a0%)", uses.bestFor(aim), uses.wood(aim), uses.inMoney() ? uses.money(aim) : 0, figures));
        }
        rows.add(row(uses, "each at its best", "", used, uses.bestWood(), uses.inMoney() ? uses.bestMoney() : 0, figures));
        return rows;
    }

    private static List<String> row(Uses uses, String name, String makes, int best, double wood, double money,
            Figures figures) {
        List<String> row = new ArrayList<>(List.of(name, makes, String.valueOf(best), figures.wood(wood)));
        if (uses.inMoney()) {
            row.add(Figures.money(Figures.decimals(money, 2), uses.stack().currency()));
        }
        return row;
    }

    /** Heads of the table of boards. */
    public static List<String> boardHeader(Uses uses, Figures figures) {
        List<String> header = new ArrayList<>(List.of("    board"));
        uses.aims().forEach(aim -> header.add(figures.number(aim.thickness())));
        header.add("best at");
        return header;
    }

    /** A board's chance of each thickness, and what it is best used for. */
    public static List<String> chances(Uses uses, PricedBoard board, Figures figures) {
        List<String> cells = new ArrayList<>(uses.aims().stream().map(aim -> Figures.chance(uses.chance(board, aim)))
            .toList());
        cells.add(uses.best(board).map(aim -> figures.number(aim.thickness())).orElse("none"));
        return cells;
    }
}
