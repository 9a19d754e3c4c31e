package outwind.surface.field;

/**
 * How large the noise of readings may be, as multiples of what it is put down as.
 *
 * @param factors of its standard deviation
 * @param shares  how likely each is; they sum to 1
 */
public record Noises(double[] factors, double[] shares) {

    /** As large as it is put down, no more and no less. */
    public static final Noises AS_STATED = new Noises(new double[] {1}, new double[] {1});

    /** Nobody has said how well the readings repeat; some machines and hands do worse than usual. Our choice. */
    public static final Noises UNSTATED = new Noises(new double[] {1, 1.5, 2.2, 3.2}, new double[] {0.55, 0.2, 0.15, 0.1});
}
