package outwind.judge;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Place;
import outwind.board.file.Recording;
import outwind.surface.PredictedHeight;
import outwind.surface.MeasuredShape;
import outwind.surface.SuspectReading;

/**
 * Whether a height that is being recorded goes with the readings so far, before it is kept.
 *
 * @param pointed what the others point to at the place; none while they are too few. Where some look wrong, what the
 *                rest points to comes first, and all together second: nobody knows yet which of them are right.
 * @param bound   how many standard deviations a height may be off; shared out over all readings that there will be, so
 *                that a sound board is rarely asked about
 */
public record HeightCheck(List<PredictedHeight> pointed, double bound) {

    /** With fewer readings even a plane fits them all, and they point to nothing. */
    private static final int FEWEST = 4;

    public HeightCheck {
        pointed = List.copyOf(pointed);
    }

    /**
     * Looks at one place.
     *
     * @param shape    face A as all readings so far have it; asked for once there are enough of them
     * @param suspects readings that look wrong
     */
    public static HeightCheck at(Place place, Recording recording, Supplier<MeasuredShape> shape,
                                 List<SuspectReading> suspects) {
        double bound = SuspectReading.bound(Math.max(recording.plan().size(), recording.entries().size() + 1));
        if (recording.board().readingsOf(Face.A).size() < FEWEST) {
            return new HeightCheck(List.of(), bound);
        }
        PredictedHeight byAll = shape.get().predict(place.x(), place.y());
        if (suspects.isEmpty()) {
            return new HeightCheck(List.of(byAll), bound);
        }
        Board trusted = recording.board();
        for (SuspectReading suspect : suspects) {
            trusted = trusted.without(suspect.reading());
        }
        return new HeightCheck(List.of(MeasuredShape.of(trusted).predict(place.x(), place.y()), byAll), bound);
    }

    /** What the others point to, if a height (mm) is far from it whichever of them are trusted. */
    public Optional<PredictedHeight> contradicts(double z) {
        boolean far = pointed.stream().allMatch(height -> Math.abs(z - height.mean()) > bound * height.deviation());
        return far ? pointed.stream().findFirst() : Optional.empty();
    }
}
