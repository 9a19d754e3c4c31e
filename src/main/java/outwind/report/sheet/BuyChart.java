package outwind.report.sheet;

import java.util.List;
import outwind.blanks.Blank;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Paper;
import outwind.report.drawing.SizeKey;
import outwind.report.drawing.TextStyle;
import outwind.report.words.BlankSheet;
import outwind.report.words.BuySheet;
import outwind.report.words.Figures;
import outwind.stock.StackPlan;

/** One sheet for the whole bill: every board to buy from above, all to one scale, with its blanks and cuts. */
public final class BuyChart {

    private static final int GAP = 26;

    /** Above the boards, for one board beside its width, and below them (px). */
    private static final int HEAD = 260;
    private static final int AROUND = 260;
    private static final int FOOT = 160;

    /** More than the key to the sizes takes (px). */
    private static final int KEY = 1500;

    /** More boards than this make a sheet that nobody can hang up; the list tells of the rest. */
    private static final int MOST = 24;

    private final StackPlan plan;
    private final BuySheet sheet;
    private final Figures figures;
    private final List<StackPlan.BoardCut> cuts;
    private final double pixels;
    private final Paper paper;

    private BuyChart(StackPlan plan, String currency, Figures figures) {
        this.plan = plan;
        this.sheet = BuySheet.of(plan, currency, figures);
        this.figures = figures;
        this.cuts = plan.cuts().subList(0, Math.min(MOST, plan.cuts().size()));
        double longest = cuts.stream().mapToDouble(cut -> cut.board().length()).max().orElse(1);
        this.pixels = BlankView.MOST_LENGTH / longest;
        double tall = cuts.stream().mapToDouble(cut -> cut.board().width() * pixels + AROUND).sum();
        this.paper = new Paper(Paper.WIDTH, HEAD + (int) tall + FOOT + KEY
            + 60 * sheet.missing().size());
    }

    /**
     * Draws the sheet as a PNG image.
     *
     * @param currency label of the money, perhaps empty
     */
    public static byte[] png(StackPlan plan, String currency, Figures figures) {
        return new BuyChart(plan, currency, figures).drawn();
    }

    private byte[] drawn() {
        int y = paper.paragraph("What to buy and where to cut", TextStyle.NAME, Paper.MARGIN, Paper.MARGIN, Paper.ROOM, 1);
        y = paper.paragraph(sheet.verdict(), TextStyle.TEXT, Paper.MARGIN, y + 6, Paper.ROOM, 3);
        for (String sentence : sheet.missing()) {
            y = paper.paragraph(sentence, TextStyle.TEXT, Paper.MARGIN, y + 2, Paper.ROOM, 2);
        }
        for (int i = 0; i < cuts.size(); i++) {
            y = board(i, y + GAP);
        }
        if (cuts.size() < plan.cuts().size()) {
            y = paper.paragraph("The other " + (plan.cuts().size() - cuts.size()) + " boards are on the cut sheets.",
                TextStyle.TEXT, Paper.MARGIN, y + GAP, Paper.ROOM, 1);
        }
        List<Blank> blanks = cuts.stream().flatMap(cut -> cut.layout().blanks().stream()).toList();
        y = new SizeKey(paper, blanks).draw(Paper.MARGIN, y + GAP, Paper.ROOM, figures);
        y = BlankView.key(paper, !cuts.isEmpty(), "beside and above", cuts.stream()
            .anyMatch(cut -> !cut.board().defects().isEmpty()), y + GAP / 2);
        return paper.png(y + Paper.MARGIN);
    }

    private int board(int number, int top) {
        StackPlan.BoardCut cut = cuts.get(number);
        int y = paper.paragraph((number + 1) + "  " + sheet.boards().get(number), TextStyle.STRONG, Paper.MARGIN, top,
            Paper.ROOM, 2);
        Frame frame = Frame.ofBoard(cut.board(), BlankView.LEFT, y + GAP + BlankView.STRIP, pixels, 1);
        return new BlankView(paper, BlankSheet.of(cut, figures), figures).draw(frame);
    }
}
