package outwind.numeric.plane;

import java.util.List;

/**
 * Two parallel planes with every point on or between them.
 *
 * @param middle   plane halfway between the two
 * @param width    their separation along z, never negative
 * @param contacts points that hold the planes where they are; the proof that no zone is narrower
 */
public record Zone(Plane middle, double width, List<Contact> contacts) {

    public Zone {
        contacts = List.copyOf(contacts);
    }
}
