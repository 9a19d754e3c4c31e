package outwind.cli.terminal;

/** What is typed as one word of the command line, fit for one line of a file. */
public final class OneLine {

    private OneLine() { }

    /** The text with a blank for every break, tab and other sign that cannot be seen. */
    public static String of(String text) {
        return text.replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
    }
}
