package outwind.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The files of the page, by their paths; nothing else of the program can be asked for. */
final class PageFiles {

    private static final Map<String, String> TYPES = Map.of("html", "text/html", "css", "text/css",
        "js", "text/javascript");

    static final Set<String> NAMES = Set.of("index.html", "enter.html", "bench.css", "bench.js", "ask.js",
        "contract.js", "outbox.js", "measure.js", "see.js", "relief.js", "cut.js", "stack.js");

    private PageFiles() { }

    /** A file and its media type. */
    record PageFile(String type, byte[] bytes) { }

    static Optional<PageFile> of(String name) throws IOException {
        if (!NAMES.contains(name)) {
            return Optional.empty();
        }
        try (InputStream in = PageFiles.class.getResourceAsStream(name)) {
            return Optional.of(new PageFile(TYPES.get(name.substring(name.lastIndexOf('.') + 1)) + "; charset=utf-8",
                 in.readAllBytes()));
        }
    }
}
