package outwind.stock;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import outwind.board.Board;
import outwind.cutting.CuttingPlan;
import outwind.cutting.FaceBCheck;
import outwind.cutting.Movement;
import outwind.flatten.LiftLimit;
import outwind.flatten.NextReading;
import outwind.flatten.PlaneName;
import outwind.flatten.Planes;
import outwind.flatten.ReadingsAlone;
import outwind.flatten.Simulation;
import outwind.flatten.Slab;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.numeric.Plane;
import outwind.setup.FaceDown;
import outwind.setup.RestingPose;
import outwind.setup.Setup;
import outwind.surface.Bed;
import outwind.surface.Fits;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.Warp;

/**
 * One board judged: what was read, what it means, how to set it down and how to cut it.
 *
 * @param board    what was measured
 * @param request  what was asked for
 * @param fits     trends of face A
 * @param warp     twist, bow and cup
 * @param shape    both faces everywhere, and how sure they are
 * @param whole    both faces as they most likely are, over the whole board
 * @param readings what the readings alone say
 * @param planes   the reference planes compared, on the most likely faces
 * @param outlook  finished thickness over the boards that the readings leave possible
 * @param verdict  will it finish at the target
 * @param doubts   readings that look wrong
 * @param next     places worth touching off next, the best first
 * @param pose     how the board lies if nobody holds it
 * @param limit    how far levelling may lift it
 * @param faceDown which face is better down
 * @param asItLies how to hold it as it was touched off
 * @param levelled how to hold it so that the thickest board comes out
 * @param cuts     both cuts, for the plane that was chosen
 * @param otherCuts both cuts for the way of holding that was not chosen
 * @param checks   what face B should read once face A is cut
 * @param movement how the board has moved since it was judged before face A was cut, if it was
 */
