package outwind.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** {@link AnyRequest} with a few thousand requests from a fixed seed; Jazzer makes up more with JAZZER_FUZZ=1. */
@Tag("any-input")
class AnyRequestTest {

    private static AnyRequest requests;

    @BeforeAll
    static void open() throws IOException {
        requests = new AnyRequest();
    }

    @Test
    void twoThousandRequestsFromASeed() throws IOException {
        SplittableRandom random = new SplittableRandom(7);
        int granted = 0;
        for (int i = 0; i < 2000; i++) {
            granted += requests.send(random::nextInt, 100) < 300 ? 1 : 0;
        }
        // The guard against a generator of which nothing gets past the first check.
        assertTrue(granted > 200, "only " + granted + " were granted");
    }

    @FuzzTest(maxDuration = "1h", maxExecutions = 1_000_000)
    void request(FuzzedDataProvider data) throws IOException {
        requests.send(bound -> data.consumeInt(0, bound - 1), 1);
    }
}
