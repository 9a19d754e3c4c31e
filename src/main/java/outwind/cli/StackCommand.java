package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.board.Price;
import outwind.board.Units;
import outwind.board.file.BillFile;
import outwind.board.file.ShopFile;
import outwind.board.text.BadBoardFile;
import outwind.cli.option.AreaConverter;
import outwind.cli.option.BadInput;
import outwind.cli.option.BoardOptions;
import outwind.cli.option.LabelOptions;
import outwind.cli.option.MachineOptions;
import outwind.cli.option.MoneyConverter;
import outwind.cli.option.OutputOptions;
import outwind.cli.option.PackOptions;
import outwind.cli.option.PriceConverter;
import outwind.cli.option.SawOptions;
import outwind.cli.terminal.ProgressBar;
import outwind.forecast.JudgeOptions;
import outwind.report.files.Reports;
import outwind.report.json.CompareJson;
import outwind.report.json.StackJson;
import outwind.report.sheet.BuyChart;
import outwind.report.sheet.CompareChart;
import outwind.report.sheet.StackChart;
import outwind.report.sheet.UsesChart;
import outwind.report.text.BlankReport;
import outwind.report.text.BuyList;
import outwind.report.text.CompareReport;
import outwind.report.text.CutList;
import outwind.report.text.StackReport;
import outwind.report.words.CompareSheet;
import outwind.report.words.Figures;
import outwind.report.words.Label;
import outwind.report.words.PackSheet;
import outwind.scan.bytes.Progress;
import outwind.scan.file.ScanFile;
import outwind.scan.find.AnyBoardFile;
import outwind.shop.Shop;
import outwind.stock.Offered;
import outwind.stock.Pack;
import outwind.stock.PricedBoard;
import outwind.stock.Purchase;
import outwind.stock.Rates;
import outwind.stock.Stack;
import outwind.stock.StackPlan;
import outwind.stock.Uses;
import outwind.stock.Wanted;
import outwind.surface.ImpossibleBoard;
import outwind.surface.Unevenness;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Many boards at once: what the stack is worth, and which boards to buy. */
@Command(name = "stack", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Price a stack of boards: how many make the target, what is wasted, and which to buy.",
    footer = {"", "Example: outwind stack --target 20mm --shop-rate 48 --want 3m2 boards/"})
final class StackCommand implements Callable<Integer> {

    private static final List<String> BOARD_FILES = List.of(".csv", ".tsv", ".txt", ".xyz", ".ply");

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE|DIR", description = "Board files or scans, or folders of them.")
    private List<Path> paths;

    @Mixin
    private BoardOptions options;

    @Mixin
    private MachineOptions machine;

    @Mixin
    private OutputOptions output;

    @Mixin
    private LabelOptions labels;

    @Option(names = "--price", paramLabel = "PRICE", converter = PriceConverter.class,
        description = "Price of boards whose file states none: \"9.50 per bf\", \"1400 EUR per m3\", \"38 per board\".")
    private Price price;

    @Option(names = "--shop-rate", paramLabel = "AMOUNT", converter = MoneyConverter.class,
        description = "What an hour of cutting costs.")
    private BigDecimal shopRate;

    @Option(names = "--want", paramLabel = "AREA", converter = AreaConverter.class,
        description = "Finished area wanted, as 3m2 or 30ft2: how many boards to buy for it.")
    private Double wanted;

    @Option(names = "--bill", paramLabel = "BILL",
        description = "Cutting bill: which boards to buy and how to cut them at the least cost.")
    private Path bill;

    @Option(names = "--compare", description = "Set the folders side by side, each a stack of its own.")
    private boolean compare;

    @Mixin
    private PackOptions pack;

    @Mixin
    private SawOptions saw;

    /** All boards, the shop, and what an hour of flattening costs. */
    private record Offer(List<Outcome> outcomes, Shop shop, Optional<BigDecimal> rate, Optional<Unevenness> unevenness) { }

