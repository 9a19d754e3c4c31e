package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import outwind.board.Board;
import outwind.board.Defect;
import outwind.forecast.Forecast;
import outwind.surface.BoardShape;
import outwind.surface.Faces;
import outwind.surface.ImpossibleBoard;
import outwind.surface.Region;

/**
 * What crosscuts alone make of a board: lengths of its full width, each levelled on its own, all at one thickness.
 *
 * <p>Whether a length makes the thickness depends on where it lies; it still does if it is shortened. So for each of a
 * set of places the furthest end is found in one sweep, and from those ends the answers follow: what begins between two
 * of the places reaches at least as far as what begins at the nearer one.
 */
public final class FullLengths {

    /** Ends are first sought on so many places; the longest length is then refined between them. */
    private static final int PLACES = 80;

    /** To how much the longest length is found (mm). */
    private static final double FINE = 1;

    /** More lengths than anybody cuts to save one board. */
    private static final int MOST = 12;

    /** A further cut must bring this share of the wood to be worth making. */
    private static final double WORTH_A_CUT = 0.05;

    private final BlankThickness wood;
    private final List<Defect> defects;
    private final Region usable;
    private final Saw saw;
    private final double thickness;
    private final double sure;
    private final double[] places;
    private final double[] reach;

    private FullLengths(BlankThickness wood, List<Defect> defects, Region usable, Saw saw, double thickness,
            double sure) {
        this.wood = wood;
        this.defects = defects;
        this.usable = usable;
        this.saw = saw;
        this.thickness = thickness;
        this.sure = sure;
        this.places = places();
        this.reach = reach();
    }

    /**
     * Looks over a board.
     *
     * @param measured as read; its defects are cut around, its trim across is cut away
     * @param sure     chance of the thickness from which on a length counts, 0 to 1
     * @throws ImpossibleBoard if no board can have given such readings
     */
    public static FullLengths of(Board measured, double thickness, Saw saw, double sure, double skim, long seed) {
        Faces faces = Faces.of(measured);
        Forecast.requireWood(faces);
        return of(faces.board(), faces.shape(), thickness, saw, sure, skim, seed);
    }

    public static FullLengths of(Board board, BoardShape shape, double thickness, Saw saw, double sure, double skim,
            long seed) {
        Region usable = saw.usable(board);
        BlankThickness wood = BlankThickness.of(shape, usable, skim, seed);
        List<Defect> defects = board.defects().stream()
            .filter(defect -> usable.overlaps(Region.of(defect))).toList();
        return new FullLengths(wood, defects, usable, saw, thickness, sure);
    }

    /** The longest length that makes the thickness; empty if none that is long enough to cut does. */
    Optional<Blank> longest() {
        int best = IntStream.range(0, places.length).boxed()
            .max((a, b) -> Double.compare(reach[a] - places[a], reach[b] - places[b])).orElseThrow();
        double end = refined(places[best], reach[best], next(reach[best], usable.x2()), true);
        double begin = refined(places[best], end, best == 0 ? usable.x1() : places[best - 1], false);
        return end - begin < saw.shortestLength() ? Optional.empty() : Optional.of(blank(begin, end));
    }

    private double next(double from, double otherwise) {
        return Arrays.stream(places).filter(place -> place > from).min().orElse(otherwise);
    }

