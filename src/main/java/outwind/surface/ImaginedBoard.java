package outwind.surface;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.surface.field.Bends;
import outwind.surface.field.Prior;
import outwind.surface.trend.Term;

/**
 * A board that is known everywhere because it was made up as the {@link Prior} has it: what a board may be like before
 * anybody has touched it.
 *
 * <pre>
 *   z(x, y) = twist·u·v + bow·u² + cup·v² + bends + s·√(2/K)·Σ cos(ωₖ·(x, y) + φₖ),   u, v from −1 to 1
 *   ω = (g₁/rx, g₂/ry)·√(5/χ²₅),   g normal, χ²₅ chi-squared with 5 degrees of freedom, φ even over a turn
 * </pre>
 * The sum of K waves has the covariance of {@link outwind.numeric.Matern52}, and nears a normal field as K grows.
 *
 * <p>Source: A. Rahimi and B. Recht, Advances in Neural Information Processing Systems 20 (2007) 1177–1184; that the
 * frequencies are spread as a t distribution with 2ν = 5 degrees of freedom: C. E. Rasmussen and C. K. I. Williams,
 * Gaussian Processes for Machine Learning, MIT Press 2006, equation 4.15.
 */
public final class ImaginedBoard {

    /** Enough for a sum of them to look normal at every place; our choice. */
    private static final int WAVES = 60;

    /** Twice the smoothness ν of the Matérn covariance. */
    private static final int DEGREES_OF_FREEDOM = 5;

    /** Any thickness (mm) that leaves wood: only what comes off it is looked at. */
    private static final double THICKNESS = 200;

    /** One cosine: amplitude (mm), turn along and across (radians per mm), and phase. */
    record Wave(double height, double along, double across, double phase) {

        double at(double x, double y) {
            return height * Math.cos(along * x + across * y + phase);
        }
    }

    private final double length;
    private final double width;
    private final double twist;
    private final double bow;
    private final double cup;
    /** Heights of all bends, over u and v. */
    private final Bends.Form bends;
    private final List<Wave> waves;

    private ImaginedBoard(double length, double width, double roughness, SplittableRandom random) {
        Prior prior = Prior.FACE;
        this.length = length;
        this.width = width;
        this.twist = random.nextGaussian() * prior.unseen(Term.XY, length, width);
        this.bow = random.nextGaussian() * prior.unseen(Term.XX, length, width);
        this.cup = random.nextGaussian() * prior.unseen(Term.YY, length, width);
        this.bends = bends(prior.bends(), length, random);
        double spread = new NormalDistribution(0, prior.spreadLog()).inverseCumulativeProbability(roughness);
        this.waves = waves(prior.spread() * Math.exp(spread),
            length * prior.rangeAlong() * Math.exp(random.nextGaussian() * prior.rangeLog()),
            width * prior.rangeAcross() * Math.exp(random.nextGaussian() * prior.rangeLog()), random);
    }

    /**
     * Makes one up.
     *
     * @param length    mm
     * @param width     mm
     * @param roughness share of boards that are smoother than this one, above 0 and below 1: how well a board can be
     *                  known depends on that more than on anything else, so a few boards are spread over it evenly
     * @param random    goes on from where it was
     */
    public static ImaginedBoard of(double length, double width, double roughness, SplittableRandom random) {
        return new ImaginedBoard(length, width, roughness, random);
    }

    private static Bends.Form bends(Bends bends, double length, SplittableRandom random) {
        Bends.Form sum = (u, v) -> 0;
        for (Bends.Group group : bends.groups()) {
            double size = group.sizes()[chosen(group.shares(), random)];
            for (Bends.Bend bend : group.bends()) {
                double height = random.nextGaussian() * size * bend.deviation();
                Bends.Form before = sum;
                sum = (u, v) -> before.at(u, v) + height * bend.form().at(u, v);
            }
        }
        if (random.nextDouble() < bends.hingeShare()) {
            double place = Bends.HINGES[random.nextInt(Bends.HINGES.length)];
            double size = Bends.LIFTS[random.nextInt(Bends.LIFTS.length)];
            double lift = random.nextGaussian() * size;
            double turn = random.nextGaussian() * Bends.TURN * size;
            Bends.Form before = sum;
            sum = (u, v) -> before.at(u, v) + Bends.hinge(place, (u + 1) / 2 * length, length) * (lift + turn * v);
        }
        return sum;
    }

    private static int chosen(double[] shares, SplittableRandom random) {
        double at = random.nextDouble();
        int k = 0;
        while (k < shares.length - 1 && at >= shares[k]) {
            at -= shares[k++];
        }
        return k;
    }

    /** A field of this standard deviation (mm) and these ranges (mm), as waves to be summed. */
    static List<Wave> waves(double spread, double rangeX, double rangeY, SplittableRandom random) {
        List<Wave> waves = new ArrayList<>();
        for (int k = 0; k < WAVES; k++) {
            double chiSquared = 0;
            for (int i = 0; i < DEGREES_OF_FREEDOM; i++) {
                chiSquared += Math.pow(random.nextGaussian(), 2);
            }
            double heavy = Math.sqrt(DEGREES_OF_FREEDOM / chiSquared);
            waves.add(new Wave(spread * Math.sqrt(2.0 / WAVES), random.nextGaussian() / rangeX * heavy,
                random.nextGaussian() / rangeY * heavy, random.nextDouble(2 * Math.PI)));
        }
        return waves;
    }

    /** Height of face A (mm). */
    public double at(double x, double y) {
        double u = 2 * x / length - 1;
        double v = 2 * y / width - 1;
        double z = twist * u * v + bow * u * u + cup * v * v + bends.at(u, v);
        for (Wave wave : waves) {
            z += wave.at(x, y);
        }
        return z;
    }

    /** What a person would read off it, spot by spot, each touch-off with its noise. */
    public Board touchedOff(List<TouchGrid.Spot> spots, SplittableRandom random) {
        List<Reading> readings = spots.stream()
            .map(spot -> new Reading(spot.x(), spot.y(), at(spot.x(), spot.y())
                + random.nextGaussian() * ReadingNoise.USUAL, Face.A, "", 1))
            .toList();
        return Board.untouched("imagined", Units.MILLIMETRES, length, width, OptionalDouble.of(THICKNESS),
            OptionalDouble.empty()).evenlyThick().withReadings(readings);
    }
}
