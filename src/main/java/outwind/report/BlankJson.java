package outwind.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.stock.Blank;
import outwind.stock.BlankPlan;
import outwind.stock.Layout;
import outwind.stock.LengthsPlan;
import outwind.stock.SawCut;
import outwind.stock.Saw;
import outwind.surface.Region;

/** Blanks and cuts for scripts: one JSON object, lengths in mm, shares from 0 to 1. */
public final class BlankJson {

    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private final ObjectNode root = JsonNodeFactory.instance.objectNode();

    private BlankJson(Board board, Saw saw, double sure) {
        root.putObject("board").put("name", board.name()).put("length", board.length()).put("width", board.width());
        root.putObject("saw").put("kerf", saw.kerf()).put("endTrim", saw.endTrim()).put("raster", saw.raster());
        root.put("sure", sure);
    }

    /** Writes a cutting bill against a board, with a line end after it. */
    public static String of(BlankPlan plan) {
        BlankJson json = new BlankJson(plan.board(), plan.saw(), plan.sure());
        json.items(plan);
        describe(json.root.putObject("layout"), plan.chosen());
        describe(json.root.putObject("otherLayout"), plan.other());
        return json.written();
    }

    /** Writes crosscuts alone, with a line end after it. */
    public static String of(LengthsPlan plan) {
        BlankJson json = new BlankJson(plan.board(), plan.saw(), plan.sure());
        json.root.put("target", plan.board().target().orElseThrow());
        plan.longest().ifPresent(blank -> describe(json.root.putObject("longest"), blank));
        ArrayNode equal = json.root.putArray("equal");
        plan.equal().forEach(blank -> describe(equal.addObject(), blank));
        return json.written();
    }

    private void items(BlankPlan plan) {
        ArrayNode items = root.putArray("items");
        for (int i = 0; i < plan.bill().items().size(); i++) {
            BillItem item = plan.bill().items().get(i);
            ObjectNode node = items.addObject().put("name", item.name()).put("wanted", item.quantity())
                .put("cut", plan.cut(i));
            plan.missing().get(i).ifPresent(why ->
                node.put("missing", why.name().toLowerCase(Locale.ROOT).replace('_', ' ')));
        }
    }

    /** Writes a layout into a node of another report. */
    static void describe(ObjectNode node, Layout layout) {
        node.put("order", layout.order().words());
        node.put("value", layout.value());
        node.put("bound", layout.bound());
        ArrayNode sections = node.putArray("sections");
        for (List<Blank> section : layout.sections()) {
            ArrayNode blanks = sections.addArray();
            section.forEach(blank -> describe(blanks.addObject(), blank));
        }
        ArrayNode cuts = node.putArray("cuts");
        for (SawCut cut : layout.cuts()) {
            cuts.addObject().put("kind", cut.crosscut() ? "crosscut" : "rip").put("section", cut.section())
                .put("blank", cut.blank()).put("from", cut.from()).put("to", cut.to()).put("keeps",
                    cut.keeps().name().toLowerCase(Locale.ROOT));
        }
        ArrayNode offcuts = node.putArray("offcuts");
        layout.offcuts().forEach(offcut -> put(offcuts.addObject(), offcut));
    }

    private static void describe(ObjectNode node, Blank blank) {
        node.put("name", blank.name());
        put(node, blank.region());
        node.put("turned", blank.turned());
        node.put("wanted", blank.wanted());
        node.put("thickness", blank.range().median());
        node.put("low", blank.range().low());
        node.put("high", blank.range().high());
        node.put("chance", blank.chance());
        node.put("value", blank.value());
    }

    private static void put(ObjectNode node, Region region) {
        node.put("x1", region.x1()).put("y1", region.y1()).put("x2", region.x2()).put("y2", region.y2());
    }

    private String written() {
        try {
            return MAPPER.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of numbers and words could not be written", e);
        }
    }
}
