package outwind.numeric;

/** How alike a random field is at two places, told from the offset between them. */
@FunctionalInterface
public interface Covariance {

    /**
     * Covariance of the field at two places.
     *
     * @param dx offset along x
     * @param dy offset along y
     * @return the covariance, in squared units of the field; greatest at no offset, the same for an offset and its
     *     reverse
     */
    double between(double dx, double dy);
}
