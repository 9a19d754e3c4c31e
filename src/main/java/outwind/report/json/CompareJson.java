package outwind.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import outwind.report.words.CompareSheet;
import outwind.stock.Offered;

/** Stacks side by side for scripts: one JSON object, areas in mm², money as it was given. */
public final class CompareJson {

    private CompareJson() { }

    /** Writes it, with a line end after it. */
    public static String of(CompareSheet sheet) {
        ObjectNode root = JsonText.root("compare").put("currency", sheet.currency());
        ArrayNode stacks = root.putArray("stacks");
        for (Offered one : sheet.offered()) {
            double sure = one.area(CompareSheet.SURE);
            double hoped = one.area(CompareSheet.HOPED);
            stacks.addObject().put("name", one.name()).put("boards", one.stack().boards().size())
                .put("low", one.stack().fewest()).put("high", one.stack().most()).put("cost", one.stack().cost().orElse(null))
                .put("finishedArea", one.area()).put("finishedAreaLow", sure).put("finishedAreaHigh", hoped)
                .put("yield", one.yield(one.area())).put("yieldLow", one.yield(sure)).put("yieldHigh", one.yield(hoped))
                .put("costPerArea", one.cost(one.area()).orElse(null)).put("costPerAreaLow", one.cost(hoped).orElse(null))
                .put("costPerAreaHigh", one.cost(sure).orElse(null));
        }
        return JsonText.of(root);
    }
}
