package outwind.fuzz;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/** A reader given one made-up input after another. */
public final class ReaderTrial {

    /** Time of a processor that an input of such size must not take (s). */
    private static final double LONG = 2;

    private final ThreadMXBean clock = ManagementFactory.getThreadMXBean();
    private final AnyReader reader;
    private final Path kept;
    private long tries;
    private long taken;
    private long faults;
    private double slowest;

    /** @param name of the reader, see {@link #NAMES}; faulting inputs are kept in a folder */
    public ReaderTrial(String name, Path kept) {
        this.reader = AnyReader.valueOf(name.toUpperCase(Locale.ROOT).replace(' ', '_'));
        this.kept = kept;
    }

    /** The readers that there are. */
    public static final List<String> NAMES = Stream.of(AnyReader.values())
        .map(reader -> reader.name().toLowerCase(Locale.ROOT).replace('_', ' ')).toList();

    /** Makes up inputs from a seed and gives them to the reader. */
    public void run(long inputs, long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        Path folder = Files.createTempDirectory("reader");
        Mutants mutants = new Mutants(Seeds.of(reader), random.split());
        for (long i = 0; i < inputs; i++) {
            byte[] input = mutants.next();
            if (tried(input, random.split(), folder)) {
                mutants.keep(input);
            }
        }
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    private boolean tried(byte[] input, SplittableRandom random, Path folder) throws IOException {
        tries++;
        long since = clock.getCurrentThreadCpuTime();
        boolean isTaken = false;
        try {
            isTaken = reader.isTaken(input, random, folder);
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            keep(input, e);
        }
        double seconds = (clock.getCurrentThreadCpuTime() - since) / 1e9;
        slowest = Math.max(slowest, seconds);
        if (seconds > LONG) {
            keep(input, new IllegalStateException("it took " + seconds + " s"));
        }
        taken += isTaken ? 1 : 0;
        return isTaken;
    }

    private void keep(byte[] input, Throwable fault) throws IOException {
        faults++;
        if (faults <= 20) {
            Files.createDirectories(kept);
            Path file = Files.write(kept.resolve(reader.name().toLowerCase(Locale.ROOT) + "-" + faults), input);
            System.out.println(file + ": " + fault + " "
                + (fault.getStackTrace().length > 0 ? fault.getStackTrace()[0] : ""));
        }
    }

    /** Inputs tried. */
    public long tries() {
        return tries;
    }

    /** Inputs that the reader took. */
    public long taken() {
        return taken;
    }

    /** Inputs that showed a fault of the reader. */
    public long faults() {
        return faults;
    }

    /** Most time of a processor that one took (s). */
    public double slowest() {
        return slowest;
    }
}
