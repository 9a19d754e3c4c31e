package outwind.web;

import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Tests in a real browser, Chromium of the system; skipped where there is none, which {@code .ci/run} does not let pass. */
@Tag("browser")
abstract class InBrowser {

    @AutoClose
    static Browser browser;

    /** Of the boards. */
    @TempDir
    Path folder;

    @BeforeAll
    static void open() {
        browser = Browser.orSkip();
    }
}
