package outwind.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class VerdictTest {

    @Test
    void yesIsSaidFrom95PercentOnAndNoUpToFive() {
        assertEquals(Verdict.YES, Verdict.of(0.95));
        assertEquals(Verdict.DOUBTFUL, Verdict.of(0.949));
        assertEquals(Verdict.DOUBTFUL, Verdict.of(0.051));
        assertEquals(Verdict.NO, Verdict.of(1 - Verdict.SURE));
        assertEquals(Verdict.NO, Verdict.of(0));
    }
}
