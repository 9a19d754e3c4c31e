package outwind.report.text;

import java.util.ArrayList;
import java.util.List;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.LengthsPlan;
import outwind.blanks.SawCut;
import outwind.report.words.BlankSheet;
import outwind.report.words.BuySheet;
import outwind.report.words.Figures;
import outwind.report.words.Page;
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
        List<SawCut> cuts = sheet.layout().cuts();
        List<List<String>> rows = new ArrayList<>(rows(cuts, 0, "the board"));
        List<List<SawCut>> recuts = sheet.layout().recuts();
        for (int i = 0; i < recuts.size(); i++) {
            rows.addAll(rows(recuts.get(i), rows.size(), "offcut " + (i + 1)));
        }
        if (rows.isEmpty()) {
            page.paragraph("No cut is needed.");
            return;
        }
        page.paragraph("Set fence (rip) or stop (crosscut) so far from the near side of the blade, in "
            + figures.unitInFull() + ". The near edge goes to the fence, the end that you measured from to the stop. After a"
            + " cut the fresh edge goes there. At: where the near side of the cut lies on the uncut board.");
        for (int i = 0; i < recuts.size(); i++) {
            Region offcut = sheet.layout().recut().get(i).board();
            page.paragraph("Offcut " + (i + 1) + " is " + figures.place(offcut.x2() - offcut.x1()) + " x "
                + figures.place(offcut.y2() - offcut.y1()) + ", from x\u00a0" + figures.place(offcut.x1()) + " and y\u00a0"
                + figures.place(offcut.y1()) + ".");
        }
        page.gap();
        page.table("  ", List.of("cut", "of", "set to", "comes off", "at"), rows);
    }

    private List<List<String>> rows(List<SawCut> cuts, int before, String whole) {
        List<List<String>> rows = new ArrayList<>();
        for (SawCut cut : cuts) {
            int next = rows.size() + 1;
            boolean last = next == cuts.size() || !inHand(cut, whole).equals(inHand(cuts.get(next), whole));
            rows.add(List.of((before + next) + ". " + (cut.crosscut() ? "crosscut" : "rip"), inHand(cut, whole), setting(cut),
                freed(cut, last), (cut.crosscut() ? "x " : "y ") + figures.number(cut.from())));
        }
        return rows;
    }

    private static String inHand(SawCut cut, String whole) {
        return cut.blank() > 0 ? "blank " + cut.blank() + ", to size" : cut.section() > 0 ? "section " + cut.section()
            : whole;
    }

    /** A cut that the fence leaves no wood for takes a shaving off the edge. */
    private String setting(SawCut cut) {
        return cut.setting() > 0 ? figures.number(cut.setting()) : "trim " + figures.number(cut.to() - cut.from());
    }

    /** What comes off; after the last cut of a piece, what is left of it as well, unless that is waste. */
    private static String freed(SawCut cut, boolean last) {
        String kind = cut.section() > 0 ? "blank " : "section ";
        return (cut.before() == 0 ? "waste" : kind + cut.before())
            + (last && cut.behind() > 0 ? ", leaves " + (cut.before() == 0 ? kind : "") + cut.behind() : "");
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
        page.paragraph("Check the kerf by a trial cut: a wider one takes more than is planned. A board may move as it is cut;"
            + " measure each blank again before you level it. A warped board rocks and can bind the blade: cut it only on"
            + " a machine meant for that. Wear eye, ear and dust protection. Look for metal and loose knots. The"
            + " machine's manual, local rules and training come first.");
    }
}
