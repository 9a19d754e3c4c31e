package outwind.blanks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.flatten.ThicknessRange;
import outwind.surface.MeasuredShape;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

class BlankThicknessTest {

    private static final ShapeOf BOARD = ShapeOf.board();

    private static BlankThickness of(Board board) {
        return of(board, 0);
    }

    private static BlankThickness of(Board board, double skim) {
        return BlankThickness.of(MeasuredShape.of(board), Region.whole(board), skim, 1);
    }

    private static Region random(SplittableRandom random) {
        double length = 40 + 800 * random.nextDouble();
        double width = 20 + 150 * random.nextDouble();
        double x = (BOARD.length() - length) * random.nextDouble();
        double y = (BOARD.width() - width) * random.nextDouble();
        return new Region(x, y, x + length, y + width);
    }

    // Identity: a rectangle of u·L x v·W of a pure twist with corners ±q is itself a twist with corners ±u·v·q, and
    // such a board finishes at T − 2·u·v·q. A touch-off is only good to a fifth of a mm, so the tolerance is wide.
    @Test
    void aPartOfATwistedBoardIsTwistedInProportion() {
        BlankThickness wood = of(BOARD.read(7, 5, BOARD.twist(3)));

        assertEquals(24, wood.range(new Region(0, 0, 900, 180)).median(), 0.2);
        assertEquals(27, wood.range(new Region(0, 0, 450, 180)).median(), 0.2);
        assertEquals(28.5, wood.range(new Region(450, 90, 900, 180)).median(), 0.2);
    }

    // By definition: the skim comes off each of two faces.
    @Test
    void aSkimIsLostTwice() {
        Board board = BOARD.read(5, 3, BOARD.twist(3));
        Region part = new Region(100, 20, 500, 150);

        double[] bare = of(board).range(part).sorted();
        double[] skimmed = of(board, 0.4).range(part).sorted();

        for (int i = 0; i < bare.length; i++) {
            assertEquals(bare[i] - 2 * 0.4, skimmed[i], 1e-9);
        }
    }

    // Identity: what lies inside is part of what must clean up.
    @Test
    void aRectangleNeverFinishesThickerThanOneInsideIt() {
        BlankThickness wood = of(BOARD.read(5, 3, (x, y) -> 4 * Math.sin(x / 150) * y / 180));
        SplittableRandom random = new SplittableRandom(5);
        for (int run = 0; run < 20; run++) {
            Region outer = random(random);
            double u = random.nextDouble() / 3;
            double v = random.nextDouble() / 3;
            Region inner = new Region(outer.x1() + u * (outer.x2() - outer.x1()), outer.y1()
                + v * (outer.y2() - outer.y1()),
                outer.x2() - v * (outer.x2() - outer.x1()), outer.y2() - u * (outer.y2() - outer.y1()));

            ThicknessRange whole = wood.range(outer);
            ThicknessRange part = wood.range(inner);

            for (int i = 0; i < whole.sorted().length; i++) {
                assertTrue(whole.sorted()[i] <= part.sorted()[i] + 1e-9, outer + " " + inner);
            }
        }
    }

    // Identity: bounds from other answers must decide as the linear program itself does.
    @Test
    void theChanceIsTheShareOfTheRange() {
        BlankThickness wood = of(BOARD.read(5, 3, (x, y) -> 4 * Math.sin(x / 150) * y / 180), 0.4);
        SplittableRandom random = new SplittableRandom(6);
        for (int run = 0; run < 40; run++) {
            Region rectangle = random(random);
            ThicknessRange range = wood.range(rectangle);
            double thickness = range.quantile(random.nextDouble()) + 1e-7;

            assertEquals(range.chanceOf(thickness), wood.chance(rectangle, thickness, 0), 1e-12, rectangle.toString());
        }
    }
}
