package outwind.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import outwind.cutting.Cut;
import outwind.cutting.Machining;
import outwind.cutting.Movement;
import outwind.cutting.Pass;
import outwind.judge.SecondCut;

/** What is left to do once face A is cut, for scripts: lengths in mm, volumes in mm³, shares from 0 to 1. */
public final class FinishJson {

    private FinishJson() { }

    /** Writes it as JSON, with a line end after it. */
    public static String of(SecondCut second) {
        ObjectNode root = JsonText.root("finish");
        root.putObject("board").put("name", second.board().name()).put("length", second.board().length())
            .put("width", second.board().width()).put("readings", second.board().pointsOnFaceA());
        ObjectNode thickness = root.putObject("thickness");
        thickness.put("median", second.range().median()).put("low", second.range().low())
            .put("high", second.range().high());
        thickness.putNull("target").putNull("chance");
        second.board().target().ifPresent(target -> thickness.put("target", target));
        second.chance().ifPresent(chance -> thickness.put("chance", chance));
        root.put("verdict", second.verdict().word());
        root.set("movement", movement(second.movement()));
        ArrayNode cuts = root.putArray("cuts");
        cuts.add(cut(second.cut(), second.machining().stream().findFirst()));
        root.set("machining", machining(second.machining()));
        return JsonText.of(root);
    }

    private static ObjectNode movement(Movement movement) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("known", !movement.isUnknown());
        node.put("moved", !movement.isUnknown() && movement.isReal());
        node.put("pValue", movement.probability());
        node.put("greatest", movement.greatest());
        node.putNull("twist").putNull("bow").putNull("cup");
        movement.change().twist().ifPresent(amount -> node.put("twist", amount.value()));
        movement.change().bow().ifPresent(amount -> node.put("bow", amount.value()));
        movement.change().cup().ifPresent(amount -> node.put("cup", amount.value()));
        return node;
    }

    /** One cut, the same in every file. */
    static ObjectNode cut(Cut cut, Optional<Machining> way) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("face", cut.face().name());
        node.put("depth", cut.depth());
        ArrayNode passes = node.putArray("passes");
        node.putNull("minutes");
        way.ifPresent(chosen -> {
            chosen.on(cut.face()).forEach(pass -> passes.add(pass(pass)));
            node.put("minutes", chosen.minutes(cut.face()));
        });
        node.put("removed", cut.removed());
        node.put("keepBelow", cut.keepBelow());
        node.put("aboveBed", cut.aboveBed());
        node.put("datum", JsonText.code(cut.datum()));
        node.put("meanDepth", cut.meanDepth());
        return node;
    }

    private static ObjectNode pass(Pass pass) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("depth", pass.depth()).put("cutter", pass.cutter().name()).put("wood", pass.wood())
            .put("minutes", pass.minutes());
        ArrayNode areas = node.putArray("areas");
        pass.areas().forEach(area -> areas.addObject().put("x1", area.x1()).put("x2", area.x2()).put("y1", area.y1())
            .put("y2", area.y2()));
        return node;
    }

    /** Every way to make the cuts, the quickest first. */
    static ArrayNode machining(List<Machining> ways) {
        ArrayNode nodes = JsonNodeFactory.instance.arrayNode();
        for (Machining way : ways) {
            ObjectNode node = nodes.addObject().put("cutter", way.roughing().name());
            node.putNull("finishingCutter");
            way.finishing().ifPresent(cutter -> node.put("finishingCutter", cutter.name()));
            node.put("passes", way.count()).put("minutes", way.minutes());
        }
        return nodes;
    }
}
