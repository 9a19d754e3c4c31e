package outwind.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import outwind.blanks.Saw;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Length;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.board.file.BillFile;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;
import outwind.board.text.Line;
import outwind.flatten.Verdict;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Prospect;
import outwind.report.files.RecordingFile;
import outwind.report.words.Figures;
import outwind.shop.Cutter;
import outwind.shop.Shop;
import outwind.stock.PricedBoard;
import outwind.stock.Rates;
import outwind.stock.Stack;
import outwind.stock.StackPlan;
import outwind.surface.ImpossibleBoard;

/** The boards of the folder: what is asked of each, and of all together. */
final class Boards {

    private static final int REMEMBERED = 4;

    /** A name is part of a file name. */
    private static final int LONGEST_TYPED = 80;

    private final BoardFolder folder;
    private final Workload workload;
    private final Map<String, TouchDesk> touching = new ConcurrentHashMap<>();
    private final AtomicBoolean ready = new AtomicBoolean();
    private final Map<String, CutDesk> cutting = new ConcurrentHashMap<>();
    private final Map<Asked, Judgement> judged = new LinkedHashMap<>(REMEMBERED, 0.75f, true) {

        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, Judgement> eldest) {
            return size() > REMEMBERED;
        }
    };

    /** A board's text and what was asked of it, in which shop. */
    private record Asked(String file, String text, Wish wish, Shop shop) { }

    /**
     * What is asked of a board on the page, as it was typed; empty for what its file and the shop say.
     *
     * @param without line of a reading to leave out
     * @param cutter  name of a cutter of the shop
     */
    record Wish(String target, String skim, String without, String cutter) {

        static final Wish NONE = new Wish("", "", "", "");
    }

    /** @param workload judges them */
    Boards(BoardFolder folder, Workload workload) {
        this.folder = folder;
        this.workload = workload;
    }

    TouchDesk touching(String name) throws Refused {
        Path file = folder.file(name);
        if (!ready.getAndSet(true)) {
            // A person takes longer over the first places than this takes.
            CompletableFuture.runAsync(() -> rehearse(file));
        }
        return touching.computeIfAbsent(name, fresh -> new TouchDesk(file, workload));
    }

    private static void rehearse(Path file) {
        try {
            Prospect.getReady(Recording.read(file).board());
        } catch (IOException | BadBoardFile | ImpossibleBoard e) {
            // Said to the person who asks for the board.
            return;
        }
    }

    /** A sentence about a file of the folder, with its name alone. */
    String named(String sentence) {
        return folder.named(sentence);
    }

    CutDesk cutting(String name) throws Refused {
        Path file = folder.file(name);
        return cutting.computeIfAbsent(name, fresh -> new CutDesk(file));
    }

    String revision(String name) throws IOException, BadBoardFile, Refused {
        return Revision.of(Recording.textOf(folder.file(name)));
    }

    String text(String name) throws IOException, BadBoardFile, Refused {
        return Recording.textOf(folder.file(name));
    }

    /** Every board with what can be said of it without judging it. */
    ObjectNode list() throws IOException {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode boards = root.putArray("boards");
        for (String name : folder.names()) {
            described(name).ifPresent(boards::add);
        }
        return root;
    }

    /** A file of the folder as the list shows it; empty if it is a cutting bill. */
    private Optional<ObjectNode> described(String name) {
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("file", name);
        try {
            Recording recording = Recording.read(folder.file(name));
            return Optional.of(node.put("name", recording.board().name())
                .put("readings", recording.board().readings().size())
                .put("left", recording.plan().stream().filter(planned -> planned.entry().isEmpty()).count()));
        } catch (BadBoardFile | IOException | Refused e) {
            return holdsBill(name) ? Optional.empty() : Optional.of(readable(name, node));
        }
    }

    private ObjectNode readable(String name, ObjectNode node) {
        try {
            Board board = BoardFile.read(folder.file(name), Defaults.NOTHING);
            return node.put("name", board.name()).put("readings", board.readings().size()).put("left", 0);
        } catch (BadBoardFile | IOException | Refused e) {
            return node.put("name", name).put("trouble", named(e.getMessage()));
        }
    }

    /** Begins a board file with every place planned; the answer names it. */
    synchronized ObjectNode begin(JsonNode sizes) throws IOException, BadBoardFile, Refused {
        Units units = Units.named(sizes.path("units").asText("mm"));
        List<String> statements = new ArrayList<>();
        String called = Line.fit(sizes.path("name").asText(""), LONGEST_TYPED);
        statements.add("board: " + (called.isEmpty() ? "board" : called));
        statements.add("units: " + units.symbol());
        for (String key : List.of("length", "width", "thickness", "target")) {
            String typed = Line.fit(sizes.path(key).asText(""), LONGEST_TYPED).replace(',', '.');
            if (!typed.isEmpty()) {
                Length.parse(typed, units);
                statements.add(key + ": " + typed);
            } else if (!key.equals("target")) {
                throw new Refused(400, "Type the " + key + " of the board.");
            }
        }
        Path file = folder.fresh(called);
        Recording begun = Recording.of(file.toString(), Recording.stating("", statements));
        int columns = Math.max(2, Math.min(15, sizes.path("columns").asInt(5)));
        int rows = Math.max(2, Math.min(9, sizes.path("rows").asInt(3)));
        Board board = begun.board();
        List<Place> tour;
        try {
            tour = TouchGrid.byRule(board.length(), board.width(), columns, rows, OptionalDouble.empty(), units).tour()
                .stream().map(spot -> new Place(spot.x(), spot.y())).toList();
        } catch (IllegalArgumentException e) {
            throw new Refused(400, e.getMessage());
        }
        RecordingFile.at(file).keep(begun.planning(tour).text());
        return JsonNodeFactory.instance.objectNode().put("file", file.getFileName().toString());
    }

    /** Takes in a board file or a cutting bill that was dropped or pasted on the page; one of that name is never replaced. */
    synchronized ObjectNode take(String name, byte[] bytes) throws IOException, BadBoardFile, Refused {
        String text = new String(bytes, StandardCharsets.UTF_8);
        int dot = name.lastIndexOf('.');
        Path file = folder.fresh(Line.fit(dot > 0 ? name.substring(0, dot) : name, LONGEST_TYPED));
        if (!isBill(text)) {
            BoardFile.parse(file.getFileName().toString(), text, Defaults.NOTHING);
        }
        RecordingFile.at(file).keep(text);
        return JsonNodeFactory.instance.objectNode().put("file", file.getFileName().toString());
    }

    /** A board judged. */
    Judgement judge(String name, Wish wish) throws IOException, BadBoardFile, Refused {
        Path file = folder.file(name);
        Asked question = new Asked(name, Recording.textOf(file), wish, folder.shop());
        synchronized (judged) {
            if (judged.containsKey(question)) {
                return judged.get(question);
            }
        }
        Board board = asked(BoardFile.parse(file.toString(), question.text(), Defaults.NOTHING), wish);
        JudgeOptions request = JudgeOptions.usual(board, chosen(question.shop(), wish.cutter()));
        Workload.Turn turn = workload.turn();
        Judgement judgement;
        try (turn) {
            judgement = Judgement.of(board, request);
        }
        synchronized (judged) {
            judged.put(question, judgement);
        }
        return judgement;
    }

    private static Board asked(Board measured, Wish wish) throws Refused {
        Board board = measured;
        if (!wish.target().isBlank()) {
            board = board.withTarget(positive(wish.target(), board.units()));
        }
        if (wish.without().matches("\\d{1,6}")) {
            board = board.without(Integer.parseInt(wish.without()));
            if (board.readings().size() < 3) {
                throw new Refused(400, "Too few readings would be left to judge the board by.");
            }
        }
        if (wish.skim().isBlank()) {
            return board;
        }
        double skim = notNegative(wish.skim(), board.units());
        try {
            return board.withSkim(skim);
        } catch (IllegalArgumentException e) {
            throw new Refused(400, "That skim leaves no wood between the faces. Set less.");
        }
    }

    private static Shop chosen(Shop shop, String cutter) throws Refused {
        if (cutter.isBlank()) {
            return shop;
        }
        Cutter known = shop.cutters().stream().filter(one -> one.name().equals(cutter)).findFirst()
            .orElseThrow(() -> new Refused(400, "The shop has no cutter of that name. Choose one from the list."));
        return shop.with(List.of(known));
    }

    /** Names of the shop's cutters. */
    List<String> cutters() throws IOException, BadBoardFile {
        return folder.shop().cutters().stream().map(Cutter::name).toList();
    }

    private static double positive(String typed, Units units) throws Refused {
        double length = Length.parse(typed.replace(',', '.'), units);
        if (!(length > 0 && length < 1000)) {
            throw new Refused(400, "The target must be above zero and below a metre.");
        }
        return length;
    }

    private static double notNegative(String typed, Units units) throws Refused {
        double length = Length.parse(typed.replace(',', '.'), units);
        if (!(length >= 0 && length < 100)) {
            throw new Refused(400, "The skim must be from zero to 100 mm.");
        }
        return length;
    }

    private record Priced(Optional<Board> measured, Optional<PricedBoard> board, String currency, String file,
                          String trouble) { }

    /**
     * All boards that can be priced, and what to cut them into.
     *
     * @param stack    empty if no board can be priced
     * @param plan     what to buy for the cutting bill that was named, if one was
     * @param measured the boards by their files
     * @param bills    files of the folder that are cutting bills
     * @param troubles by file, why a board is not in it
     */
    record Pile(Optional<Stack> stack, Optional<StackPlan> plan, Map<String, Board> measured, List<String> bills,
                Map<String, String> troubles) {

        /** In the units of the first board. */
        Figures figures() {
            return new Figures(measured.values().stream().findFirst().map(Board::units).orElse(Units.MILLIMETRES));
        }

        String currency() {
            return stack.map(Stack::currency).orElse("");
        }
    }

    /** Prices the boards; {@code bill} is the file of a cutting bill, or empty. */
    Pile pile(String bill) throws IOException, BadBoardFile, Refused {
        Workload.Turn turn = workload.turn();
        try (turn) {
            return piled(bill);
        }
    }

    private Pile piled(String bill) throws IOException, BadBoardFile, Refused {
        Shop shop = folder.shop();
        Rates rates = new Rates(Optional.empty(), shop.rate());
        List<Priced> priced = folder.names().parallelStream().map(name -> price(name, shop, rates)).toList();
        List<String> bills = new ArrayList<>();
        Map<String, String> troubles = new LinkedHashMap<>();
        for (Priced one : priced) {
            if (!one.trouble().isEmpty()) {
                if (holdsBill(one.file())) {
                    bills.add(one.file());
                } else {
                    troubles.put(one.file(), one.trouble());
                }
            }
        }
        List<String> currencies = priced.stream().map(Priced::currency).filter(label -> !label.isEmpty()).distinct()
            .toList();
        if (currencies.size() > 1) {
            troubles.put("", "Boards are priced in different money, which does not add up.");
        }
        Map<String, Board> measured = new LinkedHashMap<>();
        priced.forEach(one -> one.measured().ifPresent(board -> measured.put(one.file(), board)));
        List<PricedBoard> boards = priced.stream().flatMap(one -> one.board().stream()).toList();
        if (boards.isEmpty()) {
            return new Pile(Optional.empty(), Optional.empty(), measured, bills, troubles);
        }
        Stack stack = new Stack(boards, currencies.size() == 1 ? currencies.get(0) : "");
        return new Pile(Optional.of(stack), bill.isBlank() ? Optional.empty() : Optional.of(plan(bill, shop, priced)),
            measured, bills, troubles);
    }

    private StackPlan plan(String bill, Shop shop, List<Priced> priced) throws IOException, BadBoardFile, Refused {
        List<StackPlan.Candidate> candidates = priced.stream().filter(one -> one.board().isPresent()).map(one -> {
            Board board = one.measured().orElseThrow();
            return new StackPlan.Candidate(board, one.board().get(), Saw.usual(board, shop.limits()),
                JudgeOptions.usual(board, shop).skim());
        }).toList();
        CuttingBill wanted = BillFile.read(folder.file(bill), candidates.get(0).measured().units());
        try {
            return StackPlan.of(candidates, wanted, Verdict.SURE, 1);
        } catch (IllegalArgumentException e) {
            throw new Refused(422, e.getMessage());
        }
    }

    /** A cutting bill names its columns; no board file can be read as one. */
    private boolean holdsBill(String name) {
        try {
            return isBill(Files.readString(folder.file(name)));
        } catch (IOException | Refused e) {
            // What cannot be read is no bill; as a board it is said to be in trouble.
            return false;
        }
    }

    private static boolean isBill(String text) {
        try {
            return !BillFile.parse("", text, Units.MILLIMETRES).items().isEmpty();
        } catch (BadBoardFile e) {
            return false;
        }
    }

    private Priced price(String name, Shop shop, Rates rates) {
        try {
            Board board = BoardFile.read(folder.file(name), Defaults.NOTHING);
            return new Priced(Optional.of(board), Optional.of(PricedBoard.of(board, board, JudgeOptions.usual(board, shop),
                name, rates)), rates.currencyOf(board), name, "");
        } catch (BadBoardFile | ImpossibleBoard | IOException | Refused e) {
            return new Priced(Optional.empty(), Optional.empty(), "", name, named(e.getMessage()));
        }
    }
}
