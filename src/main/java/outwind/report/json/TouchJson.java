package outwind.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.flatten.GridPromise;
import outwind.report.words.TouchSheet;

/** Where to touch off, for scripts: one JSON object, lengths in mm, times in minutes. */
public final class TouchJson {

    private TouchJson() { }

    /** Writes it, with a line end after it. */
    public static String of(TouchSheet sheet) {
        ObjectNode root = JsonText.root("points");
        ObjectNode board = root.putObject("board").put("name", sheet.board().name())
            .put("length", sheet.grid().length()).put("width", sheet.grid().width());
        board.putNull("thickness").putNull("target");
        sheet.board().thickness().ifPresent(thickness -> board.put("thickness", thickness));
        sheet.board().target().ifPresent(target -> board.put("target", target));
        root.put("columns", sheet.grid().columns()).put("rows", sheet.grid().rows())
            .put("travel", TouchGrid.travel(sheet.tour()))
            .put("reason", JsonText.code(sheet.plan().reason()));
        ArrayNode places = root.putArray("places");
        List<Place> calipers = sheet.calipers();
        sheet.tour().forEach(spot -> places.addObject().put("x", spot.x()).put("y", spot.y())
            .put("caliper", calipers.contains(spot.place())));
        ArrayNode grids = root.putArray("grids");
        for (GridPromise promise : sheet.plan().promises()) {
            grids.addObject().put("columns", promise.grid().columns()).put("rows", promise.grid().rows())
                .put("minutes", sheet.plan().pace().minutes(promise.grid())).put("range", promise.range())
                .put("seesKinks", promise.seesKinks()).put("seesCup", promise.seesCup());
        }
        return JsonText.of(root);
    }
}
