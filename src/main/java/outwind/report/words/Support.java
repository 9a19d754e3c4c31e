package outwind.report.words;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import outwind.board.Board;
import outwind.judge.Judgement;
import outwind.setup.Shim;

/**
 * A support point as it is shown to whoever sets the board down.
 *
 * @param shim   where it is, and the gap
 * @param where  under which edge
 * @param number counted round the board; empty where the board touches the bed
 * @param unsure true if the gap is known no better than the shim is thick
 */
public record Support(Shim shim, Where where, OptionalInt number, boolean unsure) {

    /** Stands behind the height of a shim that is known no better than it is thick. */
    public static final String UNSURE = "*";

    /** An edge of the board, or away from both. */
    public enum Where { NEAR, FAR, INSIDE }

    /** All shims, and the places where the bed is counted on, in the order in which one walks round the board. */
    public static List<Support> round(Judgement judgement) {
        List<Support> supports = new ArrayList<>();
        int count = 0;
        for (Shim shim : judgement.setup().places()) {
            supports.add(new Support(shim, where(shim, judgement.board()),
                shim.isNeeded() ? OptionalInt.of(++count) : OptionalInt.empty(), judgement.setup().isUnsure(shim)));
        }
        return List.copyOf(supports);
    }

    private static Where where(Shim shim, Board board) {
        return shim.y() <= 0 ? Where.NEAR : shim.y() >= board.width() ? Where.FAR : Where.INSIDE;
    }

    /** How it is named in tables: its number, or a dash where the board touches. */
    public String label() {
        return number.isPresent() ? String.valueOf(number.getAsInt()) : "-";
    }

    /** The height of its shim, marked where that is unsure. */
    public String height(Figures figures) {
        return figures.shim(shim.height()) + (unsure ? UNSURE : "");
    }

    public boolean isShimmed() {
        return number.isPresent();
    }

    /** True in the half of the board that lies nearer to the far edge. */
    public boolean isInFarHalf(Board board) {
        return shim.y() > board.width() / 2;
    }
}
