package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.cutting.Cut;
import outwind.cutting.FaceBCheck;
import outwind.cutting.Machining;
import outwind.flatten.ReferencePlane;
import outwind.flatten.ThicknessRange;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.numeric.plane.Plane;
import outwind.report.drawing.DepthScale;
import outwind.report.drawing.Frame;
import outwind.report.drawing.Mark;
import outwind.report.drawing.Paper;
import outwind.report.drawing.Profile;
import outwind.report.drawing.TextStyle;
import outwind.report.json.JsonReport;
import outwind.report.text.DetailsReport;
import outwind.report.text.TextReport;
import outwind.report.words.Figures;
import outwind.setup.Setup;
import outwind.setup.Shim;
import outwind.shop.BedSize;
import outwind.shop.Cutter;
import outwind.shop.Shop;
import outwind.surface.trend.Warp;

/**
 * One value, one figure: what text, sheet, chart and JSON say is read back and held against the judgement.
 *
 * <p>The boards are made up, alike neither end for end nor edge for edge, nor on their two faces.
 */
class FiguresAgreeTest {

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static final Shop SHOP = Shop.UNKNOWN.with(new BedSize(3000, 800)).with(List.of(
        Cutter.usual("end mill", 12.7, 3, 2500, OptionalDouble.empty(), OptionalDouble.empty()),
        Cutter.usual("facing cutter", 40, 0.8, 3000, OptionalDouble.of(24), OptionalDouble.of(0.3))));

