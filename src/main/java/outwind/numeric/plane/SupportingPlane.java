package outwind.numeric.plane;

import java.util.List;

/**
 * A plane that lies under a set of points, touches some of them, and is as high as can be at one place.
 *
 * @param plane    the plane
 * @param contacts the points it touches, at most three; their multipliers are the shares of a load at the place
 */
public record SupportingPlane(Plane plane, List<Contact> contacts) {

    public SupportingPlane {
        contacts = List.copyOf(contacts);
    }
}
