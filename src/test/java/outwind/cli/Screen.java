package outwind.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.pty4j.PtyProcess;
import com.pty4j.PtyProcessBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** A program on a real terminal: keys in, a screen out. */
final class Screen implements AutoCloseable {

    /** Long enough for the busiest machine; nothing waits longer than it must. */
    private static final long PATIENCE_SECONDS = 30;

    private final PtyProcess process;
    private final StringBuilder shown = new StringBuilder();
    private int seen;

    /**
     * Starts it.
     *
     * @param folder where it runs
     * @param change of the environment
     */
    Screen(Path folder, Map<String, String> change, String... command) throws IOException {
        Map<String, String> environment = new HashMap<>(System.getenv());
        environment.putAll(change);
        process = new PtyProcessBuilder(command).setEnvironment(environment).setDirectory(folder.toString())
            .setInitialColumns(100).setInitialRows(30).start();
        Thread reader = new Thread(this::watch);
        reader.setDaemon(true);
        reader.start();
    }

    private void watch() {
        try (InputStream out = process.getInputStream()) {
            byte[] some = new byte[4096];
            for (int n = out.read(some); n >= 0; n = out.read(some)) {
                synchronized (shown) {
                    shown.append(new String(some, 0, n, StandardCharsets.UTF_8));
                    shown.notifyAll();
                }
            }
        } catch (IOException e) {
            // The terminal closes with the process.
            return;
        }
    }

    /** Waits until something new on the screen holds a text. */
    void await(String text) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        synchronized (shown) {
            while (shown.indexOf(text, seen) < 0) {
                if (System.nanoTime() > end) {
                    fail("no \"" + text + "\" on the screen:\n" + shown);
                }
                shown.wait(100);
            }
            seen = shown.indexOf(text, seen) + text.length();
        }
    }

    void type(String keys) throws IOException {
        process.getOutputStream().write(keys.getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().flush();
    }

    /** The exit code, once the program has ended. */
    int exitCode() throws InterruptedException {
        assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), toString());
        return process.exitValue();
    }

    /** All that was shown. */
    @Override
    public String toString() {
        synchronized (shown) {
            return shown.toString();
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
