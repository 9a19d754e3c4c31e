package outwind.scan.bytes;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Shares pieces of work out among hands, one thread to each hand, the first being the caller's own.
 *
 * <p>Pieces are begun in order. Once a hand asks to stop no further piece is begun, but those begun are finished: what
 * was done is always all pieces up to some last one.
 */
public final class BlockReader {

    /** Whoever does one piece after another, with tools of its own. */
    public interface Worker {

        /**
         * Does a piece.
         *
         * @return whether further pieces may be begun
         */
        boolean take(int piece) throws IOException;
    }

    private final int pieces;
    private final List<? extends Worker> hands;
    private final PacedProgress progress;
    private final AtomicInteger begun = new AtomicInteger();
    private final AtomicInteger done = new AtomicInteger();
    private final AtomicBoolean stopped = new AtomicBoolean();
    private final AtomicReference<Throwable> failure = new AtomicReference<>();

    private BlockReader(int pieces, List<? extends Worker> hands, PacedProgress progress) {
        this.pieces = pieces;
        this.hands = hands;
        this.progress = progress;
    }

    /**
     * Does pieces 0 to {@code pieces} - 1.
     *
     * @param progress called on the caller's thread with how many are done
     * @throws IOException what a hand threw, after all have come to an end
     */
    public static void work(int pieces, List<? extends Worker> hands, PacedProgress progress) throws IOException {
        new BlockReader(pieces, hands, progress).work();
    }

    private void work() throws IOException {
        Thread[] threads = new Thread[hands.size()];
        for (int i = 1; i < threads.length; i++) {
            Worker hand = hands.get(i);
            threads[i] = new Thread(() -> follow(hand, false), "scan-" + i);
            threads[i].setDaemon(true);
            threads[i].start();
        }
        follow(hands.get(0), true);
        for (int i = 1; i < threads.length; i++) {
            join(threads[i]);
        }
        rethrow(failure.get());
    }

    private void follow(Worker hand, boolean tells) {
        try {
            for (int piece = begun.getAndIncrement(); piece < pieces && !stopped.get();
                    piece = begun.getAndIncrement()) {
                if (!hand.take(piece)) {
                    stopped.set(true);
                }
                int finished = done.incrementAndGet();
                if (tells) {
                    progress.at(finished, pieces);
                }
            }
        } catch (IOException | RuntimeException | Error e) {
            failure.compareAndSet(null, e);
            stopped.set(true);
        }
    }

    private void join(Thread thread) throws IOException {
        try {
            thread.join();
        } catch (InterruptedException e) {
            stopped.set(true);
            Thread.currentThread().interrupt();
            throw new IOException("reading was interrupted", e);
        }
    }

    private static void rethrow(Throwable failure) throws IOException {
        if (failure instanceof IOException e) {
            throw e;
        } else if (failure instanceof RuntimeException e) {
            throw e;
        } else if (failure instanceof Error e) {
            throw e;
        }
    }
}
