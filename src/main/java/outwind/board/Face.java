package outwind.board;

import java.util.Locale;

/** Where a touch-off was taken. */
public enum Face {

    /** The face that was touched first and is cut first. */
    A,

    /** The other face. */
    B,

    /** The machine's bed beside or under the board. */
    BED;

    /** The face a cell names; an empty cell means face A. */
    public static Face named(String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "", "a" -> A;
            case "b" -> B;
            case "bed" -> BED;
            default -> throw new BadValue("face A, B or bed", name,
                "Write A, B or bed, or leave the cell empty for A.");
        };
    }
}
