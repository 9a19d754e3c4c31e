package outwind.judge;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Place;
import outwind.board.Reading;
import outwind.board.TouchGrid;
import outwind.flatten.NextReading;
import outwind.flatten.Simulation;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.Forecast;
import outwind.forecast.JudgeOptions;
import outwind.surface.Faces;
import outwind.surface.ImpossibleBoard;
import outwind.surface.MeasuredShape;
import outwind.surface.SuspectReading;

/**
 * What a board that is still being touched off looks like so far: as much of a {@link Judgement} as fits between two
 * touch-offs.
 *
 * @param board    with the touch-offs that there are yet
 * @param shape    its faces as those tell them
 * @param outlook  finished thickness over the boards that the touch-offs leave possible
 * @param verdict  will it finish at the target
 * @param suspects touch-offs that look wrong, the worst first
 */
public record Prospect(Board board, MeasuredShape shape, Simulation outlook, Verdict verdict,
                       List<SuspectReading> suspects) {

    /** With fewer touch-offs there is a trend and nothing to check it by, and a verdict would say nothing. */
    public static final int FEWEST = 6;

    /**
     * A verdict with less than this chance of being wrong is not worth further touch-offs. Touched on and on, the
     * chance q that the board misses its target wanders, but so that what is to be expected of it stays q (it is a
     * conditional probability, so a martingale). By Ville's inequality it ever climbs from q = 0.005 to 0.05, where
     * YES ends, at most once in 0.05/0.005 = ten boards, and to 0.95, a plain NO, at most once in 190; and as much the
     * other way about. Source: J. Ville, Étude critique de la notion de collectif, 1939, chapter V.
     */
    private static final double SETTLED = 0.005;

    /** The chance is only as good as the surface: three columns cannot tell a kink from a bow, and do not know it. */
    private static final int FEWEST_COLUMNS = 4;

    /** The fewest touch-offs that are asked for of a whole board; common practice. */
    private static final int FEWEST_TO_SETTLE = 9;

    private static final int MOST_SUSPECTS = 3;

    /** From the tenth time on it gets hardly faster. */
    private static final int REHEARSALS = 10;

    public Prospect {
        suspects = List.copyOf(suspects);
    }

    /**
     * Looks at a board.
     *
     * @param board with at least {@link #FEWEST} touch-offs on face A
     * @throws ImpossibleBoard if no board can have given such readings
     */
    public static Prospect of(Board board) {
        JudgeOptions request = JudgeOptions.usual(board);
        Faces faces = Faces.of(board);
        Forecast.requireWood(faces);
        Simulation outlook = Simulation.of(faces.shape(), faces.region(), request.skim(),
            Forecast.limit(Forecast.pose(faces), faces.board(), request), request.seed());
        return new Prospect(board, faces.shape(), outlook, Forecast.verdict(outlook.levelled(), board.target()),
            faces.shape().suspects(MOST_SUSPECTS));
    }

    /** Judges a flat board of this size a few times, so that the first real one takes no longer than the next. */
    public static void getReady(Board board) {
        List<Reading> flat = new TouchGrid(board.length(), board.width(), 5, 3, 0).tour().stream()
            .map(spot -> new Reading(spot.x(), spot.y(), 0, Face.A, "", 1)).toList();
        for (int i = 0; i < REHEARSALS; i++) {
            of(board.withReadings(flat)).isSettled();
        }
    }

    /** Finished thickness after skims, levelled if that gains anything. */
    public ThicknessRange thickness() {
        return outlook.levelled();
    }

    /** Chance of the target, 0 to 1; empty if there is no target. */
    public OptionalDouble chance() {
        return board.target().isPresent()
            ? OptionalDouble.of(thickness().chanceOf(board.target().getAsDouble())) : OptionalDouble.empty();
    }

    /** True if further touch-offs would hardly change the verdict. */
    public boolean isSettled() {
        double p = chance().orElse(0.5);
        return (p >= 1 - SETTLED || p <= SETTLED) && suspects.isEmpty()
            && board.columnsTouched() >= FEWEST_COLUMNS && placesTouched() >= FEWEST_TO_SETTLE;
    }

    private long placesTouched() {
        return board.readingsOf(Face.A).stream().map(Prospect::place).distinct().count();
    }

    private static Place place(Reading reading) {
        return new Place(reading.x(), reading.y());
    }

    /** The place where one more touch-off would tell most; empty if none tells much. */
    public Optional<NextReading> next() {
        return NextReading.toTouch(outlook, shape.noise().deviation(), 1).stream().findFirst();
    }
}
