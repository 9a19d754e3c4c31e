package outwind.judge;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.cutting.Cut;
import outwind.cutting.CuttingPlan;
import outwind.cutting.FaceBHeights;
import outwind.cutting.Machining;
import outwind.cutting.Movement;
import outwind.flatten.RemainingThickness;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.Forecast;
import outwind.forecast.JudgeOptions;
import outwind.surface.Faces;
import outwind.surface.ImpossibleBoard;
import outwind.surface.SuspectReading;

/**
 * A board whose face A is cut and lies on the bed: the one cut that is left, on face B, and what comes out.
 *
 * @param faces    face B on top, heights from the bed
 * @param request  what was asked for
 * @param range    finished thickness over the boards that the readings leave possible
 * @param verdict  will it finish at the target
 * @param cut      of face B
 * @param machining every way to make the cut, the quickest first; empty where no cutter is stated
 * @param movement how the board has moved while face A was cut
 * @param suspects readings on face B that look wrong, the worst first
 */
public record SecondCut(Faces faces, JudgeOptions request, ThicknessRange range, Verdict verdict, Cut cut,
                        List<Machining> machining, Movement movement, List<SuspectReading> suspects) {

    /** Heights further from what was expected than this share of the thickness were not counted from the bed. */
    private static final double ANOTHER_ZERO = 0.25;

    private static final int MOST_SUSPECTS = 3;

    public SecondCut {
        suspects = List.copyOf(suspects);
    }

    /**
     * @param before the board as it was judged before face A was cut; it states the target and what the board is called
     * @param read   face B read with face A on the bed: heights above the bed, or with readings on the bed
     * @throws ImpossibleBoard if the heights of face B cannot be counted from the bed
     */
    public static SecondCut of(Judgement before, Board read) {
        JudgeOptions request = before.request();
        Board first = before.board();
        Board named = read.named(first.name()).onFlatUnderside().zeroedOnBed();
        OptionalDouble target = first.target();
        Faces faces = Faces.of(target.isPresent() ? named.withTarget(target.getAsDouble()) : named);
        requireHeightsFromBed(before, faces);
        Movement movement = Movement.between(before.shape(), before.cuts(), first, faces.board(), request.seed());
        ThicknessRange range = range(before, faces, movement);
        double slab = -faces.kept().greatest(i -> -faces.kept().top()[i]) - request.skim();
        OptionalDouble wanted = request.stopAt().isPresent() ? request.stopAt() : target;
        Cut cut = CuttingPlan.faceBAlone(faces.whole(), faces.kept(),
            Math.max(0, Forecast.reachable(wanted, slab, range)));
        return new SecondCut(faces, request, range, Forecast.verdict(range, target), cut,
            Machining.ofFaceB(cut, faces.whole(), request.shop().cuttersInRows()), movement, faces.shape().suspects(MOST_SUSPECTS));
    }

    /** From both measurements where the board has not moved between them, else from the second alone. */
    private static ThicknessRange range(Judgement before, Faces faces, Movement movement) {
        JudgeOptions request = before.request();
        if (movement.isUnknown() || movement.isReal()) {
            return RemainingThickness.of(faces.shape(), faces.region(), request.skim(), request.seed());
        }
        return RemainingThickness.of(FaceBHeights.draws(before.shape(), before.cuts(), faces.board(),
            RemainingThickness.places(faces.shape(), faces.region()), request.seed()), request.skim());
    }

    private static void requireHeightsFromBed(Judgement before, Faces faces) {
        double expected = before.whole().mean(i -> before.cuts().faceA().plane().at(before.whole().x()[i],
            before.whole().y()[i]) - before.whole().underside()[i]);
        double read = faces.whole().mean(i -> faces.whole().top()[i]);
        if (!(faces.whole().thinnest() > 0) || Math.abs(read - expected) > ANOTHER_ZERO * expected) {
            throw new ImpossibleBoard(String.format(Locale.ROOT, "face B lies %.1f mm above the bed on"
                + " average, but should lie about %.1f mm above it. Set zero on the bed with face A down and read again."
                + " Or add a row with face bed: what the bed reads beside the board.", read, expected));
        }
    }

    /** The board as it was read, heights from the bed. */
    public Board board() {
        return faces.board();
    }

    /** Chance of the target, 0 to 1; empty if no target was given. */
    public OptionalDouble chance() {
        OptionalDouble target = board().target();
        return target.isPresent() ? OptionalDouble.of(range.chanceOf(target.getAsDouble())) : OptionalDouble.empty();
    }
}
