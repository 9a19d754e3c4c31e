package outwind.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;

/** The files of the page, by their paths; nothing else of the program can be asked for. */
final class PageFiles {

    private static final Map<String, String> TYPES = Map.of(
        "index.html", "text/html; charset=utf-8",
        "enter.html", "text/html; charset=utf-8",
        "bench.css", "text/css; charset=utf-8",
        "bench.js", "text/javascript; charset=utf-8",
        "ask.js", "text/javascript; charset=utf-8",
        "measure.js", "text/javascript; charset=utf-8",
        "see.js", "text/javascript; charset=utf-8",
        "cut.js", "text/javascript; charset=utf-8",
        "stack.js", "text/javascript; charset=utf-8");

    private PageFiles() { }

    /** A file and its media type. */
    record PageFile(String type, byte[] bytes) { }

    static Optional<PageFile> of(String name) throws IOException {
        if (!TYPES.containsKey(name)) {
            return Optional.empty();
        }
        try (InputStream in = PageFiles.class.getResourceAsStream(name)) {
            return Optional.of(new PageFile(TYPES.get(name), in.readAllBytes()));
        }
    }
}
