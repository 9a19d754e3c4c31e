package outwind.numeric;

/** What a conditioned field is at several places; see {@link TurnedObservations}. */
public final class KrigedPlaces {

    private final double[] means;
    private final double[] variances;

    KrigedPlaces(double[] means, double[] variances) {
        this.means = means;
        this.variances = variances;
    }

    /** Mean of the field at each place, length m. */
    public double[] means() {
        return means.clone();
    }

    /** Variance of the field at each place, length m; but for rounding not below zero. */
    public double[] variances() {
        return variances.clone();
    }
}
