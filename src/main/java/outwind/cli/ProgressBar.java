package outwind.cli;

import outwind.scan.Progress;

/** A bar on a terminal, gone when all is done; nothing where the output is read by a program. */
final class ProgressBar implements Progress {

    private static final int WIDTH = 40;

    /** Work that takes less than this is done before anybody wonders (ns). */
    private static final long PATIENCE = 1_000_000_000;

    private final long start = System.nanoTime();
    private final String what;
    private int drawn = -1;

    /** @param what what is done, as "reading"; one or two words */
    ProgressBar(String what) {
        this.what = what;
    }

    @Override
    public synchronized void at(long done, long all) {
        int filled = (int) (WIDTH * done / Math.max(1, all));
        if (System.console() == null || filled <= drawn || System.nanoTime() - start < PATIENCE) {
            return;
        }
        drawn = filled;
        System.err.print("\r" + what + " [" + "#".repeat(filled) + ".".repeat(WIDTH - filled) + "]");
        System.err.flush();
    }

    /** Wipes the bar away. */
    synchronized void done() {
        if (drawn >= 0) {
            System.err.print("\r" + " ".repeat(WIDTH + what.length() + 3) + "\r");
            System.err.flush();
        }
    }
}
