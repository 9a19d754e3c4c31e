package outwind.board;

import java.util.Locale;

/** What is known of the face that lies on the bed when nobody touched it off. */
public enum Underside {

    /** Of the same shape as the face above, one thickness below it: a board that warped after sawing. */
    ALIKE,

    /** Flat: a board already planed on that side. */
    FLAT;

    public static Underside named(String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "alike" -> ALIKE;
            case "flat" -> FLAT;
            default -> throw new BadValue("underside alike or flat", name,
                "Write alike if it has the shape of the face, flat if it was planed.");
        };
    }
}
