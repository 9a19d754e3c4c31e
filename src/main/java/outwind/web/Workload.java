package outwind.web;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;

/**
 * The judging of boards, as many at once as there are cores: each takes up to 80 MB meanwhile, and more at once would
 * be no sooner done. What can wait is done beside the answers, on all cores but one.
 *
 * <p>When nothing was judged for a while, memory goes back to the machine. Java itself gives it back only while it
 * works, and at the bench it works in bursts.
 */
final class Workload implements AutoCloseable {

    private static final int QUIET_SECONDS = 10;

    private final Semaphore turns;
    private final ScheduledThreadPoolExecutor beside;
    private final Runnable release;
    private final AtomicLong begun = new AtomicLong();
    private long seen;
    private long released;

    /** @param release gives memory back to the machine */
    Workload(Runnable release) {
        int cores = Runtime.getRuntime().availableProcessors();
        this.turns = new Semaphore(cores, true);
        this.release = release;
        this.beside = new ScheduledThreadPoolExecutor(Math.max(1, cores - 1), task -> {
            Thread thread = new Thread(task, "judging");
            thread.setDaemon(true);
            return thread;
        });
        beside.scheduleWithFixedDelay(this::look, QUIET_SECONDS, QUIET_SECONDS, TimeUnit.SECONDS);
    }

    /** A turn at judging, until it is closed. */
    interface Turn extends AutoCloseable {

        @Override
        void close();
    }

    /** Waits for a turn. */
    Turn turn() {
        turns.acquireUninterruptibly();
        begun.incrementAndGet();
        return turns::release;
    }

    /** Does work in a turn of its own, beside what is going on; what is cancelled before its turn is not done. */
    <T> CompletableFuture<T> later(Supplier<T> work) {
        return CompletableFuture.supplyAsync(() -> {
            Turn turn = turn();
            try (turn) {
                return work.get();
            }
        }, beside);
    }

    /** Looks whether it is quiet: nothing begun since the last look, and something since memory was given back. */
    void look() {
        long now = begun.get();
        if (now == seen && now != released) {
            release.run();
            released = now;
        }
        seen = now;
    }

    @Override
    public void close() {
        beside.shutdownNow();
    }
}
