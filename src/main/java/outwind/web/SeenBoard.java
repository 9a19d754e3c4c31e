package outwind.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import outwind.board.Board;
import outwind.board.Face;
import outwind.cutting.CuttingPlan;
import outwind.judge.Judgement;
import outwind.numeric.plane.Plane;
import outwind.report.json.JsonReport;
import outwind.report.text.BenchWords;
import outwind.report.words.Figures;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * A judged board for the page: the judgement as every script gets it, the same in words, and both faces on a grid with
 * the planes that they are cut to, from which the page draws plan, edges and sections. Lengths in mm.
 */
final class SeenBoard {

    private static final int ALONG = 25;
    private static final int ACROSS = 9;
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private SeenBoard() { }

    /** @param cutters names of those that can be chosen */
    static ObjectNode of(Judgement judgement, List<String> cutters) {
        Board board = judgement.board();
        Figures figures = new Figures(board.units());
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("units", figures.unit());
        ArrayNode words = node.putArray("words");
        BenchWords.verdict(judgement, figures).forEach(words::add);
        node.put("gain", BenchWords.gain(judgement, figures));
        BenchWords.cuts(judgement, figures).forEach(node.putArray("cuts")::add);
        cutters.forEach(node.putArray("cutters")::add);
        SampledBoard faces = judgement.shape().at(Places.grid(Region.whole(board), ALONG, ACROSS));
        ObjectNode grid = node.putObject("grid");
        putAll(grid.putArray("x"), faces.x());
        putAll(grid.putArray("y"), faces.y());
        putAll(grid.putArray("top"), faces.top());
        putAll(grid.putArray("underside"), faces.underside());
        ObjectNode planes = node.putObject("cutTo");
        put(planes.putObject("chosen"), judgement.cuts());
        put(planes.putObject("other"), judgement.otherCuts());
        ArrayNode readings = node.putArray("touched");
        board.readingsOf(Face.A).forEach(reading -> readings.addObject().put("x", reading.x())
            .put("y", reading.y()).put("z", reading.z()).put("line", reading.line()));
        node.set("judgement", contract(judgement));
        return node;
    }

    private static ObjectNode contract(Judgement judgement) {
        try {
            return (ObjectNode) MAPPER.readTree(JsonReport.of(judgement));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("our own report cannot be read", e);
        }
    }

    private static void put(ObjectNode node, CuttingPlan cuts) {
        put(node.putObject("faceA"), cuts.faceA().plane());
        put(node.putObject("faceB"), cuts.faceB().plane());
        node.put("thickness", cuts.thickness());
    }

    private static void put(ObjectNode node, Plane plane) {
        node.put("atOrigin", plane.at(0, 0)).put("slopeX", plane.slopeX()).put("slopeY", plane.slopeY());
    }

    private static void putAll(ArrayNode array, double[] values) {
        for (double value : values) {
            array.add(Math.rint(value * 1000) / 1000);
        }
    }
}
