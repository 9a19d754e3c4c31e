package outwind.judge;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.Stream;
import outwind.blanks.EqualLengths;
import outwind.blanks.FullLengths;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.cutting.Cut;
import outwind.cutting.CuttingPlan;
import outwind.cutting.FaceBCheck;
import outwind.cutting.Machining;
import outwind.flatten.LiftLimit;
import outwind.flatten.NextReading;
import outwind.flatten.Planes;
import outwind.flatten.ReadingsAlone;
import outwind.flatten.Simulation;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.Forecast;
import outwind.forecast.JudgeOptions;
import outwind.numeric.plane.Plane;
import outwind.setup.FaceDown;
import outwind.setup.HoldingCase;
import outwind.setup.RestingPose;
import outwind.setup.Setup;
import outwind.setup.Shim;
import outwind.setup.Stiffness;
import outwind.shop.Cutter;
import outwind.surface.Faces;
import outwind.surface.ImpossibleBoard;
import outwind.surface.MeasuredShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.SuspectReading;
import outwind.surface.trend.Fits;
import outwind.surface.trend.Warp;

/**
 * One board judged: what was read, what it means, how to set it down and how to cut it.
 *
 * @param forecast what comes out of it
 * @param warp     twist, bow and cup
 * @param readings what the readings alone say
 * @param doubts   readings that look wrong
 * @param next     places worth measuring next, the best first
 * @param faceDown which face is better down
 * @param asMeasured how to hold it as it was touched off
 * @param levelled how to hold it so that the thickest board comes out
 * @param cuts     both cuts, for the plane that was chosen
 * @param otherCuts both cuts for the way of holding that was not chosen
 * @param machining every way to make the cuts, the quickest first; empty where no cutter is stated
 * @param checks   what face B should read once face A is cut
 */
