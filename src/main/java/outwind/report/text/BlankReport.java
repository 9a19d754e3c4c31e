package outwind.report.text;

import java.util.ArrayList;
import java.util.List;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.LengthsPlan;
import outwind.report.words.BlankSheet;
import outwind.report.words.BuySheet;
import outwind.report.words.Figures;
import outwind.report.words.Page;
import outwind.report.words.SawWords;
import outwind.stock.StackPlan;
import outwind.surface.Region;

/** The sheet that is read at the saw: what comes out, the cuts in order, the blanks, what is left; 80 columns. */
public final class BlankReport {

    /** Narrower or shorter offcuts are not worth a line (mm). */
    private static final double LEAST_OFFCUT = 40;
    private static final int MOST_OFFCUTS = 6;

    /** Longest name in a table. */
    private static final int NAME = 16;

    private final BlankSheet sheet;
    private final Figures figures;
    private final Page page;

    private BlankReport(BlankSheet sheet, Figures figures, Page page) {
        this.sheet = sheet;
        this.figures = figures;
        this.page = page;
    }

    /** Writes the report of a cutting bill against a board. */
    public static String of(BlankPlan plan, Figures figures) {
        return new BlankReport(BlankSheet.of(plan, figures), figures, new Page()).written();
    }

    /** Writes the report of crosscuts alone. */
    public static String of(LengthsPlan plan, Figures figures) {
        return new BlankReport(BlankSheet.of(plan, figures), figures, new Page()).written();
    }

    /**
     * Writes a sheet for every board that a bill takes of a stack.
     *
     * @param currency label of the money, perhaps empty
     */
    public static String of(StackPlan plan, String currency, Figures figures) {
        Page page = new Page();
        page.paragraph(BuySheet.of(plan, currency, figures).verdict());
        for (int i = 0; i < plan.cuts().size(); i++) {
            page.gap();
            page.line("=".repeat(Page.WIDTH));
            page.line("Board " + (i + 1) + " of " + plan.cuts().size());
            new BlankReport(BlankSheet.of(plan.cuts().get(i), figures), figures, page).board();
        }
        page.gap();
        page.line("=".repeat(Page.WIDTH));
        cautions(page);
        return page.toString();
    }

    private String written() {
        board();
        cautions(page);
        return page.toString();
    }

    private void board() {
        page.line(sheet.board().name());
        page.paragraph(sheet.size());
        page.gap();
        page.paragraph(sheet.headline());
        sheet.details().forEach(page::paragraph);
        sheet.board().remarks().forEach(page::paragraph);
        if (!sheet.layout().blanks().isEmpty()) {
            cuts();
            blanks();
        }
        left();
    }

    private void cuts() {
        page.heading("Where to cut");
        SawWords words = new SawWords(sheet.layout(), figures);
        if (words.rows().isEmpty()) {
            page.paragraph("No cut is needed.");
            return;
        }
        words.explanation().forEach(page::paragraph);
        page.gap();
        page.table("  ", SawWords.HEADER, words.rows());
    }

    private void blanks() {
        page.heading("Blanks");
        page.line("Numbered section by section; lengths in " + figures.unitInFull() + ".");
        page.gap();
        List<List<String>> rows = new ArrayList<>();
        List<String> turned = new ArrayList<>();
        int section = 0;
        for (List<Blank> blanks : sheet.layout().allSections()) {
            section++;
            for (Blank blank : blanks) {
                int number = rows.size() + 1;
                rows.add(List.of(number + " " + shortened(blank.name()), String.valueOf(section),
                    BlankSheet.sides(blank, figures), figures.number(blank.wanted()),
                        figures.number(blank.range().median()), Figures.chance(blank.chance())));
                if (blank.turned()) {
                    turned.add(String.valueOf(number));
                }
            }
        }
        page.table("  ", List.of("blank", "section", "along x across", "wanted", "makes", "chance"), rows);
        if (!turned.isEmpty()) {
            page.paragraph("The grain runs across blank " + String.join(", ", turned) + ".");
        }
    }

    private static String shortened(String name) {
        return name.length() <= NAME ? name : name.substring(0, NAME - 1).strip() + "…";
    }

    private void left() {
        page.heading("What is left");
        sheet.missing().forEach(sentence -> page.item("-", sentence));
        List<Region> useful = sheet.layout().offcuts().stream()
            .filter(r -> r.x2() - r.x1() >= LEAST_OFFCUT && r.y2() - r.y1() >= LEAST_OFFCUT)
            .limit(MOST_OFFCUTS).toList();
        if (useful.isEmpty()) {
            page.paragraph("Offcuts: none of " + figures.length(LEAST_OFFCUT) + " or more both ways.");
            return;
        }
        page.paragraph("Offcuts, the largest first:");
        List<List<String>> rows = new ArrayList<>();
        for (Region offcut : useful) {
            rows.add(List.of(figures.place(offcut.x2() - offcut.x1()) + " x "
                + figures.place(offcut.y2() - offcut.y1()),
                figures.place(offcut.x1()), figures.place(offcut.y1()), hasDefect(offcut) ? "holds a defect" : ""));
        }
        page.table("  ", List.of("along x across (" + figures.unit() + ")", "x", "y", ""),
            rows);
    }

    private boolean hasDefect(Region offcut) {
        return sheet.board().defects().stream().anyMatch(defect -> offcut.overlaps(Region.of(defect)));
    }

    private static void cautions(Page page) {
        page.heading("Take care");
        page.paragraph(SawWords.CAUTIONS);
    }
}
