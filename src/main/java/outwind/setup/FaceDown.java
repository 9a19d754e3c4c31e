package outwind.setup;

import java.util.List;
import outwind.surface.SampledBoard;

/**
 * How steadily a board lies with either face up, over the boards that its readings leave possible.
 *
 * <p>Of one possible board the better way up is the one that does not rock; if both rock or neither does, the one that
 * stands less far off the bed and so needs the lower shims. A hollow that lies down rests on its ends, a belly rocks:
 * hollow down follows from that (common practice). Which way is better is only said where nearly all possible boards
 * agree.
 *
 * @param asMeasured   the most likely board as it was measured, face A up
 * @param turned       the same board the other way up
 * @param rockingShare share of the possible boards that rock with face A up, 0 to 1
 * @param better       which way up is better
 */
public record FaceDown(RestingPose asMeasured, RestingPose turned, double rockingShare, Better better) {

    /** Which face is better up for the first cut. */
    public enum Better { FACE_A_UP, FACE_B_UP, UNKNOWN }

    /** Possible boards that are laid down both ways. */
    public static final int DRAWS = 40;

    /** Shims that differ by less than this are no reason to turn a board over (mm). */
    private static final double LOWER = 0.3;

    /** Share of the possible boards that must agree before anything is said. */
    private static final double SURE = 0.9;

    /** A board is called steady if no more than this share of the possible boards rocks, and rocking if most do. */
    private static final double STEADY = 0.05;
    private static final double ROCKING = 0.5;

    /**
     * Lays down every possible board, both ways up.
     *
     * @param whole    the whole board as it most likely is
     * @param possible the whole boards that the readings leave possible; the first {@link #DRAWS} are laid down
     * @param width    of the board (mm)
     * @param density  of the wood (kg per m³)
     */
    public static FaceDown of(SampledBoard whole, List<SampledBoard> possible, double width, double density) {
        int rocking = 0;
        int faceAUp = 0;
        int faceBUp = 0;
        List<SampledBoard> laid = possible.subList(0, Math.min(DRAWS, possible.size()));
        for (SampledBoard board : laid) {
            RestingPose lying = RestingPose.of(board, density);
            RestingPose over = RestingPose.of(board.turnedOver(width), density);
            rocking += lying.rocks() ? 1 : 0;
            faceAUp += isBetter(lying, over) ? 1 : 0;
            faceBUp += isBetter(over, lying) ? 1 : 0;
        }
        double enough = SURE * laid.size();
        return new FaceDown(RestingPose.of(whole, density), RestingPose.of(whole.turnedOver(width), density),
            rocking / (double) laid.size(),
            faceAUp >= enough ? Better.FACE_A_UP : faceBUp >= enough ? Better.FACE_B_UP : Better.UNKNOWN);
    }

    private static boolean isBetter(RestingPose one, RestingPose other) {
        return one.rocks() == other.rocks() ? one.widest() < other.widest() - LOWER : other.rocks();
    }

    /** True if it is as good as certain that a finger does not rock the board with face A up. */
    public boolean isSteady() {
        return rockingShare <= STEADY;
    }

    /** True if the board more likely rocks than not. */
    public boolean rocks() {
        return rockingShare >= ROCKING;
    }
}
