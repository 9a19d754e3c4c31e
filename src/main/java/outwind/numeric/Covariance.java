package outwind.numeric;

/** How alike a random field is at two places. */
@FunctionalInterface
public interface Covariance {

    /**
     * Covariance of the field at ({@code x1}, {@code y1}) and ({@code x2}, {@code y2}), in squared units of the field;
     * the same with the places exchanged.
     */
    double between(double x1, double y1, double x2, double y2);
}
