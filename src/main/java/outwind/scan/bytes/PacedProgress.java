package outwind.scan.bytes;

/** Passes on how far the work has come, a few times a second at most. */
public final class PacedProgress {

    private static final long PAUSE_NANOSECONDS = 100_000_000;

    private final Progress progress;
    private final long bytesAll;
    private long lastTold = System.nanoTime();

    PacedProgress(Progress progress, long bytesAll) {
        this.progress = progress;
        this.bytesAll = bytesAll;
    }

    /** So much of the work is done. */
    void at(int pieces, int piecesAll) {
        long now = System.nanoTime();
        if (now - lastTold >= PAUSE_NANOSECONDS) {
            lastTold = now;
            progress.at((long) ((double) bytesAll * pieces / piecesAll), bytesAll);
        }
    }

    /** All of it is done. */
    public void end() {
        progress.at(bytesAll, bytesAll);
    }
}
