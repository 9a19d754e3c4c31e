package outwind.cli;

/** Input that can be read but does not answer the question; the message says what it lacks, in one sentence. */
final class BadInput extends Exception {

    private static final long serialVersionUID = 1;

    BadInput(String message) {
        super(message);
    }
}