public record Judgement(Board board, Request request, Fits fits, Warp warp, MeasuredShape shape, SampledBoard whole,
                        ReadingsAlone readings, Planes planes, Simulation outlook, Verdict verdict,
                        List<Doubt> doubts, List<NextReading> next, RestingPose pose, LiftLimit limit,
                        FaceDown faceDown, Setup asItLies, Setup levelled, CuttingPlan cuts,
                        CuttingPlan otherCuts, List<FaceBCheck> checks, Optional<Movement> movement) {

    /** More places than anybody walks back for. */
    private static final int MOST_NEXT = 3;

    /** Where more readings than this look wrong, the board had better be touched off anew. */
    private static final int MOST_DOUBTS = 3;

    public Judgement {
        doubts = List.copyOf(doubts);
        next = List.copyOf(next);
        checks = List.copyOf(checks);
    }

    /**
     * Judges a board with the target that it states.
     *
     * @throws ImpossibleBoard if no board can have given such readings
     */
    public static Judgement of(Board measured, Request request) {
        Board board = Bed.measuredFrom(measured);
        double skim = request.skim();
        Fits fits = Fits.of(board);
        MeasuredShape shape = MeasuredShape.of(measured);
        Region region = Region.kept(board);
        SampledBoard whole = SampledBoard.of(shape, Places.fine(board, Region.whole(board)));
        SampledBoard kept = SampledBoard.of(shape, Places.fine(board, region));

        requireWood(whole);
        // Asks for nothing that is reckoned below; on a second core it costs no time.
        CompletableFuture<Setup> lies = CompletableFuture.supplyAsync(() -> Setup.parallelTo(new Plane(0, 0, 0), board,
            shape, whole, request.push()));
        RestingPose pose = RestingPose.of(whole);
        LiftLimit limit = new LiftLimit(pose.bed(), request.mostLift(), board.length(), board.width());
        Simulation outlook = Simulation.of(shape, region, skim, limit, request.seed());
        Verdict verdict = verdict(outlook.levelled(), board.target());
        Verdict lyingVerdict = verdict(outlook.asItLies(), board.target());
        Planes planes = Planes.compare(whole, kept, region, fits, skim, limit, lyingVerdict == Verdict.YES,
            lyingVerdict != verdict);

        Setup asItLies = lies.join();
        Setup levelled = Setup.parallelTo(planes.best().slab().faceA(), board, shape, whole,
            request.push());
        boolean lifts = planes.chosen().name() != PlaneName.AS_IT_LIES;
        OptionalDouble wanted = request.stopAt().isPresent() ? request.stopAt() : board.target();
        CuttingPlan lying = CuttingPlan.of(board, planes.named(PlaneName.AS_IT_LIES).slab(), asItLies, whole, kept,
            reachable(wanted, planes.named(PlaneName.AS_IT_LIES).slab(), outlook.asItLies()), request.cutter());
        CuttingPlan lifted = CuttingPlan.of(board, planes.best().slab(), levelled, whole, kept,
            reachable(wanted, planes.best().slab(), outlook.levelled()), request.cutter());
        CuttingPlan cuts = lifts ? lifted : lying;
        List<Doubt> doubts = shape.suspects(MOST_DOUBTS).stream()
            .map(suspect -> new Doubt(suspect, Simulation.of(MeasuredShape.of(measured.without(suspect.reading())),
                region, skim, limit, request.seed()).levelled()))
            .toList();
        List<NextReading> next = NextReading.of(outlook.boards(), outlook.slabs(), shape.noise().deviation(),
            MOST_NEXT);
        return new Judgement(board, request, fits, Warp.of(board, fits), shape, whole,
            ReadingsAlone.of(board, shape, skim), planes, outlook, verdict, doubts, next, pose, limit,
            FaceDown.of(pose, whole, board.width()), asItLies, levelled, cuts, lifts ? lying : lifted,
            FaceBCheck.of(board, shape, cuts, shape.noise().deviation()), Optional.empty());
    }

    /**
     * The same, told how the board has moved while face A was cut.
     *
     * @param before the board judged before that; this one is face B, with the board lying on its new face A
     */
    public Judgement since(Judgement before) {
        return new Judgement(board, request, fits, warp, shape, whole, readings, planes, outlook, verdict, doubts, next,
            pose, limit, faceDown, asItLies, levelled, cuts, otherCuts, checks,
            Optional.of(Movement.between(before.shape(), before.cuts(), before.board(), board)));
    }

    /**
     * The thickness to cut to: what is wanted if the most likely board bears it, else what is to be expected over all
     * possible boards, which is less than the most likely one promises: that is smoother than any real one.
     */
    private static double reachable(OptionalDouble wanted, Slab slab, ThicknessRange range) {
        boolean borne = wanted.isPresent() && wanted.getAsDouble() <= slab.thickness();
        return borne ? wanted.getAsDouble() : Math.min(slab.thickness(), range.median());
    }

    private static void requireWood(SampledBoard whole) {
        double thinnest = -whole.greatest(i -> whole.underside()[i] - whole.top()[i]);
        if (!(thinnest > 0)) {
            throw new ImpossibleBoard("somewhere face A would lie below the underside: face A and the bed were not"
                + " zeroed"
                + " alike, the thickness is too small for such heights, or the underside is not flat");
        }
    }

    private static Verdict verdict(ThicknessRange range, OptionalDouble target) {
        return target.isPresent() ? Verdict.of(range.chanceOf(target.getAsDouble())) : Verdict.NONE;
    }

    /**
     * True if a further touch-off may change the answer: it is neither yes nor no, and no reading looks so wrong that
     * touching it off again comes first.
     */
    public boolean isOpen() {
        return doubts.isEmpty() && verdict != Verdict.YES && verdict != Verdict.NO;
    }

    /** The crosscuts that would save the board; reckoned when asked for, because few boards need it. */
    public Optional<Rescue> rescue() {
        return Rescue.of(this);
    }

    /** True if the board is to be lifted with shims so that the thickest board comes out. */
    public boolean lifts() {
        return planes.chosen().name() != PlaneName.AS_IT_LIES;
    }

    /** How to hold the board for face A. */
    public Setup setup() {
        return lifts() ? levelled : asItLies;
    }

    /** Chance of the target if the board is levelled, 0 to 1; empty if no target was given. */
    public OptionalDouble chance() {
        return chanceOn(outlook.levelled());
    }

    /** Chance of the target in a range, 0 to 1; empty if no target was given. */
    public OptionalDouble chanceOn(ThicknessRange range) {
        return board.target().isPresent()
            ? OptionalDouble.of(range.chanceOf(board.target().getAsDouble()))
            : OptionalDouble.empty();
    }
}