    /** A board priced, or why it could not be. */
    private record Outcome(Optional<PricedBoard> priced, Optional<Board> board, String currency, String trouble) { }

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        if (bill == null && saw.isGiven()) {
            throw new ParameterException(spec.commandLine(), "--min-chance and the options of the saw, as --kerf, go"
                + " with --bill");
        }
        pack.fault(options.targets(Units.MILLIMETRES).size()).ifPresent(fault -> {
            throw new ParameterException(spec.commandLine(), fault);
        });
        if (compare && (bill != null || wanted != null || pack.isGiven() || options.targets(Units.MILLIMETRES).size() > 1
                || paths.size() < 2 || !paths.stream().allMatch(Files::isDirectory))) {
            throw new ParameterException(spec.commandLine(), "--compare takes two or more folders; --bill, --want, --pack and"
                + " several targets are for one stack");
        }
        List<Path> files;
        try {
            files = boardFiles();
        } catch (IOException e) {
            err.println(FileTrouble.inWords(e));
            return 1;
        }
        Optional<Offer> found = offer(files);
        if (found.isEmpty()) {
            return 1;
        }
        List<Outcome> outcomes = found.get().outcomes();
        outcomes.stream().map(Outcome::trouble).filter(trouble -> !trouble.isEmpty()).forEach(err::println);
        List<PricedBoard> priced = outcomes.stream().flatMap(outcome -> outcome.priced().stream()).toList();
        outcomes.stream().filter(outcome -> outcome.board().filter(board -> board.width() > board.length()).isPresent())
            .forEach(outcome -> err.println(outcome.priced().orElseThrow().file() + ": the width is more than the"
                + " length, and the grain runs along the length. Swap them if the board says so."));
        long bad = outcomes.size() - priced.size();
        if (priced.isEmpty()) {
            err.println("no board could be priced");
            return 1;
        }
        Set<String> currencies = new TreeSet<>(Stream.concat(outcomes.stream().map(Outcome::currency),
            pack.currencies().stream()).filter(currency -> !currency.isEmpty()).toList());
        if (currencies.size() > 1) {
            err.println("boards are priced in different money, which does not add up: " + String.join(", ",
                currencies));
            return 1;
        }
        long unlabelled = outcomes.stream().filter(outcome -> outcome.priced().isPresent()
            && outcome.priced().get().cost().isPresent() && outcome.currency().isEmpty()).count();
        if (!currencies.isEmpty() && unlabelled > 0) {
            err.println(Figures.count((int) unlabelled, "price", "prices") + " without a label taken as "
                + currencies.iterator().next());
        }
        if (options.hasBareTarget() && outcomes.stream().flatMap(outcome -> outcome.board().stream())
                .map(Board::units).distinct().count() > 1) {
            err.println("some boards are in mm and some in inches: give --target a unit, as 20mm");
            return 1;
        }
        Units units = outcomes.stream().flatMap(outcome -> outcome.board().stream()).map(options::unitsFor).findFirst()
            .orElseThrow();
        String currency = currencies.stream().findFirst().orElse("");
        boolean written = compare ? compare(new CompareSheet(stacks(priced, currency), currency, new Figures(units)), files)
            : write(new Stack(priced, currency, found.get().unevenness()), new Figures(units), files, found.get());
        if (bad > 0) {
            err.println(Figures.count((int) bad, "board was", "boards were") + " left out of the stack");
        }
        return written && bad == 0 ? 0 : 1;
    }

    /** The boards of each folder. */
    private List<Offered> stacks(List<PricedBoard> priced, String currency) {
        boolean distinct = paths.stream().map(StackCommand::lastName).distinct().count() == paths.size();
        return paths.stream().map(path -> new Offered(distinct ? lastName(path) : path.toString(), new Stack(priced
            .stream().filter(board -> path.equals(Path.of(board.file()).getParent())).toList(), currency)))
            .filter(one -> !one.stack().boards().isEmpty()).toList();
    }

    private static String lastName(Path folder) {
        return folder.toAbsolutePath().normalize().getFileName().toString();
    }

    private boolean compare(CompareSheet sheet, List<Path> boards) {
        Reports reports = output.reports(boards);
        try {
            output.write(spec.commandLine().getOut(), reports, "compare", CompareReport.of(sheet), () -> CompareChart.png(sheet),
                () -> CompareJson.of(sheet));
            return true;
        } catch (IOException e) {
            spec.commandLine().getErr().println(FileTrouble.inWords(e));
            return false;
        }
    }

    private boolean write(Stack stack, Figures figures, List<Path> boards, Offer offer) {
        PrintWriter terminal = spec.commandLine().getOut();
        Reports reports = output.reports(bill == null ? boards
            : Stream.concat(boards.stream(), Stream.of(bill)).toList());
        try {
            Optional<Wanted> area = Optional.ofNullable(wanted).map(known -> Wanted.of(stack, known));
            Optional<Pack> whole = asked(() -> pack.pack(stack.boards(), offer.rate(), options.seed()));
            Optional<Uses> uses = asked(() -> pack.uses(stack, options.targets(offer.outcomes().stream()
                .flatMap(outcome -> outcome.board().stream()).map(Board::units).findFirst().orElse(figures.units()))));
            Optional<StackPlan> plan = plan(offer, figures.units());
            output.write(terminal, reports, "stack", StackReport.of(stack, figures, area, plan, uses,
                whole.map(known -> PackSheet.of(known, stack.currency(), figures)), options.drying()),
                () -> StackChart.png(stack, figures), () -> StackJson.of(stack, area, plan, whole, uses));
            terminal.println("Written: " + reports.write("stack.csv", StackReport.csv(stack, uses)));
            if (uses.isPresent() && output.charts()) {
                OutputOptions.writeChart(terminal, reports, "stack-uses.png", () -> UsesChart.png(uses.get(), figures));
            }
            Optional<Purchase> bought = area.flatMap(Wanted::bought);
            if (bought.isPresent()) {
                terminal.println("Written: " + reports.write("stack-buy.csv", BuyList.of(stack, bought.get(), figures)));
            }
            labels.write(terminal, reports, "stack-labels", () -> Label.of(stack, figures));
            if (plan.isPresent()) {
                writeCuts(terminal, reports, plan.get(), stack, figures);
            }
            return true;
        } catch (BadBoardFile e) {
            spec.commandLine().getErr().println(e.getMessage());
            return false;
        } catch (IOException e) {
            spec.commandLine().getErr().println(FileTrouble.inWords(e));
            return false;
        }
    }

    private void writeCuts(PrintWriter terminal, Reports reports, StackPlan plan, Stack stack, Figures figures)
            throws IOException {
        String currency = stack.currency();
        terminal.println("Written: " + reports.write("stack-cuts.txt", BlankReport.of(plan, currency, figures)));
        terminal.println("Written: " + reports.write("stack-cuts.csv", CutList.of(plan, currency, figures)));
        terminal.println("Written: " + reports.write("stack-cuts-buy.csv", BuyList.of(stack, plan, figures)));
        labels.write(terminal, reports, "stack-cuts-labels", () -> Label.of(plan, figures));
        if (output.charts()) {
            OutputOptions.writeChart(terminal, reports, "stack-cuts.png", () -> BuyChart.png(plan, currency, figures));
        }
    }

    /** Which boards to cut into what; what the command line asks for in vain is refused. */
    private Optional<StackPlan> plan(Offer offer, Units units) throws IOException, BadBoardFile {
        if (bill == null) {
            return Optional.empty();
        }
        CuttingBill wantedBlanks = BillFile.read(bill, units);
        return asked(() -> {
            List<StackPlan.Candidate> candidates = offer.outcomes().stream().filter(outcome -> outcome.board().isPresent())
                .map(outcome -> {
                    Board board = outcome.board().get();
                    return new StackPlan.Candidate(board, outcome.priced().orElseThrow(), saw.saw(board, offer.shop().limits()),
                        JudgeOptions.usual(board, offer.shop()).skim());
                }).toList();
            return Optional.of(StackPlan.of(candidates, wantedBlanks, saw.sure(), options.seed()));
        });
    }

    /** An answer; what the command line asks for in vain is refused. */
    private <T> T asked(Supplier<T> answer) {
        try {
            return answer.get();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    /** Every file once, however often and by whatever path it was named. */
    private List<Path> boardFiles() throws IOException {
        Map<Path, Path> files = new LinkedHashMap<>();
        for (Path path : paths) {
            List<Path> named = Files.isDirectory(path) ? boardFilesIn(path) : List.of(path);
            for (Path file : named) {
                files.putIfAbsent(Files.exists(file) ? file.toRealPath() : file, file);
            }
        }
        return List.copyOf(files.values());
    }

    private List<Path> boardFilesIn(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            List<Path> files = new ArrayList<>(inside.filter(StackCommand::isBoardFile).sorted().toList());
            List<Path> reports = OwnReports.among(files);
            files.removeAll(reports);
            if (!reports.isEmpty()) {
                spec.commandLine().getErr().println("Left out as reports, not boards: " + reports.stream()
                    .map(report -> report.getFileName().toString()).collect(Collectors.joining(", ")));
            }
            if (files.isEmpty()) {
                throw new FileSystemException(folder.toString(), null, "no board file (" + String.join(" ",
                    BOARD_FILES) + ") in this folder");
            }
            return files;
        }
    }

    private static boolean isBoardFile(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return Files.isRegularFile(file) && BOARD_FILES.stream().anyMatch(name::endsWith)
            && !name.equals(ShopFile.NAME) && !ScanFile.isBeside(file);
    }

    /** Every board priced in the shop that goes with the first; empty if its file is at fault. */
    private Optional<Offer> offer(List<Path> files) {
        PrintWriter err = spec.commandLine().getErr();
        try {
            Shop shop = machine.shop(files.get(0));
            if (shopRate != null && shop.cutters().isEmpty() && !machine.statesCutter()) {
                throw new ParameterException(spec.commandLine(), "--shop-rate needs the time on the machine: name your"
                    + " cutters in a shop file (outwind shop writes one), or state --cutter, --deepest-pass and --feed");
            }
            return Optional.of(price(files, shop));
        } catch (BadBoardFile e) {
            err.println(e.getMessage());
        } catch (IOException e) {
            err.println(FileTrouble.inWords(e));
        }
        return Optional.empty();
    }

    /** Every board on whichever core is free; the order of the files is kept. */
    private Offer price(List<Path> files, Shop shop) {
        Rates rates = new Rates(Optional.ofNullable(price), Optional.ofNullable(shopRate).or(shop::rate));
        AtomicInteger done = new AtomicInteger();
        ProgressBar bar = new ProgressBar(spec.commandLine().getOut(), "judging");
        Optional<Unevenness> unevenness = unevenness(files);
        List<Outcome> outcomes = files.parallelStream().map(file -> {
            Outcome outcome = price(file, shop, rates, unevenness);
            bar.at(done.incrementAndGet(), files.size());
            return outcome;
        }).toList();
        bar.done();
        return new Offer(outcomes, shop, rates.shopRate(), unevenness);
    }

    /** Learnt from every board that is touched by hand, before any is judged. Files at fault are left to {@link #price}. */
    private Optional<Unevenness> unevenness(List<Path> files) {
        if (compare) {
            return Optional.empty();
        }
        return Unevenness.of(files.parallelStream().filter(file -> !ScanFile.isScan(file)).flatMap(file -> {
            try {
                return Stream.of(AnyBoardFile.read(file, options.given(), Progress.UNSEEN));
            } catch (BadBoardFile | IOException e) {
                return Stream.empty();
            }
        }).toList());
    }

    private Outcome price(Path file, Shop shop, Rates rates, Optional<Unevenness> unevenness) {
        try {
            Board read = AnyBoardFile.read(file, options.given(), Progress.UNSEEN);
            Board bought = unevenness.map(known -> known.appliedTo(read)).orElse(read);
            Board board = options.forFirstTarget(bought);
            return new Outcome(Optional.of(PricedBoard.of(bought, board, machine.request(board, shop, options.seed()),
                file.toString(), rates)),
                Optional.of(board), rates.currencyOf(board), "");
        } catch (BadBoardFile e) {
            return new Outcome(Optional.empty(), Optional.empty(), "", e.getMessage());
        } catch (ImpossibleBoard | BadInput e) {
            return new Outcome(Optional.empty(), Optional.empty(), "", file + ": " + e.getMessage());
        } catch (IOException e) {
            return new Outcome(Optional.empty(), Optional.empty(), "", FileTrouble.inWords(file, e));
        }
    }
}
