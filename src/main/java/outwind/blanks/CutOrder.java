package outwind.blanks;

/** Which cuts go right through the board. */
public enum CutOrder {

    /** Crosscut the board into lengths, then rip each length into blanks. */
    CROSSCUT_FIRST("crosscut first"),

    /** Rip the board into strips, then crosscut each strip into blanks. */
    RIP_FIRST("rip first");

    private final String words;

    CutOrder(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