public record Judgement(Forecast forecast, Warp warp, ReadingsAlone readings, List<Doubt> doubts,
                        List<NextReading> next, FaceDown faceDown, Setup asMeasured, Setup levelled, CuttingPlan cuts,
                        CuttingPlan otherCuts, List<Machining> machining, List<FaceBCheck> checks) {

    /** More places than anybody walks back for. */
    private static final int MOST_NEXT = 3;

    /** Caliper readings that anybody takes without being asked twice. */
    private static final int FEW_CALIPERS = 4;

    /** Lines of the grid that possible boards are laid down on. */
    private static final int LAID_ALONG = 13;
    private static final int LAID_ACROSS = 5;

    /** Where more readings than this look wrong, the board had better be touched off again. */
    private static final int MOST_DOUBTS = 3;

    public Judgement {
        doubts = List.copyOf(doubts);
        next = List.copyOf(next);
        machining = List.copyOf(machining);
        checks = List.copyOf(checks);
    }

    /**
     * Judges a board with the target that it states.
     *
     * @throws ImpossibleBoard if no board can have given such readings
     */
    public static Judgement of(Board measured, JudgeOptions request) {
        Faces faces = Faces.of(measured);
        Forecast.requireWood(faces);
        Board board = faces.board();
        MeasuredShape shape = faces.shape();
        // Neither asks for anything that is computed below; on a second core they cost no time.
        ForkJoinTask<AsMeasured> asMeasured = ForkJoinTask.adapt(() -> AsMeasured.of(faces, request)).fork();
        ForkJoinTask<List<SuspectReading>> suspects = ForkJoinTask.adapt(() -> shape.suspects(MOST_DOUBTS)).fork();
        Forecast forecast = Forecast.of(faces, request);
        Simulation outlook = forecast.outlook();
        List<Doubt> doubts = suspects.join().stream()
            .map(suspect -> new Doubt(suspect, Simulation.of(MeasuredShape.of(measured.without(suspect.reading())),
                faces.region(), request.skim(), forecast.limit(), request.seed()).levelled()))
            .toList();
        List<NextReading> next = NextReading.of(outlook, board, shape::isScannedAt,
            shape.noise().deviation(), MOST_NEXT);
        List<SampledBoard> possible = asMeasured.join().possible();
        Setup levelled = held(faces, forecast.planes().best().slab().faceA(), possible, request);
        CuttingPlan lying = forecast.cutsAsMeasured().heldOver(asMeasured.join().setup().bed());
        CuttingPlan lifted = forecast.cutsLevelled().heldOver(levelled.bed());
        CuttingPlan cuts = forecast.lifts() ? lifted : lying;
        return new Judgement(forecast, Warp.of(board, forecast.fits()), ReadingsAlone.of(board, shape, request.skim()),
            doubts, next, asMeasured.join().faceDown(), asMeasured.join().setup(), levelled, cuts,
            forecast.lifts() ? lying : lifted,
            Machining.of(cuts, faces.whole(), request.shop().cuttersInRows()),
            FaceBCheck.of(board, shape, cuts, shape.noise().deviation(), request.seed()));
    }

    /**
     * The board on the bed in the position it was measured in.
     *
     * @param possible whole boards that the readings leave possible
     */
    private record AsMeasured(List<SampledBoard> possible, Setup setup, FaceDown faceDown) {

        static AsMeasured of(Faces faces, JudgeOptions request) {
            List<SampledBoard> possible = laidDown(faces, request);
            return new AsMeasured(possible, held(faces, new Plane(0, 0, 0), possible, request), FaceDown.of(faces.whole(),
                possible, faces.board().width(), Stiffness.of(faces.board().species()).density()));
        }
    }

    private static List<SampledBoard> laidDown(Faces faces, JudgeOptions request) {
        return faces.shape().draws(Places.grid(Region.whole(faces.board()), LAID_ALONG, LAID_ACROSS), Setup.DRAWS,
            request.seed());
    }

    private static Setup held(Faces faces, Plane slopes, List<SampledBoard> possible, JudgeOptions request) {
        return Setup.parallelTo(slopes, faces.board(), faces.shape(), faces.whole(), possible, request.push());
    }

    /** True if the verdict is another without a reading that looks wrong; false where no target was given. */
    public boolean decides(Doubt doubt) {
        return chanceOn(doubt.without()).stream().mapToObj(Verdict::of).anyMatch(without -> without != verdict());
    }

    /** Which cuts are planned. */
    public Planned planned() {
        if (!cuts.leavesWood() || request().later()) {
            return Planned.NONE;
        }
        if (request().anyway() || request().stopAt().isPresent()) {
            return Planned.BOTH_FACES;
        }
        if (doubts.stream().anyMatch(this::decides)) {
            return Planned.NONE;
        }
        return switch (verdict()) {
            case YES, NONE -> Planned.BOTH_FACES;
            case DOUBTFUL -> Planned.FACE_A;
            case NO -> Planned.NONE;
        };
    }

    /** The cuts that are planned, in their order. */
    public List<Cut> plannedCuts() {
        return switch (planned()) {
            case BOTH_FACES -> List.of(cuts.faceA(), cuts.faceB());
            case FACE_A -> List.of(cuts.faceA());
            case NONE -> List.of();
        };
    }

    /** What was measured, heights above the bed where that was touched. */
    public Board board() {
        return forecast.faces().board();
    }

    /** What was asked for. */
    public JudgeOptions request() {
        return forecast.request();
    }

    /** Both faces everywhere, and how sure they are. */
    public MeasuredShape shape() {
        return forecast.faces().shape();
    }

    /** Both faces as they most likely are, over the whole board. */
    public SampledBoard whole() {
        return forecast.faces().whole();
    }

    /** Trends of face A. */
    public Fits fits() {
        return forecast.fits();
    }

    /** The reference planes compared, on the most likely faces. */
    public Planes planes() {
        return forecast.planes();
    }

    /** Finished thickness over the boards that the readings leave possible. */
    public Simulation outlook() {
        return forecast.outlook();
    }

    /** Will it finish at the target. */
    public Verdict verdict() {
        return forecast.verdict();
    }

    /** How the board lies if nobody holds it. */
    public RestingPose pose() {
        return forecast.pose();
    }

    /** How far levelling may lift it. */
    public LiftLimit limit() {
        return forecast.limit();
    }

    /**
     * True if a further touch-off may change the answer: it is neither yes nor no, and no reading looks so wrong that
     * touching it off again comes first.
     */
    public boolean isOpen() {
        return doubts.isEmpty() && verdict() != Verdict.YES && verdict() != Verdict.NO;
    }

    /** Places to read next; none where no further reading may change the answer. */
    public List<NextReading> worthReading() {
        return isOpen() ? next() : List.of();
    }

    /** The best places for a few caliper readings, the best first; empty where they would tell nothing. */
    public List<NextReading> byCaliper() {
        return NextReading.byCaliper(outlook(), board(), FEW_CALIPERS);
    }

    /** What comes off face A at a place (mm); negative where the cutter meets air. */
    public double depthAt(double x, double y) {
        return shape().topAt(x, y) - cuts().faceA().plane().at(x, y);
    }

    /**
     * The fewest crosscuts that would save a board which does not make its target in one piece, or may not; empty if it
     * does, if it has no target, or if none save it. Computed when asked for, because few boards need it.
     */
    public Optional<EqualLengths> rescue() {
        Saw saw = Saw.usual(board(), request().shop().limits());
        if (verdict() != Verdict.NO && verdict() != Verdict.DOUBTFUL || !saw.leavesWood(board())) {
            return Optional.empty();
        }
        return FullLengths.of(board(), shape(), board().target().orElseThrow(), saw, Verdict.SURE, request().skim(),
            request().seed()).fewest();
    }

    /** True if the board is to be lifted with shims so that the thickest board comes out. */
    public boolean lifts() {
        return forecast.lifts();
    }

    /** How to hold the board for face A. */
    public Setup setup() {
        return lifts() ? levelled : asMeasured;
    }

    /** What makes this board awkward to hold or to cut. */
    public List<HoldingCase> holdingCases() {
        OptionalDouble cup = warp.cup().filter(Warp.Amount::isReal).stream().mapToDouble(Warp.Amount::value)
            .findFirst();
        OptionalDouble widest = machining.stream().limit(1)
            .flatMap(way -> Stream.concat(Stream.of(way.roughing()), way.finishing().stream()))
            .mapToDouble(Cutter::diameter).max();
        return HoldingCase.of(board(), cuts.thickness(), cup, widest);
    }

    /** What can be done if the board is larger than the bed; worked out when asked for. */
    public Optional<OffBed> offBed() {
        return OffBed.of(this);
    }

    /** How far a push moves the board that is just set down without shims (mm); infinite where it tips. */
    public double movementJustSetDown() {
        return Setup.movementJustSetDown(board(), whole(), pose(), request().push());
    }

    /**
     * How far in from the nearest side of the board the tip of a tapered shim goes (mm); empty where those in use are
     * too thin, or where none are used.
     */
    public OptionalDouble slideIn(Shim shim) {
        double wayIn = Math.min(Math.min(shim.x(), board().length() - shim.x()),
            Math.min(shim.y(), board().width() - shim.y()));
        return request().shop().wedge().filter(wedge -> wedge.reaches(shim.height())).stream()
            .mapToDouble(wedge -> wedge.slideIn(shim.height(), wayIn)).findFirst();
    }

    /** Chance of the target if the board is levelled, 0 to 1; empty if no target was given. */
    public OptionalDouble chance() {
        return forecast.chance();
    }

    /** Chance of the target in a range, 0 to 1; empty if no target was given. */
    public OptionalDouble chanceOn(ThicknessRange range) {
        return forecast.chanceOn(range);
    }
}
