package outwind.cli.terminal;

import java.io.PrintWriter;
import outwind.scan.bytes.Progress;

/** A bar on a terminal, gone when all is done; nothing where the output is read by a program. */
public final class ProgressBar implements Progress {

    /** Fits on the narrowest terminal beside a word. */
    private static final int WIDTH = 25;

    /** Work that takes less than this is done before anybody wonders (ns). */
    private static final long PATIENCE = 1_000_000_000;

    private final long start = System.nanoTime();
    private final PrintWriter out;
    private final String what;
    private int drawn = -1;

    /**
     * @param out  where else the report is printed, so that neither is shown where nothing is wanted
     * @param what what is done, as "reading"; one or two words
     */
    public ProgressBar(PrintWriter out, String what) {
        this.out = out;
        this.what = what;
    }

    @Override
    public synchronized void at(long done, long all) {
        int filled = (int) (WIDTH * done / Math.max(1, all));
        if (System.console() == null || filled <= drawn || System.nanoTime() - start < PATIENCE) {
            return;
        }
        drawn = filled;
        out.print("\r" + what + " [" + "#".repeat(filled) + ".".repeat(WIDTH - filled) + "]");
        out.flush();
    }

    /** Wipes the bar away. */
    public synchronized void done() {
        if (drawn >= 0) {
            out.print("\r" + " ".repeat(WIDTH + what.length() + 3) + "\r");
            out.flush();
        }
    }
}
