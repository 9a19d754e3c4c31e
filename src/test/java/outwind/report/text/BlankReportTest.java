package outwind.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.Layout;
import outwind.blanks.Saw;
import outwind.blanks.SawCut;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.board.Units;
import outwind.report.words.Figures;
import outwind.surface.Region;
import outwind.surface.ShapeOf;

/** The cut list, read back: cuts, blanks and what is left, each figure in its column. */
class BlankReportTest {

    private static final BlankPlan PLAN = plan();

    private static BlankPlan plan() {
        ShapeOf shape = new ShapeOf(1000, 300, 30, ShapeOf.board().underside(), OptionalDouble.empty(),
            ShapeOf.board().trim());
        Board read = shape.read(5, 3, shape.twist(1));
        Board board = new Board(read.name(), read.units(), read.length(), read.width(), read.thickness(), read.species(),
            read.repeatability(), read.price(), read.target(), read.skim(), read.trim(), read.underside(),
            read.turned(), List.of(new Defect(930, 250, 980, 290)), read.readings(), read.calipers(), read.remarks(),
            Optional.empty(), true);
        return BlankPlan.of(board, new CuttingBill(List.of(
            new BillItem("long", 420, 110, 24, 2, OptionalDouble.empty(), false),
            new BillItem("short", 260, 130, 22, 2, OptionalDouble.empty(), false))), Saw.usual(board), 0.95, 0.3, 1);
    }

    /** Rows of the table below a heading that begin with a word or a number, cell by cell. */
    private static List<List<String>> rows(String report, String heading, String begins) {
        List<List<String>> rows = new ArrayList<>();
        report.replace('\u00a0', ' ').substring(report.indexOf(heading)).lines().skip(1)
            .dropWhile(line -> !line.matches(begins)).takeWhile(line -> line.matches(begins))
            .forEach(line -> rows.add(List.of(line.strip().split(" {2,}"))));
        return rows;
    }

    private static List<String> plain(Stream<String> cells) {
        return cells.map(cell -> cell.replace('\u00a0', ' ')).toList();
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void offcutsAreSaidWithTheirSizeAndPlace(Units units) {
        Figures figures = new Figures(units);
        List<List<String>> rows = rows(BlankReport.of(PLAN, figures), "Offcuts, the largest first",
            " +\\d[\\d /]* x \\d.*");
        List<Region> left = PLAN.chosen().offcuts().stream().filter(r -> r.x2() - r.x1() >= 40 && r.y2() - r.y1() >= 40)
            .toList();

        assertTrue(left.size() >= 2 && left.stream().anyMatch(r -> r.x1() > 40 && r.y1() != r.x1()), left.toString());
        assertEquals(Math.min(6, left.size()), rows.size());
        for (int k = 0; k < rows.size(); k++) {
            Region r = left.get(k);
            assertEquals(plain(Stream.of(figures.place(r.x2() - r.x1()) + " x " + figures.place(r.y2() - r.y1()),
                figures.place(r.x1()), figures.place(r.y1()))), rows.get(k).subList(0, 3));
            boolean holdsDefect = r.x1() < 980 && r.x2() > 930 && r.y1() < 290 && r.y2() > 250;
            assertEquals(holdsDefect, rows.get(k).contains("holds a defect"), r.toString());
        }
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void everyBlankHasItsSizeThicknessAndChance(Units units) {
        Figures figures = new Figures(units);
        Layout layout = PLAN.chosen();
        List<List<String>> rows = rows(BlankReport.of(PLAN, figures), "\nBlanks\n", " +\\d+ (long|short).*");

        assertEquals(4, rows.size());
        for (int k = 0; k < 4; k++) {
            Blank blank = layout.blanks().get(k);
            int section = 0;
            while (!layout.sections().get(section).contains(blank)) {
                section++;
            }
            assertEquals(plain(Stream.of((k + 1) + " " + blank.name(), String.valueOf(section + 1),
                figures.number(blank.region().x2() - blank.region().x1()).replaceFirst("\\.0$", "") + " x "
                    + figures.number(blank.region().y2() - blank.region().y1()).replaceFirst("\\.0$", ""),
                figures.number(blank.wanted()), figures.number(blank.range().median()),
                Figures.chance(blank.chance()))), rows.get(k));
        }
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void everyCutIsSaidWithItsSettingAndPlace(Units units) {
        Figures figures = new Figures(units);
        List<SawCut> cuts = PLAN.chosen().cuts();
        List<List<String>> rows = rows(BlankReport.of(PLAN, figures), "\nWhere to cut\n", " +\\d+\\. (crosscut|rip).*");

        assertEquals(cuts.size(), rows.size());
        for (int k = 0; k < rows.size(); k++) {
            SawCut cut = cuts.get(k);
            String kind = cut.section() == 0 ? "section " : "blank ";
            assertEquals(plain(Stream.of((k + 1) + ". " + (cut.crosscut() ? "crosscut" : "rip"),
                figures.number(cut.from() - cut.bears()), (cut.crosscut() ? "x " : "y ") + figures.number(cut.from()))),
                List.of(rows.get(k).get(0), rows.get(k).get(2), rows.get(k).get(4)));
            assertTrue(rows.get(k).get(3).startsWith(cut.before() == 0 ? "waste" : kind + cut.before()),
                rows.get(k).toString());
        }
    }

    /** One line of a list, by the names of its columns; no cell here holds a comma. */
    private static Map<String, String> cells(String header, String line) {
        String[] names = header.split(",", -1);
        String[] values = line.split(",", -1);
        assertEquals(names.length, values.length, line);
        return IntStream.range(0, names.length).boxed().collect(Collectors.toMap(i -> names[i], i -> values[i]));
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void theListForASpreadsheetHoldsEveryFigureUnderItsName(Units units) {
        Figures figures = new Figures(units);
        List<String> lines = CutList.of(PLAN, "b.csv", figures).lines().toList();
        List<Blank> blanks = PLAN.chosen().blanks();

        assertEquals(1 + blanks.size(), lines.size());
        for (int k = 0; k < blanks.size(); k++) {
            Blank blank = blanks.get(k);
            Map<String, String> cells = cells(lines.get(0), lines.get(k + 1));
            assertEquals(List.of(figures.unit(), figures.fine(blank.region().x1()), figures.fine(blank.region().y1()),
                figures.fine(blank.along()), figures.fine(blank.across()), figures.fine(blank.wanted()),
                figures.fine(blank.range().median()), Figures.decimals(blank.chance(), 3)),
                Stream.of("unit", "x", "y", "along", "across", "thickness", "makes", "chance").map(cells::get).toList());
            assertEquals(List.of("b.csv", String.valueOf(k + 1), blank.name()),
                Stream.of("file", "blank", "part").map(cells::get).toList());
        }
    }
}
