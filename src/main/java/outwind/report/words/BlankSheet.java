package outwind.report.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import outwind.blanks.Blank;
import outwind.blanks.BlankPlan;
import outwind.blanks.CutOrder;
import outwind.blanks.EqualLengths;
import outwind.blanks.Layout;
import outwind.blanks.LengthsPlan;
import outwind.blanks.Saw;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CuttingBill;
import outwind.shop.SawLimits;
import outwind.stock.StackPlan;

/**
 * What is said of a board and the blanks to be cut from it, in text and on the plan alike.
 *
 * @param board    what was measured
 * @param size     its wood and size, in a line
 * @param headline what comes out, in a few words
 * @param details  what else there is to say of that, one paragraph each
 * @param missing  what does not come out and why, one sentence each
 * @param layout   where to cut
 */
public record BlankSheet(Board board, String size, String headline, List<String> details, List<String> missing,
        Layout layout) {

    /** A share of the value below this is lost in rounding. */
    public static final double WORTH_SAYING = 0.0005;

    /** A cutting bill against a board. */
    public static BlankSheet of(BlankPlan plan, Figures figures) {
        List<String> details = new ArrayList<>();
        int cut = plan.chosen().blanks().size();
        if (cut > 0) {
            details.add("Cut " + named(plan.chosen().blanks()) + ": " + plan.chosen().order().words() + ". "
                + sure(plan.sure(), cut));
            details.add(share(plan.board(), plan.chosen()));
            details.addAll(prepared(plan.saw(), figures));
            details.add(otherOrder(plan));
            recut(plan.chosen()).ifPresent(details::add);
            gap(plan).ifPresent(details::add);
        } else {
            details.add("A blank counts only where its chance of its thickness is " + atLeast(plan.sure()) + ".");
        }
        ignored(plan.bill()).ifPresent(details::add);
        List<String> missing = missing(plan.bill(), plan.missing(), plan::cut, figures, why -> switch (why) {
            case OTHER_WOOD -> "The board is not of their wood: ";
            case OUT_OF_LIMITS -> "Too short to rip or too wide for the machine: ";
            case TOO_LARGE -> "Larger than the board: ";
            case TOO_THICK -> "Chance of their thickness too low everywhere: ";
            case NO_ROOM -> plan.saw().recuts() ? "No room beside what is cut, nor in the offcuts: "
                : "No room beside what is cut, in two stages of cuts: ";
        });
        int wanted = plan.bill().wanted();
        String headline = cut == wanted ? cut == 1 ? "The blank comes out." : "All " + cut + " blanks come out."
            : cut == 0 ? "No blank of the bill comes out."
            : Figures.count(cut, "blank comes", "blanks come") + " out of the " + wanted + " wanted.";
        return new BlankSheet(plan.board(), Sentences.size(plan.board(), figures), headline, details, missing,
            plan.chosen());
    }

    /** One board of a stack that is cut to a bill. */
    public static BlankSheet of(StackPlan.BoardCut cut, Figures figures) {
        int count = cut.layout().blanks().size();
        return new BlankSheet(cut.board(), Sentences.size(cut.board(), figures),
            Figures.count(count, "blank", "blanks") + ": " + named(cut.layout().blanks()) + "; "
                + cut.layout().order().words() + ".",
            Stream.of(Stream.of(share(cut.board(), cut.layout())), prepared(cut.saw(), figures).stream(),
                recut(cut.layout()).stream()).flatMap(sentences -> sentences).toList(),
            List.of(), cut.layout());
    }

    /** Crosscuts alone. */
    public static BlankSheet of(LengthsPlan plan, Figures figures) {
        String target = figures.length(plan.board().target().orElseThrow());
        List<String> details = new ArrayList<>();
        List<Blank> shown = plan.equal().map(EqualLengths::lengths)
            .orElse(plan.longest().stream().toList());
        plan.longest().ifPresent(blank -> details.add("The longest single length of full width that makes " + target
            + ": " + figures.length(blank.along()) + ", from x\u00a0"
            + figures.number(blank.region().x1()) + " to " + figures.length(blank.region().x2())
            + " (chance " + Figures.chance(blank.chance()) + ")."));
        plan.equal().ifPresent(equal -> {
            details.add(equal(equal, target, figures));
            details.add(sure(plan.sure(), equal.count()));
            details.addAll(prepared(plan.saw(), figures));
        });
        String headline = shown.isEmpty() ? "No length of full width makes " + target + "."
            : plan.equal().isEmpty() ? "One length of " + figures.length(shown.get(0).along()) + " makes " + target
                + "."
            : shown.size() == 1 ? "It makes " + target + " in one length of "
                + figures.length(shown.get(0).along()) + "."
            : shown.size() + " equal lengths of " + figures.length(shown.get(0).along()) + " make " + target
                + ".";
        List<String> missing = shown.isEmpty()
            ? List.of((plan.saw().limits().widest() < plan.board().width() ? "The board is wider than the machine takes."
                : "No length of " + figures.length(plan.saw().shortestLength()) + " or more has a chance of "
                    + atLeast(plan.sure()) + ".")
                + " Narrower blanks may: write a cutting bill and give it with --bill.")
            : List.of();
        return new BlankSheet(plan.board(), Sentences.size(plan.board(), figures), headline, details, missing,
            new Layout(CutOrder.CROSSCUT_FIRST, plan.saw().straightened(plan.board()), shown.stream().map(List::of).toList(),
                plan.saw().kerf(), 0));
    }

    private static String equal(EqualLengths equal, String target, Figures figures) {
        String length = figures.length(equal.length());
        String thickness = figures.length(equal.thickness());
        return equal.count() == 1
            ? "Equal lengths would gain nothing: one of " + length + " finishes at " + thickness + "."
            : "With the fewest cuts: " + equal.count() + " equal lengths of " + length + ". The thinnest finishes at "
                + thickness + "; the chance of " + target + " is " + Figures.chance(equal.chance())
                + " for the least sure of them.";
    }

    private static String atLeast(double sure) {
        return "at least\u00a0" + Figures.percent(sure);
    }

    private static String sure(double sure, int count) {
        return count == 1
            ? "Level it on its own after cutting. Its chance of its thickness is " + atLeast(sure) + "."
            : "Level each on its own after cutting. Its chance of its thickness is " + atLeast(sure)
                + ".";
    }

    /** How many of each. */
    static String named(List<Blank> blanks) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        blanks.stream().sorted((a, b) -> Integer.compare(a.item(), b.item()))
            .forEach(blank -> counts.merge(blank.name(), 1, Integer::sum));
        return counts.entrySet().stream().map(entry -> entry.getValue() + " x " + entry.getKey())
            .collect(Collectors.joining(", "));
    }

    private static String share(Board board, Layout layout) {
        double blanks = layout.blanks().stream().mapToDouble(blank -> blank.region().area()).sum();
        return "The blanks take " + Figures.percent(blanks / (board.length() * board.width()))
            + " of the board's face.";
    }

    /** What is done before the first cut, and how much larger than finished blanks are. */
    private static List<String> prepared(Saw saw, Figures figures) {
        SawLimits limits = saw.limits();
        List<String> sentences = new ArrayList<>();
        sentences.add(limits.firstEdge() > 0 ? "First straighten the near edge, " + figures.length(limits.firstEdge())
            + " off. All cuts start from there."
            : "All cuts start from a straight near edge. Nothing is allowed for straightening it.");
        if (limits.overLength() > 0 || limits.overWidth() > 0) {
            sentences.add("Blanks are cut over size: " + Stream.of(over(limits.overLength(), " longer", figures),
                over(limits.overWidth(), " wider", figures)).flatMap(Optional::stream)
                .collect(Collectors.joining(" and ")) + " than finished.");
        }
        return sentences;
    }

    /** How many blanks come out of offcuts, if any do. */
    private static Optional<String> recut(Layout layout) {
        int blanks = layout.recut().stream().mapToInt(again -> again.blanks().size()).sum();
        return blanks == 0 ? Optional.empty() : Optional.of(Figures.count(blanks, "blank comes", "blanks come") + " out of "
            + Figures.count(layout.recut().size(), "offcut", "offcuts") + ", cut again like a board.");
    }

    private static Optional<String> over(double mm, String more, Figures figures) {
        return mm > 0 ? Optional.of(figures.length(mm) + more) : Optional.empty();
    }

    /** Which columns of a bill are not read, if there are such. */
    static Optional<String> ignored(CuttingBill bill) {
        return bill.ignored().isEmpty() ? Optional.empty()
            : Optional.of("Not used of the bill: " + (bill.ignored().size() == 1 ? "column " : "columns ")
                + String.join(", ", bill.ignored()) + ".");
    }

    private static String otherOrder(BlankPlan plan) {
        Layout other = plan.other();
        String words = Character.toUpperCase(other.order().words().charAt(0)) + other.order().words().substring(1);
        double share = other.value() / plan.chosen().value();
        String brings = Figures.count(other.blanks().size(), "blank", "blanks") + " and " + Figures.percent(share)
            + " of the " + (plan.bill().hasValues() ? "value" : "area");
        return other.blanks().isEmpty() ? words + ", nothing would come out."
            : share > 0.995 && other.cutCount() == plan.chosen().cutCount() ? words + " would do as well."
            : share > 0.995 ? words + " would do as well, with " + Figures.count(other.cutCount(), "cut", "cuts")
                + " instead of " + plan.chosen().cutCount() + "."
            : open(other) < WORTH_SAYING ? words + " would bring " + brings + "."
            : words + ", the best found brings " + brings + ".";
    }

    /** Share of a layout's value that a longer search might add. */
    private static double open(Layout layout) {
        return layout.bound() / layout.value() - 1;
    }

    private static Optional<String> gap(BlankPlan plan) {
        double most = open(plan.chosen());
        return most < WORTH_SAYING ? Optional.empty()
            : plan.saw().recuts() ? Optional.of("No cuts right through, in however many stages, could bring more than "
                + Figures.decimals(100 * most, 1) + "\u00a0% more.")
            : Optional.of("So large a bill was not searched to the end: another"
            + " layout might bring up to " + Figures.decimals(100 * most, 1) + "\u00a0% more.");
    }

    /** What does not come out, one sentence for each reason. */
    static List<String> missing(CuttingBill bill, List<Optional<BlankPlan.Missing>> missing, IntUnaryOperator cut,
            Figures figures, Function<BlankPlan.Missing, String> reason) {
        List<String> sentences = new ArrayList<>();
        for (BlankPlan.Missing why : BlankPlan.Missing.values()) {
            List<String> items = IntStream.range(0, missing.size())
                .filter(i -> missing.get(i).equals(Optional.of(why)))
                .mapToObj(i -> missing(bill.items().get(i), cut.applyAsInt(i), why, figures)).toList();
            if (!items.isEmpty()) {
                sentences.add(reason.apply(why) + String.join(", ", items) + ".");
            }
        }
        return sentences;
    }

    private static String missing(BillItem item, int cut, BlankPlan.Missing why, Figures figures) {
        return (item.quantity() - cut) + " x " + item.name() + switch (why) {
            case OTHER_WOOD -> " in " + item.kind().words();
            case TOO_THICK -> " at " + figures.length(item.thickness());
            case OUT_OF_LIMITS, TOO_LARGE, NO_ROOM -> "";
        };
    }

    /** What a blank takes along and across, without a decimal that is zero. */
    public static String sides(Blank blank, Figures figures) {
        return sides(blank.along(), blank.across(), figures);
    }

    /** Two sides (mm), without a decimal that is zero. */
    static String sides(double one, double other, Figures figures) {
        return side(one, figures) + " x " + side(other, figures);
    }

    private static String side(double mm, Figures figures) {
        return figures.number(mm).replaceFirst("\\.0$", "");
    }
}
