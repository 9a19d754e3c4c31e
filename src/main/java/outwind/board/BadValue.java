package outwind.board;

/**
 * A text that is not the value it should be: what was expected, what was found, and how to mend it.
 *
 * <p>Its message is one line, {@code expected … but found …}; where the text stood is for the caller to say.
 */
public final class BadValue extends IllegalArgumentException {

    private static final long serialVersionUID = 1;

    private final Fault.Kind kind;
    private final String expected;
    private final String found;
    private final String mend;

    public BadValue(String expected, String text, String mend) {
        this(Fault.Kind.CAUSE, expected, text, mend);
    }

    BadValue(Fault.Kind kind, String expected, String text, String mend) {
        super("expected " + expected + " but found " + Fault.shown(text));
        this.kind = kind;
        this.expected = expected;
        this.found = Fault.shown(text);
        this.mend = mend;
    }

    /** What it is among the faults of a file. */
    public Fault.Kind kind() {
        return kind;
    }

    /** What should have stood there, for instance {@code z in mm}. */
    public String expected() {
        return expected;
    }

    /** What stood there, in quotes and shortened, or {@code nothing}. */
    public String found() {
        return found;
    }

    /** One sentence on how to mend it. */
    public String mend() {
        return mend;
    }
}
