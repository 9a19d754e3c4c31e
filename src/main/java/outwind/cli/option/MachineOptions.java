package outwind.cli.option;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import outwind.board.BadValue;
import outwind.board.Board;
import outwind.board.Length;
import outwind.board.Units;
import outwind.board.text.BadBoardFile;
import outwind.forecast.JudgeOptions;
import outwind.shop.BedSize;
import outwind.shop.Cutter;
import outwind.shop.Shop;
import outwind.shop.Sled;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The machine and its cutters: from a shop file, and what is stated on the command line instead. */
public final class MachineOptions {

    /** Diameters that differ by less are the same cutter (mm). */
    private static final double SAME_CUTTER = 0.05;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private ShopOptions shopFile;

    @Option(names = "--bed", paramLabel = "LENGTHxWIDTH", converter = BedConverter.class,
        description = "Largest board that the machine can flatten.")
    private TwoLengths bed;

    @Option(names = "--sled", paramLabel = "router|planer", converter = SledConverter.class,
        description = "The board is on a sled, under a router on rails or through a planer.")
    private Sled sled;

    @Option(names = "--cutter", paramLabel = "NAME|LENGTH",
        description = "Use this cutter of the shop file, or one of this diameter.")
    private String cutter;

    @Option(names = "--deepest-pass", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Greatest depth of one pass.")
    private LengthOption deepest;

    @Option(names = "--last-pass", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Depth of a light last pass.")
    private LengthOption last;

    @Option(names = "--rows", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Step-over from row to row (usually half the cutter).")
    private LengthOption rows;

    @Option(names = "--feed", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Feed per minute.")
    private LengthOption feed;

    @Option(names = "--overrun", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "How far the cutter's centre runs past every edge (usually its radius and a quarter inch).")
    private LengthOption overrun;

    @Option(names = "--stop-at", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Thickness to stop at, if not the target.")
    private LengthOption stopAt;

    @Option(names = "--max-lift", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Greatest lift of one corner when levelling (usually 6 mm).")
    private LengthOption mostLift;

    /**
     * The shop that goes with a board.
     *
     * @throws IOException  if its file cannot be read
     * @throws BadBoardFile if it is no shop file
     */
    public Shop shop(Path board) throws IOException, BadBoardFile {
        return shopFile.shop(board);
    }

    /** True if the command line names a cutter. */
    public boolean statesCutter() {
        return cutter != null;
    }

    /**
     * What is asked of a board.
     *
     * @param shop the board's, as {@link #shop} found it
     * @param seed of the possible boards
     */
    public JudgeOptions request(Board board, Shop shop, long seed) {
        Units own = board.units();
        try {
            JudgeOptions request = JudgeOptions.usual(board, stated(shop, own)).withSeed(seed);
            request = mostLift == null ? request : request.liftingAtMost(mostLift.in(own));
            return stopAt == null ? request : request.stoppingAt(stopAt.in(own));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private Shop stated(Shop shop, Units own) {
        Shop stated = shop.with(chosen(shop, own).stream().map(known -> asStated(known, own)).toList());
        stated = bed == null ? stated : stated.with(new BedSize(bed.first().in(own), bed.second().in(own)));
        return sled == null ? stated : stated.on(sled);
    }

    private List<Cutter> chosen(Shop shop, Units own) {
        if (cutter == null) {
            if (shop.cutters().isEmpty() && (deepest != null || last != null || rows != null || feed != null
                || overrun != null)) {
                throw new IllegalArgumentException("--deepest-pass, --last-pass, --rows, --feed and --overrun say how a"
                    + " cutter is run: name its diameter with --cutter, or write a shop file");
            }
            return shop.cutters();
        }
        List<Cutter> named = shop.cutters().stream().filter(known -> known.name().equalsIgnoreCase(cutter.strip()))
            .toList();
        return named.isEmpty() ? List.of(ofDiameter(shop, own)) : named;
    }

    private Cutter ofDiameter(Shop shop, Units own) {
        double diameter;
        try {
            diameter = Length.parse(cutter, own);
        } catch (BadValue e) {
            throw new IllegalArgumentException("--cutter " + cutter + ": " + (shop.cutters().isEmpty()
                ? "no shop file names cutters; give a diameter such as 40mm"
                : "the shop file names " + String.join(", ", shop.cutters().stream().map(Cutter::name).toList())), e);
        }
        return shop.cutters().stream().filter(known -> Math.abs(known.diameter() - diameter) < SAME_CUTTER).findFirst()
            .orElseGet(() -> {
                if (deepest == null || feed == null) {
                    throw new IllegalArgumentException("--cutter " + cutter + " goes with --deepest-pass and --feed, or"
                        + " with a shop file that names such a cutter");
                }
                return Cutter.usual("cutter of " + cutter.strip(), diameter, deepest.in(own), feed.in(own),
                    OptionalDouble.empty(), OptionalDouble.empty());
            });
    }

    /** The cutter with what is stated of it on the command line. */
    private Cutter asStated(Cutter known, Units own) {
        double pass = LengthOption.in(own, deepest).orElse(known.deepest());
        return new Cutter(known.name(), known.diameter(), pass,
            LengthOption.in(own, last).orElse(Math.min(known.lastPass(), pass)),
            LengthOption.in(own, rows).orElse(known.rows()), LengthOption.in(own, feed).orElse(known.feed()),
            LengthOption.in(own, overrun).orElse(known.overrun()));
    }
}
