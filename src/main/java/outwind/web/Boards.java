package outwind.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
import outwind.board.Board;
import outwind.board.Length;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;
import outwind.judge.Prospect;
import outwind.report.files.RecordingFile;
import outwind.report.json.StackJson;
import outwind.report.text.StackReport;
import outwind.shop.Shop;
import outwind.stock.PricedBoard;
import outwind.stock.Rates;
import outwind.stock.Stack;
import outwind.surface.ImpossibleBoard;

/** The boards of the folder: what is asked of each, and of all together. */
final class Boards {

    private static final int REMEMBERED = 4;

    private final BoardFolder folder;
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
    private record Asked(String file, String text, String target, String skim, String without, Shop shop) { }

    Boards(BoardFolder folder) {
        this.folder = folder;
    }

    TouchDesk touching(String name) throws Refused {
        Path file = folder.file(name);
        if (!ready.getAndSet(true)) {
            // A person takes longer over the first places than this takes.
            CompletableFuture.runAsync(() -> rehearse(file));
        }
        return touching.computeIfAbsent(name, fresh -> new TouchDesk(file));
    }

    private static void rehearse(Path file) {
        try {
            Prospect.getReady(Recording.read(file).board());
        } catch (IOException | BadBoardFile | ImpossibleBoard e) {
            // Said to the person who asks for the board.
            return;
        }
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
            ObjectNode node = boards.addObject().put("file", name);
            try {
                Recording recording = Recording.read(folder.file(name));
                node.put("name", recording.board().name()).put("readings", recording.board().readings().size())
                    .put("left", recording.plan().stream().filter(planned -> planned.entry().isEmpty()).count());
            } catch (BadBoardFile | IOException | Refused e) {
                readable(name, node);
            }
        }
        return root;
    }

    private void readable(String name, ObjectNode node) {
        try {
            Board board = BoardFile.read(folder.file(name), Defaults.NOTHING);
            node.put("name", board.name()).put("readings", board.readings().size()).put("left", 0);
        } catch (BadBoardFile | IOException | Refused e) {
            node.put("name", name).put("trouble", e.getMessage());
        }
    }

    /** Begins a board file with every place planned; the answer names it. */
    synchronized ObjectNode begin(JsonNode sizes) throws IOException, BadBoardFile, Refused {
        Units units = Units.named(sizes.path("units").asText("mm"));
        List<String> statements = new ArrayList<>();
        String called = line(sizes.path("name").asText(""));
        statements.add("board: " + (called.isEmpty() ? "board" : called));
        statements.add("units: " + units.symbol());
        for (String key : List.of("length", "width", "thickness", "target")) {
            String typed = line(sizes.path(key).asText("")).replace(',', '.');
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

    private static String line(String typed) {
        String plain = typed.replaceAll("\\p{Cc}", " ").strip();
        return plain.substring(0, Math.min(80, plain.length()));
    }

    /** Takes in a board file that was dropped on the page; one of that name is never replaced. */
    synchronized ObjectNode take(String name, byte[] bytes) throws IOException, BadBoardFile, Refused {
        String text = new String(bytes, StandardCharsets.UTF_8);
        int dot = name.lastIndexOf('.');
        Path file = folder.fresh(line(dot > 0 ? name.substring(0, dot) : name));
        BoardFile.parse(file.getFileName().toString(), text, Defaults.NOTHING);
        RecordingFile.at(file).keep(text);
        return JsonNodeFactory.instance.objectNode().put("file", file.getFileName().toString());
    }

    /**
     * A board judged.
     *
     * @param target  as typed; empty for the file's own
     * @param skim    likewise
     * @param without line of a reading to leave out, or empty
     */
    Judgement judge(String name, String target, String skim, String without)
            throws IOException, BadBoardFile, Refused {
        Path file = folder.file(name);
        Asked question = new Asked(name, Recording.textOf(file), target, skim, without,
            folder.shop());
        synchronized (judged) {
            if (judged.containsKey(question)) {
                return judged.get(question);
            }
        }
        Board board = BoardFile.parse(file.toString(), question.text(), Defaults.NOTHING);
        if (!target.isBlank()) {
            board = board.withTarget(positive(target, board.units()));
        }
        if (without.matches("\\d{1,6}")) {
            board = board.without(Integer.parseInt(without));
            if (board.readings().size() < 3) {
                throw new Refused(400, "Too few readings would be left to judge the board by.");
            }
        }
        Board asked = skim.isBlank() ? board : board.withSkim(notNegative(skim, board.units()));
        Judgement judgement = Judgement.of(asked, JudgeOptions.usual(asked, question.shop()));
        synchronized (judged) {
            judged.put(question, judgement);
        }
        return judgement;
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

    private record Priced(Optional<PricedBoard> board, String currency, String file, String trouble) { }

    /** The stack of all boards that can be priced, as every script gets it, and why the others cannot. */
    ObjectNode stack() throws IOException, BadBoardFile {
        Shop shop = folder.shop();
        Rates rates = new Rates(Optional.empty(), shop.rate());
        List<Priced> priced = folder.names().parallelStream().map(name -> price(name, shop, rates)).toList();
        List<PricedBoard> boards = priced.stream().flatMap(one -> one.board().stream()).toList();
        List<String> currencies = priced.stream().map(Priced::currency).filter(label -> !label.isEmpty()).distinct()
            .toList();
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode troubles = root.putArray("troubles");
        priced.stream().filter(one -> !one.trouble().isEmpty())
            .forEach(one -> troubles.addObject().put("file", one.file()).put("trouble", one.trouble()));
        if (currencies.size() > 1) {
            troubles.addObject().put("file", "").put("trouble", "Boards are priced in different money, which does not"
                + " add up.");
        }
        if (!boards.isEmpty()) {
            Stack stack = new Stack(boards, currencies.size() == 1 ? currencies.get(0) : "");
            root.put("stack", StackJson.of(stack, Optional.empty())).put("csv", StackReport.csv(stack));
        }
        return root;
    }

    private Priced price(String name, Shop shop, Rates rates) {
        try {
            Board board = BoardFile.read(folder.file(name), Defaults.NOTHING);
            return new Priced(Optional.of(PricedBoard.of(board, board, JudgeOptions.usual(board, shop), name, rates)),
                rates.currencyOf(board), name, "");
        } catch (BadBoardFile | ImpossibleBoard | IOException | Refused e) {
            return new Priced(Optional.empty(), "", name, e.getMessage());
        }
    }
}
