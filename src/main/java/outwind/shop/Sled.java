package outwind.shop;

import outwind.board.BadValue;

/** What carries the board where it does not lie on the bed of the machine that cuts it. */
public enum Sled {

    /** A flat base between rails; a router runs on the rails. */
    ROUTER("the base of the sled"),

    /** A flat board that goes through a planer with the board on it. */
    PLANER("the sled");

    private final String words;

    Sled(String words) {
        this.words = words;
    }

    /**
     * The sled of that word.
     *
     * @throws BadValue if there is none
     */
    public static Sled named(String word) {
        for (Sled sled : values()) {
            if (sled.name().equalsIgnoreCase(word.strip())) {
                return sled;
            }
        }
        throw new BadValue("sled router or planer", word, "Write router if a router runs on rails over the board, planer"
            + " if board and sled go through a planer.");
    }

    /** What the board lies on, in words. */
    public String words() {
        return words;
    }
}
