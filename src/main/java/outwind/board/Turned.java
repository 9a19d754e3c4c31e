package outwind.board;

import java.util.Locale;

/** How the board was turned over before its face B was touched off. */
public enum Turned {

    /** About its long axis: the ends stay, the edges change places. */
    ALONG,

    /** About its cross axis: the edges stay, the ends change places. */
    END_OVER_END;

    public static Turned named(String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", " ")) {
            case "along" -> ALONG;
            case "end over end" -> END_OVER_END;
            default -> throw new BadValue("turned along or end over end", name,
                "Write along if the ends stayed where they were, end over end if they changed places.");
        };
    }

    /** Where a place {@code x} along face B lies along face A, on a board of this length (mm). */
    public double alongFaceA(double x, double length) {
        return this == ALONG ? x : length - x;
    }

    /** Where a place {@code y} across face B lies across face A, on a board of this width (mm). */
    public double acrossFaceA(double y, double width) {
        return this == ALONG ? width - y : y;
    }
}
