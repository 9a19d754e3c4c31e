package outwind.scan.bytes;

/**
 * How a file is shared out for reading; what is read does not depend on it.
 *
 * @param threads   at least 1
 * @param blockSize bytes read at a time, at least 1
 * @param progress  hears how far it has come
 */
public record ReadingPlan(int threads, int blockSize, Progress progress) {

    // Small enough to stay in a core's cache, large beside the longest line, which is read twice.
    private static final int USUAL_BLOCK = 512 * 1024;
    // Beyond that the disk or the memory is what is waited for.
    private static final int MOST_THREADS = 8;

    public static ReadingPlan usual(Progress progress) {
        return new ReadingPlan(Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()), USUAL_BLOCK, progress);
    }

    /** How many threads have something to do where there are so many pieces; the caller's own always counts. */
    public int hands(int pieces) {
        return Math.max(1, Math.min(threads, pieces));
    }

    public PacedProgress progress(long bytes) {
        return new PacedProgress(progress, bytes);
    }
}