    /** One board in one unit, and everything that is said of it. */
    private record Said(String name, Judgement judgement, Figures figures, String text, String why, JsonNode json,
            BoardSheet.Drawn drawn, List<Paper.Words> details) {

        List<Paper.Words> sheet() {
            return drawn.paper().written();
        }

        String onSheet() {
            return sheet().stream().map(Paper.Words::text).collect(Collectors.joining(" ")).replace('\u00a0', ' ');
        }


        String flat() {
            return text.replaceAll("\\s+", " ");
        }

        String flatDetails() {
            return why.replaceAll("\\s+", " ");
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private static final List<Said> ALL = everything();

    static Stream<Said> said() {
        return ALL.stream();
    }

    private static List<Said> everything() {
        List<Said> all = new ArrayList<>();
        for (int seed = 1; seed <= 4; seed++) {
            for (Units units : Units.values()) {
                Board board = board(seed);
                Judgement judgement = Judgement.of(board, JudgeOptions.usual(board, SHOP).withSeed(seed).cuttingAnyway());
                Figures figures = new Figures(units);
                all.add(new Said("board " + seed + " in " + units, judgement, figures,
                    TextReport.of(judgement, figures).replace('\u00a0', ' '),
                    DetailsReport.of(judgement, figures).replace('\u00a0', ' '), json(judgement),
                    BoardSheet.drawn(judgement, figures), DetailSheet.drawn(judgement, figures).written()));
            }
        }
        return List.copyOf(all);
    }

    private static JsonNode json(Judgement judgement) {
        try {
            return MAPPER.readTree(JsonReport.of(judgement));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Board board(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double length = random.nextDouble(600, 1500);
        double width = random.nextDouble(150, 280);
        double twist = random.nextDouble(1, 3) * (seed % 2 == 0 ? 1 : -1);
        double kink = random.nextDouble(0, 2);
        List<Reading> readings = new ArrayList<>();
        List<CaliperReading> calipers = new ArrayList<>();
        for (int k = 0; k < 15; k++) {
            double u = -0.95 + 1.9 * (k % 5) / 4;
            double v = -0.9 + 1.8 * (k / 5) / 2;
            double x = length * (1 + u) / 2;
            double y = width * (1 + v) / 2;
            double z = twist * u * v + kink * Math.max(0, u - 0.2) + 0.2 * u + 0.05 * random.nextGaussian();
            readings.add(new Reading(x, y, z, Face.A, "", k + 2));
            calipers.add(new CaliperReading(x, y, 34 + 0.3 * u - 0.4 * v + 0.3 * v * v, k + 2));
        }
        return new Board("board " + seed, Units.MILLIMETRES, length, width, OptionalDouble.empty(),
            Optional.of("white oak"), OptionalDouble.empty(), Optional.empty(), OptionalDouble.of(26),
            OptionalDouble.empty(), Trim.NONE, Underside.ALIKE, Optional.empty(), List.of(), readings, calipers,
            List.of());
    }

    /** The shims in the text, cell by cell. */
    private static List<List<String>> shimRows(Said said) {
        Pattern row = Pattern.compile("(?m)^ {2}( ?[-\\d]+ +.*(?:near|far|y ).*)$");
        Matcher rows = row.matcher(said.why().substring(said.why().indexOf("  no. "), said.why().indexOf("On these shims")));
        List<List<String>> cells = new ArrayList<>();
        while (rows.find()) {
            cells.add(List.of(rows.group(1).strip().split(" {2,}")));
        }
        return cells;
    }

    @ParameterizedTest
    @MethodSource("said")
    void shimsAreTheSameInTextAndJson(Said said) {
        Setup setup = said.judgement().setup();
        List<List<String>> rows = shimRows(said);
        assertEquals(setup.places().size(), rows.size(), said.why());
        int number = 0;
        for (int k = 0; k < rows.size(); k++) {
            Shim place = setup.places().get(k);
            List<String> row = rows.get(k);
            String edge = place.y() == 0 ? "near" : place.y() == said.judgement().board().width() ? "far"
                : "y " + said.figures().place(place.y());
            List<String> expected = new ArrayList<>(List.of(place.isNeeded() ? String.valueOf(++number) : "-",
                said.figures().place(place.x()), edge, said.figures().shim(place.height())));
            if (place.isNeeded()) {
                expected.add(said.figures().fine(setup.errorOf(place)));
            }
            assertEquals(expected.stream().map(FiguresAgreeTest::plain).toList(), row);
        }
        JsonNode shims = said.json().at("/setup/shims");
        assertEquals(setup.shims().size(), shims.size());
        for (int k = 0; k < shims.size(); k++) {
            Shim shim = setup.shims().get(k);
            assertEquals(List.of(shim.x(), shim.y(), shim.height(), setup.errorOf(shim)), List.of(
                shims.get(k).get("x").asDouble(), shims.get(k).get("y").asDouble(),
                shims.get(k).get("height").asDouble(), shims.get(k).get("plusMinus").asDouble()));
        }
        assertTrue(number > 0, "no shim to compare");
    }

    // Near is below and far above the board on the sheet, x runs to the right, and each height stands at its number.
    @ParameterizedTest
    @MethodSource("said")
    void shimsStandWhereTheyBelongOnTheSheet(Said said) {
        Setup setup = said.judgement().setup();
        double middle = said.drawn().plan().top() + said.drawn().plan().height() / 2.0;
        double disc = said.drawn().paper().height(TextStyle.HEADING);
        double before = Double.NEGATIVE_INFINITY;
        List<Shim> byX = setup.shims().stream().filter(shim -> shim.y() == 0)
            .sorted((a, b) -> Double.compare(a.x(), b.x())).toList();
        for (Shim shim : setup.shims()) {
            String number = String.valueOf(setup.shims().indexOf(shim) + 1);
            List<Paper.Words> discs = said.sheet().stream().filter(words -> words.text().equals(number)
                && words.box().getHeight() == disc).toList();
            assertEquals(1, discs.size(), "shim " + number + " on the plan");
            boolean isBelow = discs.get(0).box().getCenterY() > middle;
            assertEquals(shim.y() == 0, isBelow, "shim " + number + " at y " + shim.y());
            String height = said.figures().shim(shim.height()) + (setup.errorOf(shim) > shim.height() ? "*" : "");
            assertTrue(said.sheet().stream().anyMatch(words -> words.text().equals(height)
                && Math.abs(words.box().getCenterY() - discs.get(0).box().getCenterY()) < 60
                && Math.abs(words.box().getCenterX() - discs.get(0).box().getCenterX()) < 130),
                "height " + height + " beside shim " + number);
        }
        for (Shim shim : byX) {
            String number = String.valueOf(setup.shims().indexOf(shim) + 1);
            double x = said.sheet().stream().filter(words -> words.text().equals(number)
                && words.box().getHeight() == disc).findFirst().orElseThrow().box().getCenterX();
            assertTrue(x > before, "shims of the near edge run to the right");
            before = x;
        }
    }

    // The tables: near shims under "Near edge", far ones under "Far edge", with their ± beside them.
    @ParameterizedTest
    @MethodSource("said")
    void shimTablesOfTheDetailsNameTheirEdge(Said said) {
        Setup setup = said.judgement().setup();
        Map<Boolean, List<Shim>> byFar = setup.shims().stream()
            .collect(Collectors.partitioningBy(shim -> shim.y() > said.judgement().board().width() / 2));
        for (boolean isFar : new boolean[] {false, true}) {
            Paper.Words title = said.details().stream().filter(words -> words.text().startsWith(isFar ? "Far " : "Near "))
                .findFirst().orElseThrow();
            for (Shim shim : byFar.get(isFar)) {
                String number = String.valueOf(setup.shims().indexOf(shim) + 1);
                Paper.Words cell = said.details().stream().filter(words -> words.text().equals(number)
                    && words.box().getHeight() <= 30 && words.box().getY() > title.box().getY()
                    && words.box().getX() > title.box().getX() - 5 && words.box().getX() < title.box().getX() + 90)
                    .findFirst().orElseThrow(() -> new AssertionError("shim " + number + " under " + title.text()));
                List<String> row = said.details().stream().filter(words -> words.box().getHeight() <= 30
                    && Math.abs(words.box().getCenterY() - cell.box().getCenterY()) < 2
                    && words.box().getX() >= cell.box().getX()).map(Paper.Words::text).toList();
                assertTrue(row.containsAll(List.of(said.figures().place(shim.x()), said.figures().shim(shim.height()),
                    said.figures().fine(setup.errorOf(shim)))), row + " of shim " + number);
            }
        }
    }

    // The bars beside the board, read back into mm on the board.
    @ParameterizedTest
    @MethodSource("said")
    void shimsAreDrawnAtTheirPlacesOnTheBoard(Said said) {
        Frame plan = said.drawn().plan();
        List<Paper.Marked> bars = said.drawn().paper().marked().stream()
            .filter(marked -> marked.mark() == Mark.SHIM).toList();
        List<Shim> shims = said.judgement().setup().shims();
        assertEquals(shims.size(), bars.size());
        for (Shim shim : shims) {
            assertTrue(bars.stream().anyMatch(bar -> Math.abs((bar.x() - plan.left()) / plan.scaleX() - shim.x())
                < 1 / plan.scaleX() && Math.abs((plan.bottom() - bar.y()) / plan.scaleY() - shim.y())
                < (Mark.SHIM_OUT + 1) / plan.scaleY()), "a bar at " + shim.x() + ", " + shim.y());
        }
    }

    // What is written at the corners and in the middle, at five places along each edge, and drawn below them. Worked
    // out here from the face and the plane it is cut to.
    @ParameterizedTest
    @MethodSource("said")
    void depthsAreWrittenAndDrawnWhereTheyComeOff(Said said) {
        Judgement judgement = said.judgement();
        double length = judgement.board().length();
        double width = judgement.board().width();
        Frame plan = said.drawn().plan();
        for (double[] at : new double[][] {{0, 0}, {length, 0}, {0, width}, {length, width}, {length / 2, width / 2}}) {
            String depth = said.figures().number(Math.max(0, depth(judgement, at[0], at[1])));
            assertTrue(said.sheet().stream().anyMatch(words -> words.text().equals(depth)
                && Math.abs(words.box().getCenterX() - plan.px(at[0])) < 50
                && Math.abs(words.box().getCenterY() - plan.py(at[1])) < 25), depth + " at " + at[0] + ", " + at[1]);
        }
        edge(said, said.drawn().far(), width);
        edge(said, said.drawn().near(), 0);
    }

    private static void edge(Said said, Frame frame, double y) {
        double length = said.judgement().board().length();
        for (int k = 0; k < 5; k++) {
            double depth = depth(said.judgement(), length * k / 4, y);
            String text = said.figures().number(Math.max(0, depth));
            double x = frame.px(length * k / 4);
            double top = frame.py(Math.max(0, depth));
            assertTrue(said.sheet().stream().anyMatch(words -> words.text().equals(text)
                && Math.abs(words.box().getCenterX() - x) < 1 && words.box().getMaxY() < top + 4
                && words.box().getMaxY() > top - 16), text + " at station " + k + " of the edge at y " + y);
        }
        // Halfway up the wood beside a station lies the colour of the depth there.
        DepthScale scale = said.drawn().scale();
        for (int k = 1; k < 8; k++) {
            double x = length * (2 * k + 1) / 17;
            double depth = depth(said.judgement(), x, y);
            boolean isClear = depth > 0.2 && scale.band(depth - 0.03) == scale.band(depth + 0.03);
            if (isClear) {
                assertEquals(scale.colour(scale.band(depth)), said.drawn().paper().colourAt((int) frame.px(x),
                    (int) frame.py(depth / 2)), "at x " + x + " of the edge at y " + y);
                double above = frame.py(depth) - 8;
                boolean isWrittenOn = said.sheet().stream().anyMatch(words -> words.box().contains(frame.px(x), above));
                if (!isWrittenOn) {
                    assertEquals(Color.WHITE, said.drawn().paper().colourAt((int) frame.px(x), (int) above),
                        "above x " + x + " of the edge at y " + y);
                }
            }
        }
    }

    private static double depth(Judgement judgement, double x, double y) {
        return judgement.shape().topAt(x, y) - judgement.cuts().faceA().plane().at(x, y);
    }

    // A stick at either end, from the far edge on the left to the near one on the right.
    @ParameterizedTest
    @MethodSource("said")
    void sticksLieOnTheEdgesOfBothEnds(Said said) {
        Judgement judgement = said.judgement();
        double length = judgement.board().length();
        double width = judgement.board().width();
        Frame sight = said.drawn().sight();
        double nearEnd = depth(judgement, 0, width) - depth(judgement, 0, 0);
        double farEnd = depth(judgement, length, width) - depth(judgement, length, 0);
        String twist = said.figures().length(Math.abs(farEnd - nearEnd));
        assertTrue(said.onSheet().contains(plain("Out of line by " + twist)), said.onSheet());
        // The full stick lies on top: just above its lower side there is ink, a quarter of the way from each edge.
        for (double share : new double[] {0.25, 0.75}) {
            double height = depth(judgement, 0, width) + share * (depth(judgement, 0, 0) - depth(judgement, 0, width));
            assertEquals(Paper.INK, said.drawn().paper().colourAt((int) sight.px(share * width),
                (int) Math.round(sight.py(height)) - 4), "the stick at the end that was measured from");
        }
    }

    // The grid as face B lies: columns along the board, the far edge up.
    @ParameterizedTest
    @MethodSource("said")
    void faceBShouldReadTheSameOnTheSheet(Said said) {
        for (FaceBCheck check : said.judgement().checks()) {
            Rectangle2D column = only(said.sheet(), "x " + said.figures().place(check.x()), 1036);
            Rectangle2D row = only(said.sheet(), "y " + said.figures().place(check.y()), 1036);
            for (String text : List.of(said.figures().fine(check.height()),
                "± " + said.figures().fine(check.tolerance()))) {
                assertTrue(said.sheet().stream().anyMatch(words -> words.text().equals(text)
                    && Math.abs(words.box().getCenterX() - column.getCenterX()) < 2
                    && Math.abs(words.box().getCenterY() - row.getCenterY()) < 30), text);
            }
        }
    }

    private static Rectangle2D only(List<Paper.Words> words, String text, double rightOf) {
        List<Paper.Words> found = words.stream()
            .filter(word -> word.text().equals(text) && word.box().getX() > rightOf).toList();
        assertEquals(1, found.size(), text);
        return found.get(0).box();
    }

    @ParameterizedTest
    @MethodSource("said")
    void cutsAreTheSameEverywhere(Said said) {
        Figures figures = said.figures();
        assertEquals(Planned.BOTH_FACES, said.judgement().planned());
        Cut a = said.judgement().cuts().faceA();
        Cut b = said.judgement().cuts().faceB();
        Machining way = said.judgement().machining().get(0);
        String flat = said.flat();
        String sheet = said.onSheet();

        assertTrue(flat.contains(plain("Make the last pass " + figures.small(a.depth()) + " below that spot, about "
            + figures.length(a.aboveBed()) + " above the bed")), flat);
        assertTrue(flat.contains(plain("Make the last pass of face B at " + figures.setting(b.aboveBed())
            + " above it, about " + figures.small(b.depth()) + " below its highest spot")), flat);
        assertTrue(flat.contains(plain("about " + Figures.minutes(way.minutes(Face.A)) + ".")), flat);
        assertTrue(said.flatDetails().contains(plain("In all: " + Figures.count(way.count(), "pass", "passes") + ", about "
            + Figures.minutes(way.minutes()))), flat);
        assertTrue(sheet.contains(plain(figures.small(a.depth()))), sheet);
        assertTrue(sheet.contains(plain("Last pass at " + figures.setting(b.aboveBed()))), sheet);
        assertTrue(sheet.contains(plain("Finished: " + figures.setting(said.judgement().cuts().thickness()) + " thick")), sheet);
        assertTrue(sheet.contains(plain(figures.atMost(a.keepBelow()))), sheet);
        assertTrue(flat.contains(plain("below " + figures.atMost(a.keepBelow()) + " above the bed")), flat);
        for (Cut cut : List.of(a, b)) {
            JsonNode json = said.json().at("/cuts/" + (cut == a ? 0 : 1));
            assertEquals(List.of(cut.depth(), cut.aboveBed(), cut.keepBelow(), cut.meanDepth(), cut.removed(),
                way.minutes(cut.face())), List.of(json.get("depth").asDouble(), json.get("aboveBed").asDouble(),
                json.get("keepBelow").asDouble(), json.get("meanDepth").asDouble(), json.get("removed").asDouble(),
                json.get("minutes").asDouble()));
            Matcher row = Pattern.compile("(?m)^ +" + cut.face() + " +(\\S+) +(\\d+) +(\\d+) +(\\S+) +(\\S+) +(\\S.*?) {2,}(\\S.*)$")
                .matcher(said.why().substring(said.why().indexOf("\nCuts\n")));
            assertTrue(row.find(), said.why());
            assertEquals(Stream.of(figures.number(cut.depth()), String.valueOf(way.on(cut.face()).size()),
                Figures.decimals(way.minutes(cut.face()), 0), figures.number(cut.meanDepth()),
                figures.volume(cut.removed())).map(FiguresAgreeTest::plain).toList(), List.of(row.group(1), row.group(2), row.group(3), row.group(4),
                row.group(5)));
            assertEquals(plain(figures.number(cut.aboveBed())), row.group(7));
        }
    }

    @ParameterizedTest
    @MethodSource("said")
    void thicknessAndVerdictAreTheSameEverywhere(Said said) {
        Judgement judgement = said.judgement();
        Figures figures = said.figures();
        String chart = said.onSheet();

        assertEquals(judgement.outlook().levelled().median(), said.json().at("/thickness/levelled").asDouble());
        assertEquals(judgement.outlook().levelled().low(), said.json().at("/thickness/low").asDouble());
        assertEquals(judgement.outlook().levelled().high(), said.json().at("/thickness/high").asDouble());
        assertEquals(judgement.outlook().asMeasured().median(), said.json().at("/thickness/asMeasured").asDouble());
        for (ThicknessRange range : List.of(judgement.outlook().levelled(), judgement.outlook().asMeasured())) {
            String said90 = plain(figures.precise(range.median()) + " (" + figures.preciseNumber(range.low()) + " to "
                + figures.precise(range.high()));
            assertTrue(said.flatDetails().contains(said90), said90 + " in " + said.why());
            boolean isChosen = judgement.lifts() == (range == judgement.outlook().levelled());
            assertEquals(said.flat().contains(said90), chart.contains(said90), said90 + " in " + chart);
            assertTrue(!isChosen || said.flat().contains(said90), said90 + " in " + said.text());
        }
    }

    /** Reads a grid of the short report back: by the place's x and y as printed, the figure there. */
    private static Map<String, String> grid(Said said, String before) {
        List<String> lines = said.text().substring(said.text().indexOf(before)).lines()
            .dropWhile(line -> !line.matches(" {6}x .*")).takeWhile(line -> line.startsWith("      ")).toList();
        Map<String, String> figures = new TreeMap<>();
        List<Integer> ends = new ArrayList<>();
        List<String> places = new ArrayList<>();
        for (String line : lines) {
            if (line.matches(" {6}x .*")) {
                ends.clear();
                places.clear();
                Matcher place = Pattern.compile("\\S+(?: \\S+)*").matcher(line.substring(7));
                while (place.find()) {
                    places.add(place.group());
                    ends.add(7 + place.end());
                }
                continue;
            }
            String row = line.substring(6).split(" {2,}")[0];
            String y = row.equals("near edge") ? "0" : row.equals("far edge")
                ? plain(said.figures().place(said.judgement().board().width())) : row.substring(2);
            Matcher cell = Pattern.compile("\\S+").matcher(line);
            while (cell.find()) {
                int k = ends.indexOf(cell.end());
                if (k >= 0 && cell.start() > 6 + row.length()) {
                    figures.put(places.get(k) + " | " + y, cell.group());
                }
            }
        }
        return figures;
    }

    // What is set under the board stands in the grid at its own place, no place twice and none left out.
    @ParameterizedTest
    @MethodSource("said")
    void shimsStandInTheGridWhereTheyBelong(Said said) {
        Map<String, String> expected = new TreeMap<>();
        for (Shim shim : said.judgement().setup().places()) {
            boolean isUnsure = shim.isNeeded() && said.judgement().setup().errorOf(shim) > shim.height();
            expected.put(plain(said.figures().place(shim.x()) + " | " + said.figures().place(shim.y())),
                said.figures().shim(shim.height()) + (isUnsure ? "*" : ""));
        }

        assertEquals(expected, grid(said, " 1. "), said.text());
    }

    @ParameterizedTest
    @MethodSource("said")
    void faceBChecksAreTheSame(Said said) {
        JsonNode checks = said.json().at("/faceBChecks");
        assertEquals(said.judgement().checks().size(), checks.size());
        for (int k = 0; k < checks.size(); k++) {
            FaceBCheck check = said.judgement().checks().get(k);
            assertEquals(check.height(), checks.get(k).get("height").asDouble());
            assertEquals(check.tolerance(), checks.get(k).get("tolerance").asDouble());
            String row = said.figures().place(check.x()) + " " + said.figures().place(check.y()) + " "
                + said.figures().fine(check.height()) + " " + said.figures().fine(check.tolerance());
            assertTrue(said.flatDetails().contains(plain(row)), row);
        }
        Map<String, String> expected = new TreeMap<>();
        said.judgement().checks().forEach(check -> expected.put(plain(said.figures().place(check.x()) + " | "
            + said.figures().place(check.y())), said.figures().fine(check.height())));
        assertEquals(expected, grid(said, " 3. "), said.text());
        double limit = said.judgement().checks().stream().mapToDouble(FaceBCheck::tolerance).max().orElseThrow();
        assertTrue(said.flat().contains("by over " + said.figures().fine(limit)), said.text());
    }

    // The section runs along the middle of the board and across the middle of its length, over the bed it is held on.
    @ParameterizedTest
    @MethodSource("said")
    void sectionsRunThroughTheMiddle(Said said) {
        Judgement judgement = said.judgement();
        Profile along = Profile.lengthwise(judgement);
        Profile across = Profile.crosswise(judgement);
        double halfWidth = judgement.board().width() / 2;
        double halfLength = judgement.board().length() / 2;
        for (int k = 0; k < along.place().length; k += 30) {
            double x = along.place()[k];
            double y = across.place()[k];
            assertEquals(judgement.shape().topAt(x, halfWidth) - judgement.setup().bed().at(x, halfWidth),
                along.top()[k], 1e-9);
            assertEquals(judgement.shape().undersideAt(halfLength, y) - judgement.setup().bed().at(halfLength, y),
                across.underside()[k], 1e-9);
        }
        assertEquals(judgement.board().length(), along.length(), 1e-9);
        assertEquals(judgement.board().width(), across.length(), 1e-9);
    }

    // By their names: a bow that stands under cup is the wrong one.
    @ParameterizedTest
    @MethodSource("said")
    void warpStandsUnderItsNames(Said said) {
        Warp warp = said.judgement().warp();
        Map.of("twist", warp.twist(), "bow", warp.bow(), "cup", warp.cup()).forEach((name, amount) -> {
            assertEquals(amount.orElseThrow().value(), said.json().at("/warp/" + name).asDouble(), name);
            assertEquals(amount.orElseThrow().standardError().orElseThrow(),
                said.json().at("/warp/" + name + "StandardError").asDouble(), name);
        });
    }

    // By their names: both ranges, and what is asked of the better one.
    @ParameterizedTest
    @MethodSource("said")
    void thicknessesStandUnderTheirNames(Said said) {
        ThicknessRange lying = said.judgement().outlook().asMeasured();
        ThicknessRange levelled = said.judgement().outlook().levelled();
        Map.of("atReadings", said.judgement().readings().promise(), "asMeasured", lying.median(),
            "asMeasuredLow", lying.low(), "asMeasuredHigh", lying.high(), "levelled", levelled.median(),
            "low", levelled.low(), "high", levelled.high(), "target", said.judgement().board().target().orElseThrow(),
            "chance", said.judgement().chance().orElseThrow()).forEach((name, value) ->
                assertEquals(value, said.json().at("/thickness/" + name).asDouble(), name));
    }

    // What stands behind the words "Gap under each corner": a row for each corner, its gap as measured and levelled.
    @ParameterizedTest
    @MethodSource("said")
    void gapsUnderTheCornersStandInTheirColumns(Said said) {
        Judgement judgement = said.judgement();
        Figures figures = said.figures();
        String table = said.flatDetails().substring(said.flatDetails().indexOf("Gap under each corner"));
        for (double[] at : new double[][] {{0, 0}, {judgement.board().length(), 0},
            {judgement.board().length(), judgement.board().width()}, {0, judgement.board().width()}}) {
            double underside = judgement.shape().undersideAt(at[0], at[1]);
            String row = "corner " + figures.place(at[0]) + (at[1] == 0 ? " near " : " far ")
                + figures.number(underside - judgement.asMeasured().bed().at(at[0], at[1])) + " "
                + figures.number(underside - judgement.levelled().bed().at(at[0], at[1])) + " ";
            assertTrue(table.contains(plain(row)), row + " in " + table);
        }
        assertTrue(table.contains("as measured levelled"), table);
    }

    // Every plane that was compared has its own row, and the chosen one its star.
    @ParameterizedTest
    @MethodSource("said")
    void planesStandInTheirRows(Said said) {
        Figures figures = said.figures();
        for (int k = 0; k < said.judgement().planes().all().size(); k++) {
            ReferencePlane plane = said.judgement().planes().all().get(k);
            Plane face = plane.slab().faceA();
            String row = plane.name().words() + (plane.equals(said.judgement().planes().chosen()) ? " * " : " ")
                + figures.tilt(face.slopeX()) + " " + figures.tilt(face.slopeY()) + " "
                + figures.number(plane.deepestCut()) + " " + figures.volume(plane.removed()) + " "
                + figures.number(plane.thickness());
            assertTrue(said.flatDetails().contains(plain(row)), row + " in " + said.flatDetails());
            JsonNode json = said.json().at("/planes/" + k);
            assertEquals(List.of(face.slopeX(), face.slopeY(), plane.deepestCut(), plane.removed(), plane.thickness()),
                List.of(json.get("slopeX").asDouble(), json.get("slopeY").asDouble(), json.get("deepestCut").asDouble(),
                    json.get("removed").asDouble(), json.get("thickness").asDouble()));
        }
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }
}
