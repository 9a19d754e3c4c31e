package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Board;
import outwind.board.TouchGrid;
import outwind.numeric.Matern52;

class ImaginedBoardTest {

    // Identity: the waves have the covariance of the kriging model. Over 20 000 fields the mean of a product of two
    // heights, each of variance 0.04 mm², has a standard error below 0.04·√2/√20 000 = 0.0004 mm²; four of them.
    @ParameterizedTest
    @CsvSource({"0, 0", "200, 0", "600, 0", "0, 150", "300, 200", "1500, 0"})
    void wavesHaveTheCovarianceOfTheModel(double dx, double dy) {
        SplittableRandom random = new SplittableRandom(7);
        int fields = 20_000;
        double sum = 0;
        for (int i = 0; i < fields; i++) {
            List<ImaginedBoard.Wave> waves = ImaginedBoard.waves(0.2, 700, 300, random);
            sum += waves.stream().mapToDouble(wave -> wave.at(100, 50)).sum()
                * waves.stream().mapToDouble(wave -> wave.at(100 + dx, 50 + dy)).sum();
        }

        assertEquals(new Matern52(0.04, 700, 300).between(0, 0, dx, dy), sum / fields, 0.0016);
    }

    @Test
    void theSameSeedImaginesTheSameBoard() {
        double first = ImaginedBoard.of(1180, 212, 0.5, new SplittableRandom(3)).at(400, 90);

        assertEquals(first, ImaginedBoard.of(1180, 212, 0.5, new SplittableRandom(3)).at(400, 90));
        assertNotEquals(first, ImaginedBoard.of(1180, 212, 0.5, new SplittableRandom(4)).at(400, 90));
    }

    @Test
    void itIsTouchedOffSpotBySpotWithTheUsualNoise() {
        TouchGrid grid = new TouchGrid(1180, 212, 15, 6, 15);
        SplittableRandom random = new SplittableRandom(3);
        ImaginedBoard imagined = ImaginedBoard.of(1180, 212, 0.5, random);

        Board board = imagined.touchedOff(grid.tour(), random);

        assertEquals(90, board.readings().size());
        double squares = board.readings().stream()
            .mapToDouble(reading -> Math.pow(reading.z() - imagined.at(reading.x(), reading.y()), 2)).sum();
        // A standard deviation from 90 readings is good to 7.5 %; three of them.
        assertEquals(ReadingNoise.USUAL, Math.sqrt(squares / 90), 0.225 * ReadingNoise.USUAL);
    }
}
