package outwind.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.Layout;
import outwind.blanks.LengthsPlan;
import outwind.blanks.Saw;
import outwind.blanks.SawCut;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.WoodKind;
import outwind.shop.SawLimits;
import outwind.surface.Region;

/** Blanks and cuts for scripts: one JSON object, lengths in mm, shares from 0 to 1. */
public final class BlankJson {

    private final ObjectNode root;

    private BlankJson(String kind, Board board, Saw saw, double sure) {
        root = JsonText.root(kind);
        kind(root.putObject("board").put("name", board.name()).put("length", board.length())
            .put("width", board.width()), board.kind());
        describe(root.putObject("saw").put("kerf", saw.kerf()).put("endTrim", saw.endTrim()).put("raster", saw.raster()),
            saw.limits());
        root.put("minChance", sure);
    }

    /** Writes a cutting bill against a board, with a line end after it. */
    public static String of(BlankPlan plan) {
        BlankJson json = new BlankJson("blanks", plan.board(), plan.saw(), plan.sure());
        items(json.root.putArray("items"), plan.bill(), plan::cut, plan.missing());
        describe(json.root.putObject("layout"), plan.chosen());
        describe(json.root.putObject("otherLayout"), plan.other());
        return JsonText.of(json.root);
    }

    /** Writes crosscuts alone, with a line end after it. */
    public static String of(LengthsPlan plan) {
        BlankJson json = new BlankJson("lengths", plan.board(), plan.saw(), plan.sure());
        json.root.put("target", plan.board().target().orElseThrow());
        json.root.putNull("longest");
        plan.longest().ifPresent(blank -> describe(json.root.putObject("longest"), blank));
        ArrayNode equal = json.root.putArray("equal");
        plan.equal().ifPresent(all -> all.lengths().forEach(blank -> describe(equal.addObject(), blank)));
        return JsonText.of(json.root);
    }

    /** What was wanted of a bill, what is cut of it, and why the rest is missing. */
    static void items(ArrayNode items, CuttingBill bill, IntUnaryOperator cut,
            List<Optional<BlankPlan.Missing>> missing) {
        for (int i = 0; i < bill.items().size(); i++) {
            BillItem item = bill.items().get(i);
            ObjectNode node = items.addObject().put("name", item.name()).put("wanted", item.quantity())
                .put("cut", cut.applyAsInt(i));
            kind(node, item.kind());
            node.putNull("missing");
            missing.get(i).ifPresent(why -> node.put("missing", JsonText.code(why)));
        }
    }

    /** What kind of wood it is, or is wanted in; null where nothing is said of it. */
    static void kind(ObjectNode node, WoodKind kind) {
        node.put("species", kind.species().orElse(null)).put("grade", kind.grade().orElse(null));
    }

    /** Writes a layout into a node of another report. */
    static void describe(ObjectNode node, Layout layout) {
        node.put("value", layout.value());
        node.put("bound", layout.bound());
        describe(node, layout, layout.cuts());
        ArrayNode recut = node.putArray("recut");
        for (int i = 0; i < layout.recut().size(); i++) {
            ObjectNode offcut = recut.addObject();
            put(offcut, layout.recut().get(i).board());
            describe(offcut, layout.recut().get(i), layout.recuts().get(i));
        }
        ArrayNode offcuts = node.putArray("offcuts");
        layout.offcuts().forEach(offcut -> put(offcuts.addObject(), offcut));
    }

    private static void describe(ObjectNode node, Layout layout, List<SawCut> made) {
        node.put("order", JsonText.code(layout.order()));
        ArrayNode sections = node.putArray("sections");
        for (List<Blank> section : layout.sections()) {
            ArrayNode blanks = sections.addArray();
            section.forEach(blank -> describe(blanks.addObject(), blank));
        }
        ArrayNode cuts = node.putArray("cuts");
        for (SawCut cut : made) {
            cuts.addObject().put("kind", cut.crosscut() ? "crosscut" : "rip").put("section", cut.section())
                .put("blank", cut.blank()).put("setting", cut.setting()).put("before", cut.before())
                .put("behind", cut.behind()).put("from", cut.from()).put("to", cut.to())
                .put("keeps", JsonText.code(cut.keeps()));
        }
    }

    /** Writes the limits of a saw beside what else is said of it. */
    static void describe(ObjectNode node, SawLimits limits) {
        node.put("shortest", limits.shortest()).putNull("widest");
        if (Double.isFinite(limits.widest())) {
            node.put("widest", limits.widest());
        }
        node.put("firstEdge", limits.firstEdge()).put("overLength", limits.overLength())
            .put("overWidth", limits.overWidth());
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
}
