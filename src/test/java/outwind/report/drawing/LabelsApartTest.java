package outwind.report.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.report.sheet.BoardSheet;
import outwind.report.sheet.DetailSheet;
import outwind.report.words.Figures;
import outwind.shop.Wedge;

/** On no sheet do two words cover each other, or a word a mark, or anything lie off the page. */
class LabelsApartTest {

    private record Case(String name, Judgement judgement, Units units) {

        @Override
        public String toString() {
            return name + " in " + units;
        }
    }

    static List<Case> cases() throws IOException {
        List<Case> cases = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("sample-probes"))) {
            for (Path file : files.filter(path -> path.toString().endsWith(".csv")).sorted().toList()) {
                Board board = read(file);
                add(cases, file.getFileName().toString(), board, JudgeOptions.usual(board), Units.values());
            }
        }
        DoubleBinaryOperator twisted = (u, v) -> 6 * u * v;
        DoubleBinaryOperator bowed = (u, v) -> 9 * (2 * u - 1) * (2 * u - 1) + 2 * u * v;
        // Made-up boards are drawn in one unit each, by turns, since most of the time goes into drawing.
        for (double[] size : new double[][] {{200, 60, 20}, {5000, 700, 80}, {5000, 120, 60}, {900, 900, 40},
            {400, 300, 30}, {300, 1200, 40}}) {
            String name = size[0] + " x " + size[1];
            Board board = board(name, size, OptionalDouble.empty(), Underside.ALIKE, twisted);
            add(cases, name, board, JudgeOptions.usual(board), turn(cases));
            Board flat = board(name, size, OptionalDouble.of(0.6 * size[2]), Underside.FLAT, bowed);
            add(cases, name + ", flat underside", flat, JudgeOptions.usual(flat), turn(cases));
            Board anyway = board(name, size, OptionalDouble.of(0.97 * size[2]), Underside.ALIKE, bowed);
            add(cases, name + ", falls short", anyway, JudgeOptions.usual(anyway), turn(cases));
            add(cases, name + ", falls short, with warnings", anyway, JudgeOptions.usual(anyway).withClamps(90)
                .withWedges(new Wedge(150, 12)).cuttingAnyway(), turn(cases));
            double even = Judgement.of(board, JudgeOptions.usual(board)).outlook().levelled().median();
            Board doubtful = board(name, size, OptionalDouble.of(even), Underside.ALIKE, twisted);
            add(cases, name + ", doubtful", doubtful, JudgeOptions.usual(doubtful), turn(cases));
        }
        return cases;
    }

    private static Units turn(List<Case> cases) {
        return Units.values()[cases.size() % Units.values().length];
    }

    private static void add(List<Case> cases, String name, Board board, JudgeOptions request, Units... shown) {
        Judgement judgement = Judgement.of(board, request);
        for (Units units : shown) {
            cases.add(new Case(name, judgement, units));
        }
    }

    private static Board read(Path file) {
        try {
            return BoardFile.read(file, Defaults.NOTHING);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (outwind.board.text.BadBoardFile e) {
            throw new IllegalStateException(file.toString(), e);
        }
    }

    /** Thicker towards the far edge, so that its underside is alike neither end for end nor edge for edge. */
    private static Board board(String name, double[] size, OptionalDouble target, Underside underside,
            DoubleBinaryOperator height) {
        List<Reading> readings = new ArrayList<>();
        List<CaliperReading> calipers = new ArrayList<>();
        for (int k = 0; k < 15; k++) {
            double u = k % 5 / 4.0;
            double v = k / 5 / 2.0;
            readings.add(new Reading(size[0] * u, size[1] * v, height.applyAsDouble(u, v), Face.A, "", k + 2));
            calipers.add(new CaliperReading(size[0] * u, size[1] * v, size[2] + 0.2 * u + 0.5 * v * v, k + 2));
        }
        return new Board(name, Units.MILLIMETRES, size[0], size[1], OptionalDouble.of(size[2]), Optional.of("white oak"),
            OptionalDouble.empty(), Optional.empty(), target, OptionalDouble.empty(), Trim.NONE, underside,
            Optional.empty(), List.of(), readings, underside == Underside.FLAT ? List.of() : calipers, List.of());
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("cases")
    void nothingCoversAWord(Case tried) {
        Figures figures = new Figures(tried.units());

        List<String> faults = new ArrayList<>(faults(BoardSheet.drawn(tried.judgement(), figures).paper()));
        faults(DetailSheet.drawn(tried.judgement(), figures)).forEach(fault -> faults.add("details: " + fault));

        assertEquals(List.of(), faults);
    }

    private static List<String> faults(Paper paper) {
        List<String> faults = new ArrayList<>();
        Rectangle2D page = new Rectangle2D.Double(10, 10, Paper.WIDTH - 20.0, Paper.HEIGHT - 20.0);
        List<Paper.Words> words = paper.written().stream().filter(word -> !word.text().isBlank()).toList();
        assertTrue(words.size() > 10, "hardly any words");
        for (int i = 0; i < words.size(); i++) {
            Rectangle2D box = ink(words.get(i));
            if (!page.contains(box)) {
                faults.add("\"" + words.get(i).text() + "\" runs off the page");
            }
            for (int j = 0; j < i; j++) {
                if (box.intersects(ink(words.get(j)))) {
                    faults.add("\"" + words.get(i).text() + "\" covers \"" + words.get(j).text() + "\"");
                }
            }
            for (Paper.Marked marked : paper.marked()) {
                if (box.intersects(marked.box())) {
                    faults.add("\"" + words.get(i).text() + "\" covers " + marked.mark());
                }
            }
        }
        return faults;
    }

    /** A line of type has white above and below its letters: an eighth of its height on either side. */
    private static Rectangle2D ink(Paper.Words words) {
        Rectangle2D box = words.box();
        return new Rectangle2D.Double(box.getX() + 1, box.getY() + box.getHeight() / 8, box.getWidth() - 2,
            0.75 * box.getHeight());
    }
}
