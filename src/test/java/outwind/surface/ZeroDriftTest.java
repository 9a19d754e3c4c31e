package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.BoardBuilder;

class ZeroDriftTest {

    /** Fifteen places, the first three again; zero drifts evenly by so much from the first row to the last. */
    private static Board board(double drift, double noise, SplittableRandom random) {
        BoardBuilder board = Board.builder("drifting", 900, 180).thickness(30);
        for (int row = 0; row < 18; row++) {
            int place = row % 15;
            board.reading(20 + 215 * (place % 5), 15 + 75 * (place / 5), 0.3 * place % 5 + drift * row / 17
                + noise * random.nextGaussian());
        }
        return board.build();
    }

    // Without noise the line through the differences is the drift itself.
    @Test
    void aDriftWithoutNoiseIsFoundInFull() {
        ZeroDrift found = ZeroDrift.of(board(-0.6, 0, new SplittableRandom(1))).orElseThrow();

        assertEquals(-0.6, found.total(), 1e-9);
    }

    // Against a regression through the origin by commons-math3.
    @Test
    void theRateIsThatOfALeastSquaresLine() {
        Board board = board(0.9, 0.05, new SplittableRandom(2));
        SimpleRegression line = new SimpleRegression(false);
        for (int place = 0; place < 3; place++) {
            line.addData(15, board.readings().get(15 + place).z() - board.readings().get(place).z());
        }

        assertEquals(17 * line.getSlope(), ZeroDrift.of(board).orElseThrow().total(), 1e-9);
    }

    // Worked by hand: one difference of two readings has √2 of the noise of one; three of them, 15 rows apart each,
    // give the rate to that over √3·15, and there are 17 steps from the first row to the last.
    @Test
    void theRateIsAsSureAsThreeDifferencesMakeIt() {
        Board board = board(0.9, 0, new SplittableRandom(1));

        assertEquals(Math.sqrt(2) * ReadingNoise.ofOne(board) / (Math.sqrt(3) * 15) * 17,
            ZeroDrift.of(board).orElseThrow().deviation(), 1e-12);
    }

    @Test
    void aSteadyZeroRaisesNoAlarm() {
        SplittableRandom random = new SplittableRandom(3);
        int alarms = 0;
        for (int i = 0; i < 400; i++) {
            alarms += ZeroDrift.of(board(0, 0.08, random)).isPresent() ? 1 : 0;
        }

        assertTrue(alarms <= 4, alarms + " of 400");
    }

    @Test
    void nothingIsKnownWhereNoPlaceWasReadAgain() {
        Board board = Board.builder("once", 900, 180).thickness(30).reading(10, 10, 0).reading(890, 10, 5)
            .reading(10, 170, 9).build();

        assertEquals(Optional.empty(), ZeroDrift.of(board));
    }
}
