package outwind.cutting;

import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Turned;
import outwind.surface.BoardShape;
import outwind.surface.Fits;
import outwind.surface.Warp;

/**
 * How a board has moved while face A was cut: stress that the sawn wood held in balance lets go.
 *
 * <pre>
 *   difference = height read on face B − height foretold there,  told as twist, bow and cup of face B as it lies
 * </pre>
 * Height and tilt of the difference are left out: they are in how the readings were zeroed.
 *
 * @param change   twist, bow and cup of the difference
 * @param greatest greatest difference from a plane at any reading (mm)
 */
public record Movement(Warp change, double greatest) {

    /** Less than this is as likely touching off as wood (mm). */
    private static final double NOTABLE = 0.2;

    /**
     * @param shape  the board as it was before
     * @param cuts   the cut that was made on face A
     * @param before the board as it was measured before
     * @param after  face B touched off as the face, with the board lying on its new face A
     */
    public static Movement between(BoardShape shape, CuttingPlan cuts, Board before, Board after) {
        boolean along = after.turned().or(before::turned).orElse(Turned.ALONG) == Turned.ALONG;
        List<Reading> differences = after.readingsOf(Face.A).stream().map(reading -> {
            double x = along ? reading.x() : before.length() - reading.x();
            double y = along ? before.width() - reading.y() : reading.y();
            return reading.withHeight(reading.z() - (cuts.faceA().plane().at(x, y) - shape.undersideAt(x, y)));
        }).toList();
        Board difference = after.withReadings(differences);
        Fits fits = Fits.of(difference);
        double greatest = differences.stream()
            .mapToDouble(reading -> Math.abs(reading.z() - fits.plane().at(reading.x(), reading.y()))).max().orElse(0);
        return new Movement(Warp.of(difference, fits), greatest);
    }

    /** True if a twist, bow or cup came about that is more than touching off explains. */
    public boolean isReal() {
        return List.of(change.twist(), change.bow(), change.cup()).stream().flatMap(Optional::stream)
            .anyMatch(amount -> amount.isReal() && Math.abs(amount.value()) > NOTABLE);
    }
}
