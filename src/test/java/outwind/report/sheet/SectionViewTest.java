package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import outwind.board.Board;
import outwind.board.Units;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.drawing.HeightScale;
import outwind.report.drawing.Paper;
import outwind.report.drawing.Profile;
import outwind.report.words.Figures;
import outwind.surface.ShapeOf;

/** Sections through the board: the wood that stays is hatched from trim to trim, along and across. */
class SectionViewTest {

    private static final int LEFT = 300;
    private static final int ROOM = 1200;

    /** Down to the bed, and no further (px). */
    private static final int LINES = 175;

    // Unlike ends and edges: taken for each other they show.
    private static final double ALONG = 90;
    private static final double ACROSS = 20;

    private static final Judgement JUDGEMENT = judged();

    private static Judgement judged() {
        Board board = ShapeOf.board().trimmed(ALONG, ACROSS).wanted(24).read(5, 3, ShapeOf.board().bow(1));
        return Judgement.of(board, JudgeOptions.usual(board).cuttingAnyway());
    }

    /** How many pixels have ink on them in a strip of the drawing, by the place along the section. */
    private static int inked(Paper paper, double scale, double from, double to, int height) {
        int count = 0;
        for (int x = LEFT + (int) Math.round(from * scale); x < LEFT + (int) Math.round(to * scale); x++) {
            for (int y = 60; y < height; y++) {
                count += paper.colourAt(x, y).equals(Paper.WHITE) ? 0 : 1;
            }
        }
        return count;
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void woodStaysBetweenTheTrims(boolean isLengthwise) {
        Paper paper = new Paper(Paper.WIDTH, 700);
        Figures figures = new Figures(Units.MILLIMETRES);
        Profile profile = isLengthwise ? Profile.lengthwise(JUDGEMENT) : Profile.crosswise(JUDGEMENT);
        HeightScale heights = HeightScale.of(JUDGEMENT, List.of(profile), ROOM / 900.0);
        SectionView view = isLengthwise ? SectionView.lengthwise(paper, JUDGEMENT, figures, heights, profile)
            : SectionView.crosswise(paper, JUDGEMENT, figures, heights, profile);
        double length = isLengthwise ? 900 : 180;
        double trim = isLengthwise ? ALONG : ACROSS;
        double scale = (isLengthwise ? heights.widthAlong(length) : heights.widthAcross(length, ROOM)) / length;

        view.draw(LEFT, 10, ROOM, 1);

        // Faces, cuts and bed run on through the trim; the hatch between the cuts does not.
        double strip = trim / 2;
        double lines = inked(paper, scale, trim / 4, 3 * trim / 4, LINES);
        assertEquals(profile.length(), length, 1e-9);
        assertEquals(lines, inked(paper, scale, length - 3 * trim / 4, length - trim / 4, LINES), 0.2 * lines,
            "no hatch in the trim of the far side");
        for (double from : new double[] {trim + strip / 4, length - trim - 5 * strip / 4}) {
            assertTrue(inked(paper, scale, from, from + strip, LINES) > 1.5 * lines, "hatched from " + from);
        }
    }
}
