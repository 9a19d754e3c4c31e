package outwind.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.BoardBuilder;
import outwind.flatten.NextReading;
import outwind.flatten.ThicknessRange;
import outwind.forecast.JudgeOptions;

/** What the report promises of a few caliper readings, held against taking them on boards whose faces are known. */
class CaliperPromiseTest {

    private static final int BOARDS = 12;

    @Test
    void takingTheCaliperReadingsNarrowsTheRangeAboutAsPromised() {
        double promised = 0;
        double came = 0;
        for (int i = 0; i < BOARDS; i++) {
            SplittableRandom random = new SplittableRandom(4_001 + i);
            double length = random.nextDouble(700, 1900);
            double width = random.nextDouble(120, 280);
            double twist = random.nextGaussian(0, 1.5);
            double taper = random.nextDouble(-1, 1);
            DoubleBinaryOperator thickness = (x, y) -> 32 + taper * (x / length - 0.5) + 0.2 * Math.sin(5 * y / width);
            DoubleBinaryOperator top = (x, y) -> twist * x / length * y / width;
            Board oneFigure = touched(length, width, top, random).thickness(32).build();
            Judgement before = Judgement.of(oneFigure, JudgeOptions.usual(oneFigure));
            List<NextReading> calipers = before.byCaliper();
            assertTrue(calipers.stream().allMatch(next -> next.tool() == NextReading.Tool.CALIPER));
            BoardBuilder more = touched(length, width, top, new SplittableRandom(4_001 + i)).thickness(32);
            calipers.forEach(next -> more.caliper(next.x(), next.y(),
                thickness.applyAsDouble(next.x(), next.y()) + random.nextGaussian(0, 0.1)));
            Board calipered = more.build();
            promised += calipers.get(calipers.size() - 1).left();
            came += width(Judgement.of(calipered, JudgeOptions.usual(calipered))) / width(before);
        }

        assertEquals(promised / BOARDS, came / BOARDS, 0.2 * promised / BOARDS);
    }

    private static double width(Judgement judgement) {
        ThicknessRange range = judgement.outlook().levelled();
        return range.high() - range.low();
    }

    private static BoardBuilder touched(double length, double width, DoubleBinaryOperator top, SplittableRandom random) {
        BoardBuilder board = Board.builder("made", length, width);
        for (int k = 0; k < 15; k++) {
            double x = 15 + (length - 30) * (k % 5) / 4;
            double y = 15 + (width - 30) * (k / 5) / 2;
            board.reading(x, y, top.applyAsDouble(x, y) + random.nextGaussian(0, 0.08));
        }
        return board;
    }
}
