package outwind.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import outwind.report.json.StackJson;
import outwind.report.text.BenchWords;

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
        pile.stack().ifPresent(stack -> {
            try {
                node.set("stack", MAPPER.readTree(StackJson.of(stack, Optional.empty(), pile.plan(), Optional.empty(), Optional.empty())));
            } catch (JsonProcessingException e) {
                throw new IllegalStateException("our own report cannot be read", e);
            }
        });
        return node;
    }
}
