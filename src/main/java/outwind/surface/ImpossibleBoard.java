package outwind.surface;

/** Readings that no board can have given; the message says in a sentence what does not agree. */
public final class ImpossibleBoard extends RuntimeException {

    private static final long serialVersionUID = 1;

    public ImpossibleBoard(String message) {
        super(message);
    }
}
