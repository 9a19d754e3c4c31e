package outwind.surface;

import outwind.board.Board;

/**
 * Both faces of one board: learnt from its readings, and sampled where everything else looks at them.
 *
 * @param measured the board as it was read
 * @param board    the same with heights measured from the bed, where that was touched; see {@link Bed}
 * @param shape    both faces everywhere, and how sure they are
 * @param region   the part that must clean up
 * @param whole    both faces as they most likely are, over the whole board
 * @param kept     the same over the region alone
 */
public record Faces(Board measured, Board board, MeasuredShape shape, Region region, SampledBoard whole,
                    SampledBoard kept) {

    /**
     * Learns and samples both faces.
     *
     * @param measured as {@link MeasuredShape#of(Board)} asks for
     */
    public static Faces of(Board measured) {
        Board board = Bed.measuredFrom(measured);
        MeasuredShape shape = MeasuredShape.of(measured);
        Region region = Region.kept(board);
        Region everything = Region.whole(board);
        SampledBoard whole = shape.at(Places.fine(board, everything));
        SampledBoard kept = region.equals(everything) ? whole
            : shape.at(Places.fine(board, region));
        return new Faces(measured, board, shape, region, whole, kept);
    }
}