    /** Moves one end outwards by halves as long as the length still makes the thickness. */
    private double refined(double begin, double end, double limit, boolean atEnd) {
        double good = atEnd ? end : begin;
        double bad = limit;
        if (atEnd ? makes(begin, bad) : makes(bad, end)) {
            return bad;
        }
        while (Math.abs(bad - good) > FINE) {
            double middle = (good + bad) / 2;
            if (atEnd ? makes(begin, middle) : makes(middle, end)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good;
    }

    /** Equal lengths that all make the thickness, as long as so many can be; empty if they are too short. */
    public Optional<List<Blank>> equal(int count) {
        double longest = (usable.x2() - usable.x1() - (count - 1) * saw.kerf()) / count;
        if (longest < saw.shortestLength()) {
            return Optional.empty();
        }
        List<Double> begins = side(count, longest);
        double length = longest;
        if (!allMake(begins, longest)) {
            double good = 0;
            double bad = longest;
            while (bad - good > FINE) {
                double middle = (good + bad) / 2;
                if (begins(count, middle).size() == count) {
                    good = middle;
                } else {
                    bad = middle;
                }
            }
            length = Math.floor(good);
            begins = begins(count, length);
        }
        double cut = length;
        return cut < saw.shortestLength() ? Optional.empty()
            : Optional.of(begins.stream().map(begin -> blank(begin, Math.min(usable.x2(), begin + cut))).toList());
    }

    private List<Double> side(int count, double length) {
        return IntStream.range(0, count).mapToObj(i -> usable.x1() + i * (length + saw.kerf())).toList();
    }

    private boolean allMake(List<Double> begins, double length) {
        return begins.stream().allMatch(begin -> makes(begin, Math.min(usable.x2(), begin + length)));
    }

    /** Where lengths begin, each as early as it may, until there are enough. */
    private List<Double> begins(int count, double length) {
        List<Double> begins = new ArrayList<>();
        double from = usable.x1();
        while (begins.size() < count && from + length <= usable.x2() + Stops.SAME) {
            int at = Arrays.binarySearch(places, from);
            int nearer = at >= 0 ? at : -at - 2;
            if (reach[nearer] >= from + length - Stops.SAME) {
                begins.add(from);
                from += length + saw.kerf();
            } else {
                from = places[nearer + 1];
            }
        }
        return begins;
    }

    /**
     * Equal lengths for the fewest cuts: more of them only where that brings a twentieth more wood to thickness. Empty
     * if no equal lengths that are long enough to cut make it.
     */
    public Optional<EqualLengths> fewest() {
        List<List<Blank>> all = new ArrayList<>();
        for (int count = 1; count <= MOST; count++) {
            (count == 1 ? longest().map(List::of) : equal(count)).ifPresent(all::add);
            if (!all.isEmpty() && total(all.get(all.size() - 1)) > (1 - WORTH_A_CUT) * (usable.x2() - usable.x1())) {
                break;
            }
        }
        double most = all.stream().mapToDouble(FullLengths::total).max().orElse(0);
        return all.stream().filter(lengths -> total(lengths) >= (1 - WORTH_A_CUT) * most).findFirst()
            .map(EqualLengths::new);
    }

    private static double total(List<Blank> lengths) {
        return lengths.stream().mapToDouble(Blank::along).sum();
    }

    private double[] places() {
        TreeSet<Double> sorted = new TreeSet<>(List.of(usable.x1(), usable.x2()));
        double step = Math.max(saw.raster(), (usable.x2() - usable.x1()) / PLACES);
        for (int i = 1; usable.x1() + i * step < usable.x2() - Stops.SAME; i++) {
            sorted.add(usable.x1() + i * step);
        }
        for (Defect defect : defects) {
            sorted.add(Math.max(usable.x1(), defect.x1()));
            sorted.add(Math.min(usable.x2(), defect.x2()));
        }
        return sorted.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double[] reach() {
        double[] furthest = new double[places.length];
        int end = 0;
        for (int begin = 0; begin < places.length; begin++) {
            end = Math.max(end, begin);
            while (end + 1 < places.length && makes(places[begin], places[end + 1])) {
                end++;
            }
            furthest[begin] = places[end];
        }
        return furthest;
    }

    private boolean makes(double begin, double end) {
        Region region = region(begin, end);
        return saw.limits().widest() >= region.y2() - region.y1()
            && defects.stream().noneMatch(defect -> region.overlaps(Region.of(defect)))
            && wood.chance(region, thickness, sure) >= sure;
    }

    private Region region(double begin, double end) {
        return new Region(begin, usable.y1(), end, usable.y2());
    }

    private Blank blank(double begin, double end) {
        Region region = region(begin, end);
        return new Blank("length", -1, region, false, thickness, wood.range(region), region.area());
    }
}
