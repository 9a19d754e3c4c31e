package outwind.judge;

import java.util.Optional;
import outwind.blanks.EqualLengths;
import outwind.blanks.FullLengths;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.cutting.Indexing;
import outwind.flatten.Verdict;
import outwind.shop.BedSize;

/**
 * A board that is larger than the bed, and what can be done.
 *
 * @param bed      that it does not lie on
 * @param tooWide  true if it is too wide, whatever its length
 * @param lengths  equal lengths that lie on the bed and make the target, crosscut first; empty without a target, or if
 *                 none do
 * @param indexing in several set-ups; empty where the board is too wide
 */
public record OffBed(BedSize bed, boolean tooWide, Optional<EqualLengths> lengths, Optional<Indexing> indexing) {

    /** More lengths than anybody cuts a board into. */
    private static final int MOST = 12;

    /** What can be done with a judged board; empty if it lies on the bed, or the bed is not known. */
    public static Optional<OffBed> of(Judgement judgement) {
        Board board = judgement.board();
        Optional<BedSize> bed = judgement.request().shop().bed();
        if (bed.isEmpty() || bed.get().holds(board.length(), board.width())) {
            return Optional.empty();
        }
        double longer = Math.max(bed.get().length(), bed.get().width());
        boolean tooWide = board.width() > Math.min(bed.get().length(), bed.get().width());
        Optional<EqualLengths> lengths = Optional.empty();
        Saw saw = Saw.usual(board, judgement.request().shop().limits());
        if (board.target().isPresent() && !tooWide && saw.leavesWood(board)) {
            FullLengths search = FullLengths.of(board, judgement.shape(), board.target().getAsDouble(),
                saw, Verdict.SURE, judgement.request().skim(), judgement.request().seed());
            for (int count = 2; count <= MOST && lengths.isEmpty(); count++) {
                lengths = search.equal(count).map(EqualLengths::new).filter(equal -> equal.length() <= longer);
            }
        }
        return Optional.of(new OffBed(bed.get(), tooWide, lengths,
            tooWide || board.length() <= longer ? Optional.empty() : Optional.of(Indexing.of(board.length(), longer))));
    }
}
