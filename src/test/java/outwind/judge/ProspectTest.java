package outwind.judge;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Reading;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.text.BadBoardFile;
import outwind.flatten.Verdict;
import outwind.forecast.JudgeOptions;
import outwind.surface.ShapeOf;

class ProspectTest {

    private static Board sample() throws IOException, BadBoardFile {
        return BoardFile.read(Path.of("sample-probes/hall-table.csv"), Defaults.NOTHING);
    }

    // Identity: it is the part of a judgement that a prompt can wait for, not another one.
    @Test
    void itTellsWhatTheJudgementTells() throws IOException, BadBoardFile {
        Board board = sample().withTarget(28.7);

        Prospect prospect = Prospect.of(board);
        Judgement judged = Judgement.of(board, JudgeOptions.usual(board));

        assertArrayEquals(judged.outlook().slabs(), prospect.outlook().slabs());
        assertEquals(judged.chance(), prospect.chance());
        assertEquals(Verdict.DOUBTFUL, prospect.verdict());
        assertEquals(judged.verdict(), prospect.verdict());
        assertEquals(Optional.of(judged.next().get(0)), prospect.next());
    }

    @Test
    void aSureVerdictFromEnoughPlacesIsSettled() throws IOException, BadBoardFile {
        assertTrue(Prospect.of(sample()).isSettled());
        assertTrue(Prospect.of(sample().withTarget(31)).isSettled());
        assertFalse(Prospect.of(sample().withTarget(28.7)).isSettled());
    }

    @Test
    void withoutATargetNothingIsEverSettled() {
        assertFalse(Prospect.of(ShapeOf.board().read(5, 3, (x, y) -> 0.01 * x / 900)).isSettled());
    }

    @Test
    void tooFewPlacesSettleNothingHoweverSureTheyLook() {
        ShapeOf shape = ShapeOf.board().wanted(20);

        Prospect threeColumns = Prospect.of(shape.read(3, 3, shape.twist(1)));
        Prospect eightPlaces = Prospect.of(shape.read(4, 2, shape.twist(1)));

        assertTrue(threeColumns.chance().getAsDouble() > 0.995);
        assertTrue(eightPlaces.chance().getAsDouble() > 0.995);
        assertFalse(threeColumns.isSettled());
        assertFalse(eightPlaces.isSettled());
        assertTrue(Prospect.of(shape.read(4, 3, shape.twist(1))).isSettled());
    }

    @Test
    void placesTouchedAgainAreNoNewPlaces() {
        ShapeOf shape = ShapeOf.board().wanted(20);
        Board board = shape.read(4, 2, shape.twist(1));
        List<Reading> twice = new ArrayList<>(board.readings());
        twice.addAll(board.readings());

        assertFalse(Prospect.of(board.withReadings(twice)).isSettled());
    }

    @Test
    void aTouchOffThatLooksWrongSettlesNothing() throws IOException, BadBoardFile {
        List<Reading> readings = new ArrayList<>(sample().readings());
        readings.set(7, readings.get(7).withHeight(readings.get(7).z() + 3));

        Prospect prospect = Prospect.of(sample().withTarget(20).withReadings(readings));

        assertTrue(prospect.chance().getAsDouble() > 0.995);
        assertEquals(readings.get(7), prospect.suspects().get(0).reading());
        assertFalse(prospect.isSettled());
    }
}
