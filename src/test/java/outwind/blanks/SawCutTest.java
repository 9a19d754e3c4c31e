package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import outwind.surface.Region;

class SawCutTest {

    private static SawCut cut(int before, int behind) {
        return new SawCut(true, 2, 3, new Region(0, 0, 100, 50), 10, 62.5, 65.5, before, behind);
    }

    // Worked by hand: 62.5 − 10.
    @Test
    void theStopIsSetFromWhereThePieceBears() {
        assertEquals(52.5, cut(1, 0).setting());
    }

    @Test
    void wasteLiesOnTheOtherSideOfTheLine() {
        assertEquals(SawCut.Keeps.BEFORE, cut(1, 0).keeps());
        assertEquals(SawCut.Keeps.BEHIND, cut(0, 1).keeps());
        assertEquals(SawCut.Keeps.BOTH, cut(1, 2).keeps());
    }

    @Test
    void aCutElsewhereIsOfTheSameKind() {
        assertEquals(new SawCut(true, 2, 3, new Region(0, 0, 100, 50), 20, 30, 33, 4, 5), cut(1, 0).at(20, 30, 33, 4, 5));
    }
}
