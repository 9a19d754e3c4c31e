package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import outwind.flatten.ThicknessRange;
import outwind.numeric.plane.Contact;
import outwind.numeric.plane.Gap;
import outwind.numeric.plane.Plane;
import outwind.numeric.plane.WidestGap;
import outwind.surface.BoardShape;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * What any rectangle of a board finishes at once it has been cut out and is levelled on its own.
 *
 * <p>The same possible boards serve for all rectangles; what of a rectangle can touch a plane is its {@link Lattice}. A
 * rectangle never finishes thicker than one that lies inside it, on any possible board: {@link ChanceTable} prunes by
 * that.
 *
 * <p>Most possible boards are distinguished without a linear program of their own. The contacts of another's answer bound
 * the thickness from above, its slopes from below (weak duality); only where the wanted thickness lies between the two
 * is the program solved.
 */
public final class BlankThickness {

    /** A chance of 95 % of so many boards has a standard error of 1 %. */
    static final int DRAWS = 500;

    /** Lines of the grid on a smooth face; a bow loses a thousandth of itself between two of them. */
    private static final int ALONG = 25;
    private static final int ACROSS = 9;

    /** Answers kept to bound further boards by. */
    private static final int KEPT = 6;

    /** Linear programs for a quick bound; what they leave undecided is close to the thickness. */
    private static final int QUICK = 6;

    private final double[] gridX;
    private final double[] gridY;
    private final SampledBoard likely;
    private final List<SampledBoard> draws;
    private final double skim;

    private BlankThickness(double[] gridX, double[] gridY, SampledBoard likely, List<SampledBoard> draws,
            double skim) {
        this.gridX = gridX;
        this.gridY = gridY;
        this.likely = likely;
        this.draws = draws;
        this.skim = skim;
    }

    /**
     * @param usable the part of the board that rectangles lie in
     * @param skim   least depth to come off each face (mm)
     * @param seed   of the possible boards
     */
    public static BlankThickness of(BoardShape shape, Region usable, double skim, long seed) {
        int along = (ALONG - 1) * shape.fineness() + 1;
        int across = (ACROSS - 1) * shape.fineness() + 1;
        Places places = Places.grid(usable, along, across);
        return new BlankThickness(Arrays.copyOf(places.x(), along),
            IntStream.range(0, across).mapToDouble(j -> places.y()[j * along]).toArray(),
            shape.at(places), shape.draws(places, DRAWS, seed), skim);
    }

    /** Chance that a rectangle finishes at a thickness (mm), 0 to 1; zero where it is less than {@code sure}. */
    double chance(Region rectangle, double thickness, double sure) {
        return chance(rectangle, thickness, sure, Integer.MAX_VALUE, false);
    }

    /** A quick bound: never more than the chance, and zero if it is less than {@code sure}. */
    double atLeast(Region rectangle, double thickness, double sure) {
        return chance(rectangle, thickness, sure, QUICK, false);
    }

    /** A quick bound: never less than the chance unless that is less than {@code sure}; then it may be zero. */
    double atMost(Region rectangle, double thickness, double sure) {
        return chance(rectangle, thickness, sure, QUICK, true);
    }

    /**
     * @param programs  linear programs to solve at most
     * @param undecided whether a board that they leave undecided counts as made
     */
    private double chance(Region rectangle, double thickness, double sure, int programs, boolean undecided) {
        int mayFail = (int) Math.floor((1 - sure) * draws.size() + 1e-9);
        Lattice lattice = new Lattice(gridX, gridY, rectangle);
        WidestGap program = WidestGap.over(lattice.x(), lattice.y(), lattice.x(), lattice.y());
        double needed = thickness + 2 * skim;
        List<Gap> kept = new ArrayList<>();
        kept.add(program.between(lattice.heights(likely.top()), lattice.heights(likely.underside())));
        int solved = 0;
        int failed = 0;
        for (SampledBoard draw : draws) {
            double[] top = lattice.heights(draw.top());
            double[] underside = lattice.heights(draw.underside());
            int bounded = bounded(lattice, top, underside, needed, kept);
            boolean made = bounded > 0 || bounded == 0 && undecided;
            if (bounded == 0 && solved < programs) {
                solved++;
                Gap gap = program.between(top, underside, kept.get(0));
                if (kept.size() == KEPT) {
                    kept.remove(KEPT - 1);
                }
                kept.add(0, gap);
                made = gap.width() >= needed;
            }
            failed += made ? 0 : 1;
            if (failed > mayFail) {
                return 0;
            }
        }
        return (draws.size() - failed) / (double) draws.size();
    }

    /** Finished thickness of a rectangle over the possible boards. */
    public ThicknessRange range(Region rectangle) {
        Lattice lattice = new Lattice(gridX, gridY, rectangle);
        WidestGap program = WidestGap.over(lattice.x(), lattice.y(), lattice.x(), lattice.y());
        Gap start = program.between(lattice.heights(likely.top()), lattice.heights(likely.underside()));
        double[] thicknesses = draws.stream().mapToDouble(draw -> program.between(lattice.heights(draw.top()),
            lattice.heights(draw.underside()), start).width() - 2 * skim).sorted().toArray();
        return new ThicknessRange(thicknesses);
    }

    /** 1 if other answers show that the board makes it, −1 if they show that it does not, 0 if they show neither. */
    private static int bounded(Lattice lattice, double[] top, double[] underside, double needed, List<Gap> kept) {
        for (Gap gap : kept) {
            if (mostBy(gap, top, underside) < needed) {
                return -1;
            }
            if (leastBy(gap.upper(), lattice, top, underside) >= needed) {
                return 1;
            }
        }
        return 0;
    }

    /** No pair of planes is further apart than this; see {@link Gap}. */
    private static double mostBy(Gap gap, double[] top, double[] underside) {
        double bound = 0;
        for (Contact contact : gap.contacts()) {
            bound += contact.multiplier() * (contact.upper() ? top[contact.index()] : -underside[contact.index()]);
        }
        return bound;
    }

    /** A pair of planes of these slopes is as far apart as this. */
    private static double leastBy(Plane slopes, Lattice lattice, double[] top, double[] underside) {
        double lowestTop = Double.POSITIVE_INFINITY;
        double highestUnderside = Double.NEGATIVE_INFINITY;
        double[] x = lattice.x();
        double[] y = lattice.y();
        for (int k = 0; k < top.length; k++) {
            double plane = slopes.slopeX() * x[k] + slopes.slopeY() * y[k];
            lowestTop = Math.min(lowestTop, top[k] - plane);
            highestUnderside = Math.max(highestUnderside, underside[k] - plane);
        }
        return lowestTop - highestUnderside;
    }
}
