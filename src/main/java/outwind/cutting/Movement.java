package outwind.cutting;

import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;
import outwind.surface.Fits;
import outwind.surface.MeasuredShape;
import outwind.surface.Warp;

/**
 * How a board has moved while face A was cut: stress that the sawn wood held in balance lets go.
 *
 * <pre>
 *   difference = height read on face B − height foretold there,  told as twist, bow and cup of face B as it lies
 * </pre>
 * Height and tilt of the difference are left out: they are in how the readings were zeroed.
 *
 * @param change    twist, bow and cup of the difference
 * @param greatest  greatest difference from a plane at any reading (mm)
 * @param tolerance what touching off and the face as it was foretold explain (mm)
 * @param readings  how many places were read
 */
public record Movement(Warp change, double greatest, double tolerance, int readings) {

    /** Less than this is as likely touching off as wood (mm). */
    private static final double NOTABLE = 0.2;

    /** Three readings lie on a plane whatever the board does. */
    private static final int FEWEST = 4;

    /** A difference of this many standard deviations is not the touching off. */
    private static final double DEVIATIONS = 3;

    /**
     * One place of face B.
     *
     * @param difference what was read there less what was foretold
     * @param deviation  standard deviation of the face there, as it was known before (mm)
     */
    private record Compared(Reading difference, double deviation) { }

    /**
     * @param shape  the board as it was before
     * @param cuts   the cut that was made on face A
     * @param before the board as it was measured before
     * @param after  face B touched off as the face, with the board lying on its new face A, turned along unless it
     *               says otherwise
     */
    public static Movement between(MeasuredShape shape, CuttingPlan cuts, Board before, Board after) {
        // How it was turned to touch off face B before the cut says nothing of how it was turned after it.
        Turned turned = after.turned().orElse(Turned.ALONG);
        List<Compared> compared = after.readingsOf(Face.A).stream().map(reading -> {
            double x = turned.alongFaceA(reading.x(), before.length());
            double y = turned.acrossFaceA(reading.y(), before.width());
            return new Compared(reading.withHeight(reading.z()
                - (cuts.faceA().plane().at(x, y) - shape.undersideAt(x, y))), shape.topDeviationAt(x, y));
        }).toList();
        List<Reading> differences = compared.stream().map(Compared::difference).toList();
        Board difference = after.withReadings(differences);
        Fits fits = Fits.of(difference);
        double greatest = differences.stream()
            .mapToDouble(reading -> Math.abs(reading.z() - fits.plane().at(reading.x(), reading.y()))).max().orElse(0);
        double deviation = compared.stream().mapToDouble(Compared::deviation).max().orElse(0);
        return new Movement(Warp.of(difference, fits), greatest,
            DEVIATIONS * Math.hypot(shape.noise().deviation(), deviation), differences.size());
    }

    /** True if there are too few readings to tell. */
    public boolean isUnknown() {
        return readings < FEWEST;
    }

    /** True if a place reads otherwise, or a twist, bow or cup came about, by more than touching off explains. */
    public boolean isReal() {
        return greatest > tolerance || List.of(change.twist(), change.bow(),
            change.cup()).stream().flatMap(Optional::stream)
            .anyMatch(amount -> amount.isReal() && Math.abs(amount.value()) > NOTABLE);
    }
}
