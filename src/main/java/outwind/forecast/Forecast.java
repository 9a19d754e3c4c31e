package outwind.forecast;

import java.util.OptionalDouble;
import outwind.board.Board;
import outwind.cutting.CuttingPlan;
import outwind.cutting.Datum;
import outwind.flatten.LiftLimit;
import outwind.flatten.PlaneName;
import outwind.flatten.Planes;
import outwind.flatten.Simulation;
import outwind.flatten.Slab;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.judge.Judgement;
import outwind.numeric.plane.Plane;
import outwind.setup.RestingPose;
import outwind.setup.Setup;
import outwind.setup.Stiffness;
import outwind.surface.Faces;
import outwind.surface.ImpossibleBoard;
import outwind.surface.trend.Fits;

/**
 * What will come out of one board, and along which plane; how to hold it meanwhile is left to {@link Judgement}.
 *
 * @param faces   both faces
 * @param request what was asked for
 * @param fits    trends of face A
 * @param pose    how the board lies if nobody holds it
 * @param limit   how far levelling may lift it
 * @param outlook finished thickness over the boards that the readings leave possible
 * @param verdict will it finish at the target
 * @param planes  the reference planes compared, on the most likely faces
 */
public record Forecast(Faces faces, JudgeOptions request, Fits fits, RestingPose pose, LiftLimit limit, Simulation outlook,
                       Verdict verdict, Planes planes) {

    /** Nobody sets a cutter finer than this (mm); common practice. */
    private static final double FINEST_SETTING = 0.1;

    /**
     * Predicts what a board yields, with the target that it states.
     *
     * @throws ImpossibleBoard if no board can have given such readings
     */
    public static Forecast of(Faces faces, JudgeOptions request) {
        requireWood(faces);
        Board board = faces.board();
        Fits fits = Fits.of(board);
        RestingPose pose = pose(faces);
        LiftLimit limit = limit(pose, board, request);
        Simulation outlook = Simulation.of(faces.shape(), faces.region(), request.skim(), limit, request.seed());
        Verdict verdict = verdict(outlook.levelled(), board.target());
        Verdict lyingVerdict = verdict(outlook.asMeasured(), board.target());
        Planes planes = Planes.compare(faces.whole(), faces.kept(), faces.region(), fits, request.skim(), limit,
            board.target().isPresent() && isAmple(outlook.asMeasured(), board.target().getAsDouble()),
            lyingVerdict != verdict);
        return new Forecast(faces, request, fits, pose, limit, outlook, verdict, planes);
    }

    /**
     * True if a target is made with half a range to spare below the range. Less is enough for a YES before the first
     * cut, but once face A is cut the rest of it may look doubtful, as {@link #reserve} says.
     */
    private static boolean isAmple(ThicknessRange range, double target) {
        return target <= range.low() - range.width() / 2;
    }

    public static RestingPose pose(Faces faces) {
        return RestingPose.of(faces.whole(), Stiffness.of(faces.board().species()).density());
    }

    public static LiftLimit limit(RestingPose pose, Board board, JudgeOptions request) {
        return new LiftLimit(pose.bed(), request.mostLift(), board.length(), board.width());
    }

    /** @throws ImpossibleBoard if the faces meet anywhere */
    public static void requireWood(Faces faces) {
        if (!(faces.whole().thinnest() > 0)) {
            throw new ImpossibleBoard("somewhere face A would lie below the underside: face A and the bed were not"
                + " zeroed alike, the thickness is too small for such heights, or the underside is not flat");
        }
    }

    public static Verdict verdict(ThicknessRange range, OptionalDouble target) {
        return target.isPresent() ? Verdict.of(range.chanceOf(target.getAsDouble())) : Verdict.NONE;
    }

    /** Chance of the target if the board is levelled, 0 to 1; empty if no target was given. */
    public OptionalDouble chance() {
        return chanceOn(outlook.levelled());
    }

    /** Chance of the target in a range, 0 to 1; empty if no target was given. */
    public OptionalDouble chanceOn(ThicknessRange range) {
        OptionalDouble target = faces.board().target();
        return target.isPresent() ? OptionalDouble.of(range.chanceOf(target.getAsDouble())) : OptionalDouble.empty();
    }

    /** True if the board is to be lifted with shims so that the thickest board comes out. */
    public boolean lifts() {
        return planes.chosen().name() != PlaneName.AS_MEASURED;
    }

    /** Both cuts for the plane that was chosen. */
    public CuttingPlan cuts() {
        return lifts() ? cutsLevelled() : cutsAsMeasured();
    }

    /** Both cuts parallel to the bed as the board lay when it was touched off. */
    public CuttingPlan cutsAsMeasured() {
        Slab slab = planes.named(PlaneName.AS_MEASURED).slab();
        // Heights that were measured from the bed need no underside to know where it is.
        return faces.board().isToldFromBed()
            ? cuts(slab, new Plane(0, 0, 0), Datum.BED, outlook.asMeasured())
            : cuts(slab, Setup.bedUnder(faces.whole(), slab.faceA()), Datum.HIGHEST_SPOT, outlook.asMeasured());
    }

    /** Both cuts for the thickest board. */
    public CuttingPlan cutsLevelled() {
        Slab slab = planes.best().slab();
        return cuts(slab, Setup.bedUnder(faces.whole(), slab.faceA()), Datum.HIGHEST_SPOT, outlook.levelled());
    }

    private CuttingPlan cuts(Slab slab, Plane bed, Datum datumA, ThicknessRange range) {
        return CuttingPlan.of(slab, bed, datumA, faces.whole(), faces.kept(), reachable(slab, range),
            reserve(slab, range));
    }

    /**
     * What face B keeps to spare (mm): as much as the most likely board may promise too much, and a range more. Face A
     * is cut no truer than it is zeroed, and then the verdict has to stand, at 95 %, on a second measurement with errors
     * of its own.
     */
    private static double reserve(Slab slab, ThicknessRange range) {
        return Math.max(0, slab.thickness() - range.low()) + range.width();
    }

    /**
     * The thickness to cut to: what is wanted if the most likely board bears it, else what it makes nineteen times in
     * twenty. Where nothing is wanted, what is to be expected over all possible boards, which is less than the most
     * likely one promises: that is smoother than any real one. What nobody asked for is rounded down to a tenth of a
     * millimetre, so that what is printed is what was planned.
     */
    private double reachable(Slab slab, ThicknessRange range) {
        return reachable(request.stopAt().isPresent() ? request.stopAt() : faces.board().target(), slab.thickness(),
            range);
    }

    /**
     * The same of any cut.
     *
     * @param wanted thickness (mm)
     * @param slab   what the most likely board bears (mm)
     * @param range  over all possible boards
     */
    public static double reachable(OptionalDouble wanted, double slab, ThicknessRange range) {
        boolean borne = wanted.isPresent() && wanted.getAsDouble() <= slab;
        return borne ? wanted.getAsDouble()
            : roundedDown(Math.min(slab, wanted.isPresent() && range.low() > 0 ? range.low() : range.median()));
    }

    private static double roundedDown(double thickness) {
        return Math.floor(thickness / FINEST_SETTING + 1e-6) * FINEST_SETTING;
    }
}
