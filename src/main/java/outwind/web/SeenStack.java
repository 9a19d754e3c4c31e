package outwind.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import outwind.report.json.StackJson;
import outwind.report.text.BenchWords;
import outwind.report.words.SawWords;

/** All boards of the folder for the page: the stack as every script gets it, and what to buy in words. */
final class SeenStack {

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private SeenStack() { }

    static ObjectNode of(Boards.Pile pile) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("units", pile.figures().unit());
        pile.bills().forEach(node.putArray("bills")::add);
        ArrayNode troubles = node.putArray("troubles");
        pile.troubles().forEach((file, trouble) -> troubles.addObject().put("file", file).put("trouble", trouble));
        ObjectNode sizes = node.putObject("sizes");
        pile.measured().forEach((file, board) -> sizes.putObject(file).put("length", board.length())
            .put("width", board.width()));
        pile.plan().ifPresent(plan -> BenchWords.buying(plan, pile.currency(), pile.figures())
            .forEach(node.putArray("buying")::add));
        ArrayNode sawing = node.putArray("sawing");
        pile.plan().ifPresent(plan -> plan.cuts().forEach(cut ->
            describe(sawing.addObject(), BenchWords.sawing(cut, pile.figures()))));
        node.put("care", SawWords.CAUTIONS);
        pile.stack().ifPresent(stack -> {
            try {
                node.set("stack", MAPPER.readTree(StackJson.of(stack, Optional.empty(), pile.plan(), Optional.empty(),
                    Optional.empty())));
            } catch (JsonProcessingException e) {
                throw new IllegalStateException("our own report cannot be read", e);
            }
        });
        return node;
    }

    private static void describe(ObjectNode node, BenchWords.Sawing sawing) {
        sawing.said().forEach(node.putArray("said")::add);
        sawing.header().forEach(node.putArray("header")::add);
        ArrayNode rows = node.putArray("rows");
        sawing.rows().forEach(row -> row.forEach(rows.addArray()::add));
    }
}
