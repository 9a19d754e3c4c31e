package outwind.numeric.plane;

import java.util.List;

/**
 * The answer of {@link WidestGap}: two parallel planes, and the points that prove that they cannot be further apart.
 *
 * <pre>
 *   Σ m = 1 over each plane's contacts,   Σ m·(x, y) is the same place for both,
 *   width = Σ m·z over the upper plane's contacts − Σ m·z over the lower plane's
 * </pre>
 * For any pair of planes the right-hand side bounds the width from above; equality is the certificate.
 *
 * @param upper    the plane under all points of the upper set
 * @param lower    the plane over all points of the lower set
 * @param width    height of {@code upper} above {@code lower} along z; negative where the sets overlap
 * @param contacts the points in the way, at most four, some perhaps with multiplier zero
 * @param steps    exchanges made
 */
public record Gap(Plane upper, Plane lower, double width, List<Contact> contacts, int steps) {

    public Gap {
        contacts = List.copyOf(contacts);
    }
}
