package outwind.surface;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Place;
import outwind.board.Reading;

/**
 * How far zero has drifted, or the board has sunk, while it was measured: shown by places that were read again later.
 *
 * <pre>
 *   d = later height − earlier height at a place, n rows apart;  σ the noise of one reading
 *   rate = Σ n·d / Σ n²,   total = rate · (rows − 1),   standard deviation of the total = √2·σ / √(Σ n²) · (rows − 1)
 * </pre>
 * That is the least-squares line through the differences; rows are taken to have been read in the order of the file.
 *
 * @param total     from the first row to the last (mm); positive where later heights read more
 * @param deviation its standard deviation if there is no drift (mm)
 */
public record ZeroDrift(double total, double deviation) {

    /** One board in some four hundred without any drift shows so many standard deviations. */
    private static final double SURE = 3;

    /** Less than this matters to nobody (mm): our choice. */
    private static final double NOTABLE = 0.2;

    /** Of the readings on face A; empty where no place was read again, or none shows a drift that matters. */
    public static Optional<ZeroDrift> of(Board board) {
        List<Reading> readings = board.scan().isPresent() ? List.of() : board.readingsOf(Face.A);
        Map<Place, List<Integer>> rows = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            rows.computeIfAbsent(new Place(readings.get(i).x(), readings.get(i).y()), place -> new ArrayList<>()).add(i);
        }
        double products = 0;
        double squares = 0;
        for (List<Integer> same : rows.values()) {
            int first = same.get(0);
            for (int later : same.subList(1, same.size())) {
                products += (later - first) * (readings.get(later).z() - readings.get(first).z());
                squares += Math.pow(later - first, 2);
            }
        }
        if (squares == 0) {
            return Optional.empty();
        }
        int steps = readings.size() - 1;
        double noise = ReadingNoise.ofOne(board);
        return Optional.of(new ZeroDrift(products / squares * steps, Math.sqrt(2 / squares) * noise * steps))
            .filter(ZeroDrift::isReal);
    }

    private boolean isReal() {
        return Math.abs(total) > Math.max(NOTABLE, SURE * deviation);
    }
}
