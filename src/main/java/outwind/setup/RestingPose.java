package outwind.setup;

import java.util.ArrayList;
import java.util.List;
import outwind.numeric.plane.Contact;
import outwind.numeric.plane.Plane;
import outwind.numeric.plane.SupportingPlane;
import outwind.numeric.plane.WidestGap;
import outwind.surface.SampledBoard;

/**
 * How the board lies on the bed if nobody holds it.
 *
 * <pre>
 *   bed = the highest plane under the underside at the centre of gravity (the board has sunk as low as it can)
 * </pre>
 * The multipliers of that linear program are the shares of the weight on its contacts. Where one of three shares is
 * under 5 %, the board tips about the line through the other two; it is then set mid-rock: the bed's tilt about that
 * line halfway between the two tilts at which another place comes down. Whether it rocks is judged by a finger; see
 * {@link Finger}.
 *
 * @param bed      the bed in the frame of the readings, mid-rock if the board rocks
 * @param contacts the places that carry it, with their shares
 * @param rocks    true if a finger tips it
 * @param widest   greatest height of the underside above that bed (mm)
 */
public record RestingPose(Plane bed, List<BedContact> contacts, boolean rocks, double widest) {

    /** A share of the weight under this steadies nothing. */
    private static final double STEADY_SHARE = 0.05;

    /** A board that is nowhere further off the bed than this lies flat on it (mm): a sheet of paper. */
    private static final double FLAT = 0.1;

    public RestingPose {
        contacts = List.copyOf(contacts);
    }

    /** True if the board lies on the bed all over. */
    public boolean isFlat() {
        return widest <= FLAT;
    }

    /** The contacts as they are shown; none where the board lies on the bed all over. */
    public List<BedContact> restsAt() {
        return isFlat() ? List.of() : contacts;
    }

    /**
     * Lets the board down on the bed.
     *
     * @param whole   must cover the whole board
     * @param density of the wood (kg per m³)
     */
    public static RestingPose of(SampledBoard whole, double density) {
        double mass = whole.integral(i -> whole.top()[i] - whole.underside()[i]);
        double centreX = whole.integral(i -> whole.x()[i] * (whole.top()[i] - whole.underside()[i])) / mass;
        double centreY = whole.integral(i -> whole.y()[i] * (whole.top()[i] - whole.underside()[i])) / mass;
        SupportingPlane pose = WidestGap.highestPlaneUnder(whole.x(), whole.y(), whole.underside(), centreX, centreY);
        List<BedContact> contacts = new ArrayList<>();
        for (Contact contact : pose.contacts()) {
            if (contact.multiplier() >= STEADY_SHARE) {
                contacts.add(new BedContact(whole.x()[contact.index()], whole.y()[contact.index()],
                    contact.multiplier()));
            }
        }
        boolean rocks = new Finger(whole, centreX, centreY, mass * density * 1e-9 * Finger.GRAVITY).drop() > FLAT;
        return contacts.size() == 2 ? onTwoContacts(whole, pose.plane(), contacts, rocks)
            : new RestingPose(pose.plane(), contacts, rocks, whole.greatest(i -> whole.undersideAbove(pose.plane(), i)));
    }

    /**
     * Tilts the bed by t about the line through the two contacts, {@code bed + t·d} with d the distance from the line,
     * as far as it goes either way, and halfway back.
     */
    private static RestingPose onTwoContacts(SampledBoard whole, Plane bed, List<BedContact> contacts,
                                             boolean rocks) {
        BedContact from = contacts.get(0);
        BedContact to = contacts.get(1);
        double length = Math.hypot(to.x() - from.x(), to.y() - from.y());
        double normalX = -(to.y() - from.y()) / length;
        double normalY = (to.x() - from.x()) / length;
        double most = Double.POSITIVE_INFINITY;
        double least = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < whole.size(); i++) {
            double distance = (whole.x()[i] - from.x()) * normalX + (whole.y()[i] - from.y()) * normalY;
            double gap = Math.max(0, whole.underside()[i] - bed.at(whole.x()[i], whole.y()[i]));
            // The contacts themselves lie on the line, up to the rounding of their coordinates.
            if (distance > 1e-6 * length) {
                most = Math.min(most, gap / distance);
            } else if (distance < -1e-6 * length) {
                least = Math.max(least, gap / distance);
            }
        }
        // Where all of the board lies on one side of the line, it rests along an edge and tips over it at a touch.
        double tilt = Double.isFinite(most - least) ? (most + least) / 2 : 0;
        Plane tilted = Plane.through(from.x(), from.y(), bed.at(from.x(), from.y()), bed.slopeX() + tilt * normalX,
            bed.slopeY() + tilt * normalY);
        double widest = whole.greatest(i -> whole.undersideAbove(tilted, i));
        return new RestingPose(tilted, contacts, rocks, widest);
    }
}
