package outwind.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class SupportsTest {

    private static final Stiffness WOOD = Stiffness.of(Optional.empty());

    /** A millimetre of air everywhere: every support is a shim. */
    private static final DoubleBinaryOperator LIFTED = (x, y) -> 1;

    // Independent: SplinePlate, another method on a finer basis, with supports and pushes where they are and not at
    // nodes. Pushed: corners, middles of ends, halfway between neighbours along each edge, and random places.
    @Tag("long")
    @Test
    void noPushMovesASimulatedBoardMuchOverTheGive() {
        SplittableRandom random = new SplittableRandom(20);
        double worst = 0;
        int held = 0;
        for (int board = 0; board < 120; board++) {
            Warped warped = Warped.random(random);
            Supports supports = warped.supports();
            if (!supports.holds()) {
                continue;
            }
            held++;
            List<double[]> pushed = pushed(warped, supports, random);
            double[] moved = warped.splinePlate().movements(supports.places().stream()
                .map(place -> new double[] {place.x(), place.y()}).toList(), pushed, Push.USUAL.force());
            for (int p = 0; p < moved.length; p++) {
                worst = Math.max(worst, moved[p]);
                assertTrue(moved[p] <= 1.1 * Push.USUAL.give(), warped + " pushed at " + pushed.get(p)[0] + ", "
                    + pushed.get(p)[1] + " moves " + moved[p] + " on " + supports);
            }
        }
        assertTrue(held >= 117, held + " of 120 hold");
        // Some boards come near the give; if none did, there would be too many supports.
        assertTrue(worst > 0.9 * Push.USUAL.give(), "worst " + worst);
    }

    // Independent: every choice of two shims fewer among the same places, one by one.
    @ParameterizedTest
    @CsvSource({"short and thick, 450, 110, 30, 0", "lifted, 900, 140, 40, 0", "thin, 700, 120, 26, 0",
        "twisted, 1100, 180, 36, 4", "long and twisted, 1500, 160, 38, -3", "three a side, 800, 150, 26, 0"})
    void shimsAreWithinOneOfTheFewest(String board, double length, double width, double thickness, double twist) {
        DoubleBinaryOperator gap = twist == 0 ? LIFTED : twisted(length, width, twist);
        Supports supports = Supports.of(length, width, thickness, WOOD, gap, Push.USUAL);
        assertFalse(supports.inside(), board);

        BoardMesh mesh = BoardMesh.of(length, width, thickness, WOOD, gap, (x, y) -> gap.applyAsDouble(x, y) < 0.05,
            Push.USUAL);
        HeldBoard held = mesh.held();
        List<Integer> places = new ArrayList<>();
        for (int j : new int[] {0, BoardMesh.ACROSS}) {
            for (int i = mesh.first(); i < mesh.x().length - mesh.first(); i++) {
                places.add(mesh.node(i, j));
            }
        }
        places.removeAll(mesh.contacts());
        held.restOn(mesh.countedContacts());

        assertFalse(someHold(held, places, 0, supports.shims().size() - 2), board + ": " + supports);
    }

    // What the search promises, tried move by move: without any one shim the board does not hold, nor with one shim in
    // the stead of two (any two of a few, two neighbours of many).
    @Test
    void noMoveThatIsPromisedThinsTheShims() {
        SplittableRandom random = new SplittableRandom(21);
        int many = 0;
        for (int board = 0; board < 20; board++) {
            Warped warped = board < 8 ? Warped.random(random) : Warped.random(random).sized(1800, 120, 24);
            Supports supports = warped.supports();
            if (supports.inside() || !supports.holds()) {
                continue;
            }
            BoardMesh mesh = BoardMesh.of(warped.length, warped.width, warped.thickness, WOOD, warped::gap,
                (x, y) -> warped.gap(x, y) < 0.05, Push.USUAL);
            Set<Integer> shims = nodes(mesh, supports.shims());
            many += shims.size() > 8 ? 1 : 0;

            HeldBoard held = mesh.held();
            assertTrue(holds(held, mesh, shims), warped.toString());
            for (Set<Integer> thinner : thinner(mesh, shims)) {
                assertFalse(holds(held, mesh, thinner), warped + " holds on " + thinner + " of " + shims);
            }
        }
        assertTrue(many > 3, many + " boards of many shims");
    }

    private static Set<Integer> nodes(BoardMesh mesh, List<Shim> shims) {
        return IntStream.range(0, mesh.gap().length).filter(node -> shims.stream().anyMatch(shim ->
            Math.hypot(shim.x() - mesh.support(node).x(), shim.y() - mesh.support(node).y()) < 1e-6)).boxed()
            .collect(Collectors.toCollection(TreeSet::new));
    }

    private static boolean holds(HeldBoard held, BoardMesh mesh, Set<Integer> shims) {
        List<Integer> all = new ArrayList<>(mesh.countedContacts());
        all.addAll(shims);
        held.restOn(all);
        return held.greatest(Push.USUAL.give()) < Push.USUAL.give();
    }

    /** Every choice that one of the promised moves leads to. */
    private static List<Set<Integer>> thinner(BoardMesh mesh, Set<Integer> shims) {
        List<Set<Integer>> choices = new ArrayList<>();
        for (int one : shims) {
            choices.add(changed(shims, Set.of(one), Set.of()));
            for (int other : shims) {
                for (int place = 0; place < mesh.gap().length && one < other; place++) {
                    boolean edge = mesh.lineAcross(place) % BoardMesh.ACROSS == 0
                        && mesh.lineAlong(place) >= mesh.first()
                        && mesh.lineAlong(place) < mesh.x().length - mesh.first();
                    boolean tried = shims.size() <= 8 || areNeighbours(mesh, one, other, shims)
                        && mesh.lineAcross(place) == mesh.lineAcross(one) && one < place && place < other;
                    if (edge && tried && mesh.support(place).isNeeded() && !shims.contains(place)) {
                        choices.add(changed(shims, Set.of(one, other), Set.of(place)));
                    }
                }
            }
        }
        return choices;
    }

    private static boolean areNeighbours(BoardMesh mesh, int one, int other, Set<Integer> shims) {
        return mesh.lineAcross(one) == mesh.lineAcross(other) && shims.stream().noneMatch(node ->
            mesh.lineAcross(node) == mesh.lineAcross(one) && one < node && node < other);
    }

    private static Set<Integer> changed(Set<Integer> shims, Set<Integer> less, Set<Integer> more) {
        Set<Integer> changed = new TreeSet<>(shims);
        changed.removeAll(less);
        changed.addAll(more);
        return changed;
    }

    private static boolean someHold(HeldBoard held, List<Integer> places, int from, int more) {
        if (more <= 0) {
            return more == 0 && held.greatest(Push.USUAL.give()) < Push.USUAL.give();
        }
        for (int k = from; k <= places.size() - more; k++) {
            held.add(places.get(k));
            boolean hold = someHold(held, places, k + 1, more - 1);
            held.remove(places.get(k));
            if (hold) {
                return true;
            }
        }
        return false;
    }

    @Test
    void thickShortBoardNeedsItsFourCornersOnly() {
        Supports supports = Supports.of(500, 150, 45, WOOD, LIFTED, Push.USUAL);

        assertTrue(supports.holds());
        assertEquals(4, supports.shims().size());
        for (Shim shim : supports.shims()) {
            assertTrue(Math.min(shim.x(), 500 - shim.x()) <= 40, shim.toString());
            assertTrue(shim.y() == 0 || shim.y() == 150, shim.toString());
        }
    }

    @Test
    void thinnerAndLongerBoardsNeedMore() {
        int usual = shims(1000, 150, 40);

        assertTrue(shims(1000, 150, 25) > usual);
        assertTrue(shims(2000, 150, 40) > usual);
        assertTrue(shims(1000, 150, 18) > shims(1000, 150, 25));
    }

    @Test
    void wideThinBoardNeedsSupportAwayFromTheEdges() {
        Supports narrow = Supports.of(1000, 150, 22, WOOD, LIFTED, Push.USUAL);
        Supports wide = Supports.of(1000, 300, 22, WOOD, LIFTED, Push.USUAL);

        assertFalse(narrow.inside());
        assertTrue(wide.inside() && wide.holds());
        assertTrue(wide.shims().stream().anyMatch(shim -> shim.y() > 0 && shim.y() < 300));
    }

    @Test
    void contactsThatTouchAlreadySaveShims() {
        Supports lifted = Supports.of(1200, 180, 40, WOOD, LIFTED, Push.USUAL);
        Supports twisted = Supports.of(1200, 180, 40, WOOD, twisted(1200, 180, 5), Push.USUAL);

        assertTrue(twisted.shims().size() < lifted.shims().size(), twisted + " " + lifted);
        assertTrue(twisted.places().stream().anyMatch(place -> !place.isNeeded() && place.x() == 0 && place.y() == 0));
    }

    @Test
    void boardThatLiesFlatNeedsNoShim() {
        Supports flat = Supports.of(1500, 200, 25, WOOD, (x, y) -> 0, Push.USUAL);

        assertTrue(flat.holds());
        assertTrue(flat.shims().isEmpty());
        // The contacts that are named hold it by themselves, and there are few to check with paper.
        assertTrue(flat.movement() < Push.USUAL.give(), flat.movement() + " mm");
        assertTrue(flat.places().size() < 20, flat.places().toString());
    }

    // Identity: a board turned half round, or seen in a mirror, gets the same supports seen so.
    @ParameterizedTest
    @CsvSource({"1200, 180, 30, 2, 1, 0.5, 0.7", "900, 250, 40, -1, 2, 0.3, -1.1", "2000, 150, 32, 3, -2, 0.2, 0.4"})
    void mirroredBoardGetsTheMirroredSupports(double length, double width, double thickness, double twist, double bow,
            double cup, double kink) {
        DoubleBinaryOperator gap = (x, y) -> warped(length, width, twist, bow, cup).applyAsDouble(x, y)
            + Math.max(0, kink * (x / length - 0.6)) + 0.3 * y / width;
        Supports supports = Supports.of(length, width, thickness, WOOD, gap, Push.USUAL);

        for (int view = 1; view < 4; view++) {
            boolean alongToo = view % 2 == 1;
            boolean acrossToo = view / 2 == 1;
            Supports seen = Supports.of(length, width, thickness, WOOD, (x, y) ->
                gap.applyAsDouble(alongToo ? length - x : x, acrossToo ? width - y : y), Push.USUAL);

            assertEquals(places(supports, false, false, length, width), places(seen, alongToo, acrossToo, length, width));
            assertEquals(supports.movement(), seen.movement(), 1e-6);
        }
    }

    private static Set<String> places(Supports supports, boolean alongToo, boolean acrossToo, double length,
            double width) {
        return supports.places().stream().map(place -> Math.round(100 * (alongToo ? length - place.x() : place.x()))
            + "/" + Math.round(100 * (acrossToo ? width - place.y() : place.y())) + " "
            + Math.round(1e6 * place.height()) + place.touches()).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void boardTooThinToHoldSaysSo() {
        Supports supports = Supports.of(2400, 300, 6, WOOD, LIFTED, Push.USUAL);

        assertFalse(supports.holds());
        assertTrue(supports.movement() >= Push.USUAL.give());
        assertTrue(supports.shims().size() <= Supports.MOST_SHIMS);
    }

    // Statics: only the board's weight holds the far end down. With 50 N on the end of a board of 3.2 N (400 x 100 x
    // 18 mm at 450 kg/m³), moments about the last shims let them lie at most 3.2·200/53.2 = 12 mm from the end.
    @Test
    void lightBoardIsHeldCloseToItsEnds() {
        Supports supports = Supports.of(400, 100, 18, WOOD, LIFTED, Push.USUAL);

        assertTrue(supports.holds());
        assertTrue(supports.shims().stream().mapToDouble(Shim::x).min().orElseThrow() <= 12, supports.toString());
    }

    @Test
    void strongerPushNeedsMore() {
        int usual = shims(1600, 150, 32);

        assertTrue(Supports.of(1600, 150, 32, WOOD, LIFTED, new Push(200, 0.1)).shims().size() > usual);
    }

    @Test
    void sameBoardGetsTheSameSupports() {
        Warped warped = Warped.random(new SplittableRandom(5));

        assertEquals(warped.supports(), warped.supports());
    }

    // A snapshot of our own earlier output: a change to the search that finds other shims is not to slip in unseen.
    @ParameterizedTest
    @CsvFileSource(resources = "supports-snapshot.csv", useHeadersInDisplayName = true)
    void theSearchFindsWhatItFoundBefore(double length, double width, double thickness, String lies, double twist,
            double bow, double cup, boolean holds, boolean inside, double movement, String shims) {
        DoubleBinaryOperator gap = lies.equals("lifted") ? LIFTED : warped(length, width, twist, bow, cup);

        Supports supports = Supports.of(length, width, thickness, WOOD, gap, Push.USUAL);

        assertEquals(shims == null ? "" : shims, supports.shims().stream()
            .map(shim -> Math.round(shim.x()) + "/" + Math.round(shim.y())).collect(Collectors.joining(" ")));
        assertEquals(holds, supports.holds());
        assertEquals(inside, supports.inside());
        assertEquals(movement, supports.movement(), 1e-4);
    }

    private static DoubleBinaryOperator warped(double length, double width, double twist, double bow, double cup) {
        DoubleBinaryOperator face = (x, y) -> {
            double u = 2 * x / length - 1;
            double v = 2 * y / width - 1;
            return twist * u * v + bow * u * u + cup * v * v;
        };
        double lowest = IntStream.rangeClosed(0, 40).boxed().flatMapToDouble(i -> IntStream.rangeClosed(0, 12)
            .mapToDouble(j -> face.applyAsDouble(length * i / 40, width * j / 12))).min().orElseThrow();
        return (x, y) -> face.applyAsDouble(x, y) - lowest;
    }

    @Test
    void supportsAreListedRoundTheBoard() {
        List<Shim> places = Supports.of(1000, 150, 25, WOOD, LIFTED, Push.USUAL).places();

        List<Double> near = places.stream().filter(place -> place.y() == 0).map(Shim::x).toList();
        List<Double> far = places.stream().filter(place -> place.y() == 150).map(Shim::x).toList();

        assertEquals(near.stream().sorted().toList(), near);
        assertEquals(far.stream().sorted((a, b) -> Double.compare(b, a)).toList(), far);
        assertEquals(places.stream().map(Shim::y).sorted().collect(Collectors.toList()),
            places.stream().map(Shim::y).toList());
    }

    @Test
    void boardWithoutThicknessIsRefused() {
        Exception refused = assertThrows(IllegalArgumentException.class,
            () -> Supports.of(1000, 150, 0, WOOD, LIFTED, Push.USUAL));

        assertEquals("board needs positive sizes, got 1000.0 x 150.0 x 0.0", refused.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"0, 150, 20", "1000, 0, 20", "1000, 150, NaN", "Infinity, 150, 20", "1000, 150, -20"})
    void aBoardWithoutASizeIsRefused(double length, double width, double thickness) {
        assertThrows(IllegalArgumentException.class,
            () -> Supports.of(length, width, thickness, WOOD, LIFTED, Push.USUAL));
    }

    private static int shims(double length, double width, double thickness) {
        Supports supports = Supports.of(length, width, thickness, WOOD, LIFTED, Push.USUAL);
        assertTrue(supports.holds());
        return supports.shims().size();
    }

    /** A pure twist lies on two corners; the others are that much up. */
    private static DoubleBinaryOperator twisted(double length, double width, double lift) {
        return (x, y) -> {
            double corner = (2 * x / length - 1) * (2 * y / width - 1);
            return Math.abs(lift) / 2 * (1 - Math.signum(lift) * corner);
        };
    }

    private static List<double[]> pushed(Warped board, Supports supports, SplittableRandom random) {
        List<double[]> pushed = new ArrayList<>();
        for (double x : new double[] {0, board.length()}) {
            for (int j = 0; j <= 2; j++) {
                pushed.add(new double[] {x, board.width() * j / 2});
            }
        }
        List<Shim> places = supports.places();
        for (int k = 0; k + 1 < places.size(); k++) {
            pushed.add(new double[] {(places.get(k).x() + places.get(k + 1).x()) / 2,
                (places.get(k).y() + places.get(k + 1).y()) / 2});
        }
        pushed.add(new double[] {supports.weakestX(), supports.weakestY()});
        for (int k = 0; k < 8; k++) {
            pushed.add(new double[] {random.nextDouble(board.length()), random.nextDouble(board.width())});
        }
        return pushed;
    }

    /** A made-up board, twisted, bowed and cupped at random, lying with its lowest place on the bed. */
    private record Warped(double length, double width, double thickness, double twist, double bow, double cup,
            double lowest) {

        static Warped random(SplittableRandom random) {
            Warped board = new Warped(random.nextDouble(400, 2400), random.nextDouble(100, 320),
                random.nextDouble(18, 50), random.nextDouble(-3, 3), random.nextDouble(-3, 3),
                random.nextDouble(-1, 1), 0);
            double lowest = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= 40; i++) {
                for (int j = 0; j <= 10; j++) {
                    lowest = Math.min(lowest, board.gap(board.length * i / 40, board.width * j / 10));
                }
            }
            return new Warped(board.length, board.width, board.thickness, board.twist, board.bow, board.cup, lowest);
        }

        /** The same warp on a board of another size. */
        Warped sized(double otherLength, double otherWidth, double otherThickness) {
            return new Warped(otherLength, otherWidth, otherThickness, twist, bow, cup, lowest);
        }

        double gap(double x, double y) {
            double u = 2 * x / length - 1;
            double v = 2 * y / width - 1;
            return twist * u * v + bow * u * u + cup * v * v - lowest;
        }

        Supports supports() {
            return Supports.of(length, width, thickness, WOOD, this::gap, Push.USUAL);
        }

        SplinePlate splinePlate() {
            return new SplinePlate(length, width, WOOD.plate(thickness), WOOD.density() * 1e-9 * 9.80665 * thickness);
        }
    }
}
