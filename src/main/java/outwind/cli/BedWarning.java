package outwind.cli;

import java.util.Optional;
import outwind.board.Board;
import outwind.report.words.Figures;
import outwind.shop.BedSize;

/** Says before a board is measured that it is larger than the bed. */
final class BedWarning {

    private BedWarning() { }

    /** A sentence for a board that does not lie on the bed; empty for one that does. */
    static Optional<String> of(BedSize bed, Board board, Figures figures) {
        return bed.holds(board.length(), board.width()) ? Optional.empty() : Optional.of("LARGER THAN THE BED: "
            + figures.place(board.length()) + " x " + figures.placeLength(board.width()) + " does not lie on a bed of "
            + figures.place(bed.length()) + " x " + figures.placeLength(bed.width()) + ". Crosscut or rip it before you"
            + " measure, or cut it in several set-ups; judge says how.");
    }
}
