package outwind.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A small part of the benchmark ReaderFuzz, which has 20 million inputs. */
class ReaderTrialTest {

    @TempDir
    private Path kept;

    private static Stream<String> readers() {
        return ReaderTrial.NAMES.stream();
    }

    @ParameterizedTest
    @MethodSource("readers")
    void whatIsReadIsRightOrRefusedInPlainWords(String reader) throws IOException {
        ReaderTrial trial = new ReaderTrial(reader, kept);

        trial.run(reader.endsWith("scan") ? 100 : 400, 1);

        assertEquals(0, trial.faults());
        assertTrue(trial.taken() > 0 && trial.taken() < trial.tries(), trial.taken() + " of " + trial.tries());
    }
}
