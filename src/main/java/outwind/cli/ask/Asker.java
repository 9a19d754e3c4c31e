package outwind.cli.ask;

import java.io.IOException;
import java.util.Optional;

/** Asks a person, or whoever types in a person's stead, for one line at a time. */
public interface Asker extends AutoCloseable {

    /** The line that is typed in answer to a question; empty when there is nothing more to come. */
    Optional<String> ask(String question) throws IOException;

    /** True if the next line has come already, as where rows are pasted. */
    boolean hasMore() throws IOException;

    /** True if somebody types, who takes time over it. */
    default boolean isPerson() {
        return false;
    }

    @Override
    default void close() throws IOException { }
}
