package outwind.report.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.board.Units;
import outwind.cutting.Cut;
import outwind.cutting.Datum;
import outwind.cutting.Machining;
import outwind.cutting.Movement;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.JudgeOptions;
import outwind.judge.SecondCut;
import outwind.numeric.plane.Plane;
import outwind.report.text.BenchWords;
import outwind.report.text.FinishReport;
import outwind.report.words.Figures;
import outwind.shop.Cutter;
import outwind.surface.Faces;
import outwind.surface.ShapeOf;
import outwind.surface.SuspectReading;
import outwind.surface.trend.Warp;

/** Face B once face A is cut: under every name the figure of that name, no two of them alike, in JSON and in words. */
class FinishJsonTest {

    private static final Board BOARD = ShapeOf.board().wanted(26).read(5, 3, (x, y) -> 30 + x / 900 - y / 600);

    private static Optional<Warp.Amount> amount(double value) {
        return Optional.of(new Warp.Amount(value, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    private static SecondCut second() {
        return second(26, List.of());
    }

    private static SecondCut second(double aboveBed, List<SuspectReading> suspects) {
        Faces faces = Faces.of(BOARD);
        Cut cut = new Cut(Face.B, new Plane(26, 0, 0), 4.2, 2.7, 440_000, aboveBed, Datum.BED);
        // 0 to 100 in steps of 0.1: the range from 5 to 95 % is 25.5 to 34.5 mm, its median 30 mm.
        ThicknessRange range = new ThicknessRange(IntStream.rangeClosed(0, 100).mapToDouble(i -> 25 + i / 10.0)
            .toArray());
        return new SecondCut(faces, JudgeOptions.usual(BOARD), range, Verdict.DOUBTFUL, cut,
            Machining.ofFaceB(cut, faces.whole(), List.of(new Cutter("facing cutter", 40, 1.5, 0.3, 24, 3000, 26))),
            new Movement(new Warp(amount(0.61), amount(-0.47), amount(0.38)), 0.83, 0.001, 15), suspects);
    }

    @Test
    void everyFigureStandsUnderItsName() throws IOException {
        SecondCut second = second();
        JsonNode json = new ObjectMapper().readTree(FinishJson.of(second));

        assertEquals(List.of(900.0, 180.0, 15.0), doubles(json.at("/board"), "length", "width", "readings"));
        assertEquals(List.of(25.5, 30.0, 34.5, 26.0), doubles(json.at("/thickness"), "low", "median", "high", "target"));
        // By hand: of 101 boards 10 are thinner than 26 mm.
        assertEquals(91 / 101.0, json.at("/thickness/chance").asDouble(), 1e-12);
        assertEquals(List.of(0.61, -0.47, 0.38, 0.83, 0.001), doubles(json.at("/movement"), "twist", "bow", "cup",
            "greatest", "pValue"));
        assertTrue(json.at("/movement/moved").asBoolean() && json.at("/movement/known").asBoolean());
        assertEquals(List.of(4.2, 440_000.0, 23.0, 26.0, 2.7), doubles(json.at("/cuts/0"), "depth", "removed",
            "keepBelow", "aboveBed", "meanDepth"));
        Machining way = second.machining().get(0);
        assertEquals(way.minutes(), json.at("/cuts/0/minutes").asDouble());
        assertEquals(way.on(Face.B).size(), json.at("/cuts/0/passes").size());
        assertEquals(way.on(Face.B).get(0).depth(), json.at("/cuts/0/passes/0/depth").asDouble());
        assertEquals(way.on(Face.B).get(0).wood(), json.at("/cuts/0/passes/0/wood").asDouble());
    }

    @Test
    void theReportSaysTheSame() {
        String report = FinishReport.of(second(), new Figures(Units.MILLIMETRES)).replaceAll("[\\s\u00a0]+", " ");

        for (String words : List.of("DOUBTFUL: it may or may not finish at 26.0 mm.",
            "it gives 30.0 mm (25.5 mm to 34.5 mm, 90 %). The chance of 26.0 mm is 90 %.",
            "twist +0.61 mm, bow -0.47 mm, cup +0.38 mm.", "at 26.0 mm above it, about 4.2 mm below its highest spot",
            // The face rises along the board and falls across it.
            "near x 900 y 0 with face B up", "Keep clamps below 23.0 mm above the bed.")) {
            assertTrue(report.contains(words), words + " in " + report);
        }
    }

    @Test
    void aReadingThatLooksWrongIsNamedWithItsLine() {
        Reading reading = new Reading(450, 90, 31.75, Face.B, "", 9);
        SecondCut second = second(26, List.of(new SuspectReading(reading, 30.25, 0.1, OptionalDouble.empty())));

        String report = FinishReport.of(second, new Figures(Units.MILLIMETRES)).replaceAll("[\\s\u00a0]+", " ");

        assertTrue(report.contains("LOOK AGAIN at line 9 of the file: 31.75 mm. The other readings point to 30.25 mm there."),
            report);
    }

    @Test
    void whereNothingIsLeftToCutToNoStepIsGiven() {
        Figures figures = new Figures(Units.MILLIMETRES);
        String nothing = "There is nothing left to cut to: face B cannot be cleaned.";

        String report = FinishReport.of(second(0, List.of()), figures).replaceAll("[\\s\u00a0]+", " ");
        List<String> said = BenchWords.faceB(second(0, List.of()), figures);

        assertTrue(report.endsWith("What is left to do ------------------ " + nothing + " "), report);
        assertEquals(nothing, said.get(said.size() - 1).replace('\u00a0', ' '));
        assertEquals(4, BenchWords.faceB(second(), figures).size());
    }

    private static List<Double> doubles(JsonNode node, String... names) {
        return List.of(names).stream().map(name -> node.get(name).asDouble()).toList();
    }
}
