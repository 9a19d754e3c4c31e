package outwind.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import outwind.board.Board;
import outwind.setup.Shim;
import outwind.stock.Judgement;

/**
 * A support point as it is told to whoever sets the board down.
 *
 * @param shim   where it is, and the gap
 * @param where  under which edge
 * @param number counted round the board; empty where the board touches the bed, or all but touches it
 */
record Support(Shim shim, Where where, OptionalInt number) {

    /** An edge of the board, or away from both. */
    enum Where { NEAR, FAR, INSIDE }

    /** Along an edge, places that touch are shown no nearer to another support than this share of the length. */
    private static final double APART = 0.2;

    /** All shims, in the order in which one walks round the board, and places enough of those that touch the bed. */
    static List<Support> round(Judgement judgement) {
        List<Shim> places = judgement.setup().places();
        List<Support> supports = new ArrayList<>();
        int count = 0;
        for (Shim shim : places) {
            Where where = where(shim, judgement.board());
            if (shim.isNeeded()) {
                supports.add(new Support(shim, where, OptionalInt.of(++count)));
            } else if (where != Where.INSIDE) {
                supports.add(new Support(shim, where, OptionalInt.empty()));
            }
        }
        return thinned(supports, APART * judgement.board().length());
    }

    private static Where where(Shim shim, Board board) {
        return shim.y() <= 0 ? Where.NEAR : shim.y() >= board.width() ? Where.FAR : Where.INSIDE;
    }

    private static List<Support> thinned(List<Support> supports, double apart) {
        List<Support> kept = new ArrayList<>(supports.stream().filter(Support::isShimmed).toList());
        for (Support support : supports) {
            boolean isAlone = kept.stream().filter(other -> other.where() == support.where())
                .noneMatch(other -> Math.abs(other.shim().x() - support.shim().x()) < apart);
            if (!support.isShimmed() && isAlone) {
                kept.add(support);
            }
        }
        return supports.stream().filter(kept::contains).toList();
    }

    boolean isShimmed() {
        return number.isPresent();
    }

    /** True in the half of the board that lies nearer to the far edge. */
    boolean isInFarHalf(Board board) {
        return shim.y() > board.width() / 2;
    }
}
