package outwind.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import outwind.stock.Pack;
import outwind.stock.PricedBoard;
import outwind.stock.Stack;
import outwind.stock.StackPlan;
import outwind.stock.Uses;
import outwind.stock.Wanted;

/** A priced stack for scripts: one JSON object, lengths in mm, areas in mm², volumes in mm³, money as it was given. */
public final class StackJson {

    private StackJson() { }

    /**
     * Writes it, with a line end after it.
     *
     * @param wanted finished area that is wanted, if one is
     * @param plan of a cutting bill against it, if there is one
     * @param pack that it is a sample of, if it is
     * @param uses of its boards, where several thicknesses are thought of
     */
    public static String of(Stack stack, Optional<Wanted> wanted, Optional<StackPlan> plan, Optional<Pack> pack,
            Optional<Uses> uses) {
        ObjectNode root = JsonText.root("stack");
        root.put("expected", stack.expected());
        root.put("expectedStandardDeviation", stack.deviation());
        root.put("expectedLow", stack.fewest()).put("expectedHigh", stack.most());
        root.put("currency", stack.currency());
        root.putNull("cost");
        stack.cost().ifPresent(cost -> root.put("cost", cost));
        root.putNull("unevenness");
        stack.unevenness().ifPresent(known -> root.putObject("unevenness").put("multiple", known.multiple())
            .put("standardDeviation", known.deviation()).put("boards", known.boards()));
        ArrayNode boards = root.putArray("boards");
        for (PricedBoard board : stack.boards()) {
            ObjectNode node = boards.addObject();
            node.put("name", board.name()).put("file", board.file());
            BlankJson.kind(node, board.kind());
            node.put("verdict", board.verdict().word());
            node.putNull("chance").putNull("target");
            board.chance().ifPresent(chance -> node.put("chance", chance));
            board.target().ifPresent(target -> node.put("target", target));
            node.put("low", board.low()).put("median", board.median()).put("high", board.high());
            node.put("boardFeet", board.feet().exact()).put("boardFeetTallied", board.feet().tallied());
            node.put("roughVolume", board.roughVolume()).put("finishedVolume", board.finishedVolume());
            node.put("finishedArea", board.finishedArea()).put("waste", board.waste());
            node.putNull("minutes").putNull("cost").putNull("wood").putNull("labour");
            board.minutes().ifPresent(minutes -> node.put("minutes", minutes));
            board.cost().ifPresent(cost -> node.put("cost", cost));
            board.wood().ifPresent(wood -> node.put("wood", wood));
            board.labour().ifPresent(labour -> node.put("labour", labour));
        }
        root.putNull("wanted");
        wanted.ifPresent(known -> describe(root.putObject("wanted"), known));
        root.putNull("bill");
        plan.ifPresent(known -> describe(root.putObject("bill"), known));
        root.putNull("pack");
        pack.ifPresent(known -> describe(root.putObject("pack"), known));
        root.putNull("uses");
        uses.ifPresent(known -> describe(root.putObject("uses"), known));
        return JsonText.of(root);
    }

    private static void describe(ObjectNode node, Wanted wanted) {
        node.put("area", wanted.area()).putNull("chance").putNull("gap").putNull("cost");
        ArrayNode boards = node.putArray("boards");
        wanted.bought().ifPresent(bought -> {
            node.put("chance", bought.chance()).put("gap", bought.gap());
            Stack.costOf(bought.boards()).ifPresent(cost -> node.put("cost", cost));
            bought.boards().forEach(board -> boards.add(board.file()));
        });
    }

    private static void describe(ObjectNode node, Uses uses) {
        boolean priced = uses.inMoney();
        ArrayNode targets = node.putArray("targets");
        for (Uses.Aim aim : uses.aims()) {
            targets.addObject().put("target", aim.thickness()).put("low", uses.fewest(aim)).put("high", uses.most(aim))
                .put("bestFor", uses.bestFor(aim)).put("finishedVolume", uses.wood(aim))
                .put("takings", priced ? (Double) uses.money(aim) : null);
        }
        node.put("bestVolume", uses.bestWood()).put("bestTakings", priced ? (Double) uses.bestMoney() : null);
        ArrayNode boards = node.putArray("boards");
        for (PricedBoard board : uses.stack().boards()) {
            ObjectNode one = boards.addObject().put("file", board.file())
                .put("best", uses.best(board).map(Uses.Aim::thickness).orElse(null));
            ArrayNode chances = one.putArray("chances");
            uses.aims().forEach(aim -> chances.add(uses.chance(board, aim)));
        }
    }

    private static void describe(ObjectNode node, Pack pack) {
        node.put("size", pack.size()).put("measured", pack.measured().size()).put("target", pack.target())
            .put("expected", pack.expected()).put("low", pack.low()).put("high", pack.high());
        describe(node.putObject("rough"), pack.rough());
        describe(node.putObject("loss"), pack.loss());
        node.putNull("more");
        pack.more().ifPresent(more -> node.put("more", more));
        ArrayNode doubtful = node.putArray("doubtful");
        pack.doubtful().forEach(board -> doubtful.add(board.file()));
        node.putNull("worth");
        pack.worth().ifPresent(worth -> {
            ObjectNode money = node.putObject("worth").put("profit", worth.terms().profit())
                .put("takings", worth.takings()).put("takingsLow", worth.takingsLow())
                .put("takingsHigh", worth.takingsHigh()).put("labour", worth.labour().orElse(null))
                .put("bid", worth.bid()).put("sureBid", worth.sureBid()).put("asked", worth.asked().orElse(null))
                .put("chanceOfProfit", worth.reached().orElse(null));
            money.put("boardFeet", worth.boardFeet()).put("roughVolume", worth.volume());
        });
    }

    private static void describe(ObjectNode node, Pack.Span span) {
        node.put("low", span.low()).put("median", span.median()).put("high", span.high());
    }

    private static void describe(ObjectNode node, StackPlan plan) {
        node.put("met", plan.isMet()).put("measure", JsonText.code(plan.measure())).put("cost", plan.cost())
            .put("least", plan.least()).put("gap", plan.gap()).put("minChance", plan.sure())
            .put("mightBeMore", plan.more());
        BlankJson.items(node.putArray("items"), plan.bill(), plan::cut, plan.missing());
        ArrayNode boards = node.putArray("boards");
        for (StackPlan.BoardCut cut : plan.cuts()) {
            ObjectNode board = boards.addObject().put("name", cut.priced().name()).put("file", cut.priced().file());
            BlankJson.kind(board, cut.board().kind());
            board.putNull("cost");
            cut.priced().wood().ifPresent(cost -> board.put("cost", cost));
            board.put("kerf", cut.saw().kerf()).put("endTrim", cut.saw().endTrim());
            BlankJson.describe(board, cut.saw().limits());
            BlankJson.describe(board.putObject("layout"), cut.layout());
        }
    }
}
