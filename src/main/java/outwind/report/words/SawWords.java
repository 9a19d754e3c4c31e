package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import outwind.blanks.Layout;
import outwind.blanks.SawCut;
import outwind.surface.Region;

/**
 * The cuts of a board one after the other, with what fence and stop are set to.
 *
 * @param layout where to cut
 */
public record SawWords(Layout layout, Figures figures) {

    /** What comes with every list of cuts. */
    public static final String CAUTIONS = "Check the kerf by a trial cut: a wider one takes more than is planned. A board may move"
        + " as it is cut; measure each blank again before you level it. A warped board rocks and can bind the blade: cut it only"
        + " on a machine meant for that. Wear eye, ear and dust protection. Look for metal and loose knots. The"
        + " machine's manual, local rules and training come first.";

    /** Heads of {@link #rows}. */
    public static final List<String> HEADER = List.of("cut", "of", "set to", "comes off", "at");

    /** What the settings are measured from, and which pieces are cut again, one paragraph each. */
    public List<String> explanation() {
        List<String> said = new ArrayList<>(List.of("Set fence (rip) or stop (crosscut) so far from the near side of the blade, in "
            + figures.unitInFull() + ". The near edge goes to the fence, the end that you measured from to the stop. After a"
            + " cut the fresh edge goes there. At: where the near side of the cut lies on the uncut board."));
        IntStream.range(0, layout.recuts().size()).forEach(i -> {
            Region offcut = layout.recut().get(i).board();
            said.add("Offcut " + (i + 1) + " is " + figures.place(offcut.x2() - offcut.x1()) + " x "
                + figures.place(offcut.y2() - offcut.y1()) + ", from x\u00a0" + figures.place(offcut.x1()) + " and y\u00a0"
                + figures.place(offcut.y1()) + ".");
        });
        return said;
    }

    /** A row for each cut, in the order they are made; none if no cut is needed. */
    public List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>(rows(layout.cuts(), 0, "the board"));
        List<List<SawCut>> recuts = layout.recuts();
        for (int i = 0; i < recuts.size(); i++) {
            rows.addAll(rows(recuts.get(i), rows.size(), "offcut " + (i + 1)));
        }
        return rows;
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
}
