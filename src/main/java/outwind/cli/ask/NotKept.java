package outwind.cli.ask;

import java.io.IOException;

/** What was typed last could not be kept in the file; its cause says why. */
public final class NotKept extends IOException {

    private static final long serialVersionUID = 1;

    NotKept(IOException cause) {
        super(cause);
    }

    /** Why. */
    public IOException why() {
        return (IOException) getCause();
    }
}
