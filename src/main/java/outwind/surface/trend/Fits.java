package outwind.surface.trend;

import java.util.List;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;

/**
 * The three trends through the readings of face A, and whether each tells more than the one before.
 *
 * @param plane   flat
 * @param twisted flat but for twist
 * @param curved  with twist, bow and cup
 * @param twist   does twist tell more than a plane; empty if that cannot be judged
 * @param curve   do bow and cup tell more than twist alone; empty if that cannot be judged
 */
public record Fits(TrendFit plane, TrendFit twisted, TrendFit curved, Optional<NestedTest> twist,
                   Optional<NestedTest> curve) {

    /** Fits the trends; those of a scanned face to every one of its points. */
    public static Fits of(Board board) {
        if (board.scan().isPresent()) {
            List<TrendFit> fits = TrendFit.nested(board.scan().get().points(), board.length(), board.width());
            return of(fits.get(0), fits.get(1), fits.get(2));
        }
        List<Reading> readings = board.readingsOf(Face.A);
        TrendFit plane = TrendFit.of(TrendModel.PLANE, readings, board.length(), board.width());
        TrendFit twisted = TrendFit.of(TrendModel.TWISTED, readings, board.length(), board.width());
        TrendFit curved = TrendFit.of(TrendModel.CURVED, readings, board.length(), board.width());
        return of(plane, twisted, curved);
    }

    private static Fits of(TrendFit plane, TrendFit twisted, TrendFit curved) {
        return new Fits(plane, twisted, curved, NestedTest.of(plane, twisted), NestedTest.of(twisted, curved));
    }

    /** All three, the simplest first. */
    public List<TrendFit> all() {
        return List.of(plane, twisted, curved);
    }
}
