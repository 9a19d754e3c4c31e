package outwind.cli.option;

/** Input that can be read but does not answer the question; the message says what it lacks, in one sentence. */
public final class BadInput extends Exception {

    private static final long serialVersionUID = 1;

    public BadInput(String message) {
        super(message);
    }
}
