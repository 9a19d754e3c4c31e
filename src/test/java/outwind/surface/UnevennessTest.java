package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.BoardBuilder;
import outwind.board.Face;
import outwind.surface.field.Viewpoint;

class UnevennessTest {

    private static final double LENGTH = 2400;
    private static final double WIDTH = 150;
    private static final double[] X = {150, 850, 1550, 2250};
    private static final double[] Y = {10, 140, 10, 140};

    private static Board board(double... thickness) {
        BoardBuilder builder = Board.builder("board", LENGTH, WIDTH);
        for (int i = 0; i < thickness.length; i++) {
            builder.caliper(X[i], Y[i], thickness[i]);
        }
        return builder.build();
    }

    private static Board stated() {
        return Board.builder("board", LENGTH, WIDTH).thickness(43).build();
    }

    // T. D. Brown, EM 8731 (2000), table 3: eight boards, four readings each; see brown2000/README.md.
    @Test
    void publishedBoardsStrayAsIsUsual() throws IOException {
        List<Board> boards = new ArrayList<>();
        try (InputStream in = UnevennessTest.class.getResourceAsStream("/brown2000/sawn_thickness.csv")) {
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (Character.isDigit(line.charAt(0))) {
                    String[] cells = line.split(",");
                    boards.add(board(25.4 * Double.parseDouble(cells[1]), 25.4 * Double.parseDouble(cells[2]),
                        25.4 * Double.parseDouble(cells[3]), 25.4 * Double.parseDouble(cells[4])));
                }
            }
        }

        Unevenness learnt = Unevenness.of(boards).orElseThrow();

        assertEquals(8, learnt.boards());
        // Printed below the table: 0.01594 inch within boards.
        assertEquals(0.01594 * 25.4, learnt.deviation(), 0.000005 * 25.4);
        assertEquals(1, learnt.multiple(), 0.3);
    }

    /** Boards drawn from what is believed of sawn ones, made twice as uneven. So many have a standard error of 0.05. */
    @Test
    void manyBoardsTwiceAsUnevenAreFoundToBe() {
        SplittableRandom random = new SplittableRandom(20261128);
        List<Board> boards = new ArrayList<>();
        for (double[] draw : SawnThickness.stated(43, 1, new Viewpoint(LENGTH, WIDTH, false, false)).draws(X, Y, 2400, random)) {
            double[] twice = new double[4];
            for (int i = 0; i < 4; i++) {
                twice[i] = 43 + 2 * (draw[i] - 43) + 0.05 * random.nextGaussian();
            }
            boards.add(board(twice));
        }

        assertEquals(2, Unevenness.of(boards).orElseThrow().multiple(), 0.2);
    }

    // By hand: three boards that stray by nothing have 9 degrees of freedom against the 6 of what is usual.
    @Test
    void alikeReadingsLeaveWhatIsUsualItsShare() {
        Unevenness learnt = Unevenness.of(List.of(board(40, 40, 40, 40), board(41, 41, 41, 41), board(42, 42, 42, 42)))
            .orElseThrow();

        assertEquals(Math.sqrt(6 / 15.0), learnt.multiple(), 0.03);
        assertEquals(0, learnt.deviation(), 1e-12);
    }

    @Test
    void threeBoardsReadAtThreePlacesAreTheLeast() {
        Board read = board(40, 40.2, 40.1);

        assertTrue(Unevenness.of(List.of(read, read, board(40, 41), stated())).isEmpty());
        assertFalse(Unevenness.of(List.of(read, read, read, stated())).isEmpty());
    }

    @Test
    void itServesBoardsWithOneStatedThicknessAlone() {
        Unevenness learnt = new Unevenness(2.5, 0.9, 4);
        Board read = board(40, 40.2, 40.1);

        assertEquals(2.5, learnt.appliedTo(stated()).unevenness());
        assertEquals(read, learnt.appliedTo(read));
        assertTrue(learnt.appliedTo(stated().evenlyThick()).evenThickness());
    }

    /** A wedge of 3 mm under one figure: the range that holds it is only had from boards like it. */
    @Test
    void whatIsLearntWidensTheRangeWhereBoardsAreWedges() {
        Board one = flat().thickness(43).build();
        Unevenness learnt = Unevenness.of(List.of(wedge(1), wedge(-1), wedge(1), wedge(-1))).orElseThrow();

        assertTrue(learnt.multiple() > 1.5, learnt.toString());
        assertTrue(deviation(learnt.appliedTo(one)) > 1.4 * deviation(one));
    }

    private static Board wedge(double sign) {
        return board(43 - 1.3 * sign, 43 - 0.4 * sign, 43 + 0.4 * sign, 43 + 1.3 * sign);
    }

    private static BoardBuilder flat() {
        BoardBuilder builder = Board.builder("board", LENGTH, WIDTH);
        for (int i = 0; i < 15; i++) {
            builder.reading(Face.A, 20 + i % 5 * 590, 10 + i / 5 * 65, 0);
        }
        return builder;
    }

    /** How unsure the underside's corner is (mm). */
    private static double deviation(Board board) {
        double[] corners = MeasuredShape.of(board).draws(Places.grid(new Region(0, 0, LENGTH, WIDTH), 2, 2), 400, 1).stream()
            .mapToDouble(drawn -> drawn.underside()[0]).toArray();
        double mean = 0;
        double square = 0;
        for (double corner : corners) {
            mean += corner / corners.length;
            square += corner * corner / corners.length;
        }
        return Math.sqrt(square - mean * mean);
    }
}
