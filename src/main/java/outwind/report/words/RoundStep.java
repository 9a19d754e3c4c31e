package outwind.report.words;

import outwind.board.Units;

/**
 * Steps that a rule or a dial is divided into: 1, 2 or 5 times a power of ten in mm; halves of an inch down to 1/64, or
 * whole inches and feet.
 *
 * @param units  unit that is divided
 * @param finest no step is shorter than this (mm)
 */
public record RoundStep(Units units, double finest) {

    private static final double INCH = Units.INCHES.toMillimetres(1);

    private static final double[] INCHES = {1.0 / 64, 1.0 / 32, 1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1, 2, 3, 6, 12,
        24, 48, 96, 192, 384, 768, 1536};

    /** Steps of depth; none finer than what {@link Figures#number} tells apart. */
    public static RoundStep ofDepth(Units units) {
        return new RoundStep(units, units == Units.INCHES ? INCH / 64 : 0.1);
    }

    /** Steps along the board; none finer than what {@link Figures#place} tells apart. */
    public static RoundStep ofPlace(Units units) {
        return new RoundStep(units, units == Units.INCHES ? INCH / 8 : 1);
    }

    /** The shortest step that is at least so long (mm). */
    public double atLeast(double mm) {
        // A step that falls short by rounding only still counts as long enough.
        double least = Math.max(mm, finest) * (1 - 1e-9);
        return units == Units.INCHES ? inches(least) : decimal(least);
    }

    /** Decimals that tell the multiples of a step of 1, 2 or 5 times a power of ten apart. */
    public static int decimals(double step) {
        // A power of ten may be off by rounding.
        return step < 1 ? (int) Math.ceil(-Math.log10(step) - 1e-9) : 0;
    }

    private static double inches(double least) {
        for (double step : INCHES) {
            if (step * INCH >= least) {
                return step * INCH;
            }
        }
        return INCHES[INCHES.length - 1] * INCH;
    }

    private static double decimal(double least) {
        int exponent = (int) Math.floor(Math.log10(least));
        for (int k = exponent; ; k++) {
            for (int digit : new int[] {1, 2, 5}) {
                double step = k < 0 ? digit / Math.pow(10, -k) : digit * Math.pow(10, k);
                if (step >= least) {
                    return step;
                }
            }
        }
    }
}
