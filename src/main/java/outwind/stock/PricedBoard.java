package outwind.stock;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import outwind.board.Board;
import outwind.board.WoodKind;
import outwind.cutting.CuttingPlan;
import outwind.cutting.Machining;
import outwind.flatten.ThicknessRange;
import outwind.flatten.Verdict;
import outwind.forecast.Forecast;
import outwind.forecast.JudgeOptions;
import outwind.surface.Faces;
import outwind.surface.Region;
import outwind.surface.SampledBoard;

/**
 * What one board is worth: what goes in, what is likely to come out, and what both cost.
 *
 * @param name           what its owner calls it
 * @param file           the file it was read from
 * @param kind           what is known of its wood
 * @param verdict        will it finish at the target
 * @param chance         of the target, levelled where that is needed (0 to 1); empty without a target
 * @param target         wanted thickness (mm)
 * @param finished       finished thickness, over the boards that its readings leave possible
 * @param feet           what it counts as, rough
 * @param roughVolume    as it is bought (mm³)
 * @param finishedVolume wood left when both faces are cut, without trim and defects (mm³)
 * @param finishedArea   of the part that must clean up, without defects (mm²)
 * @param minutes        of cutting, both faces, the quickest way; empty where no cutter is stated
 * @param wood           what is paid for it; empty without a price
 * @param cost           of the board, and of cutting it where a shop rate is known and it may make its
 *                       target; empty without a price
 */
public record PricedBoard(String name, String file, WoodKind kind, Verdict verdict, OptionalDouble chance, OptionalDouble target,
                          ThicknessRange finished, BoardFeet feet, double roughVolume,
                          double finishedVolume, double finishedArea, OptionalDouble minutes, Optional<BigDecimal> wood,
                          Optional<BigDecimal> cost) {

    /** So many keep whole percentiles as they are, and take little room for each of many boards. */
    private static final int FIGURES = 101;

    /**
     * Predicts and prices a board; what was drawn and sampled for it is let go.
     *
     * @param bought as it was measured, which is what is paid for
     * @param used   as it will be used: the same, or dried since
     */
    public static PricedBoard of(Board bought, Board used, JudgeOptions request, String file, Rates rates) {
        Forecast forecast = Forecast.of(Faces.of(used), request);
        Board board = forecast.faces().board();
        SampledBoard whole = forecast.faces().whole();
        // Wood shrinks alike in thickness and width, and hardly in length.
        double shrunk = board.width() / bought.width();
        double rough = whole.integral(i -> whole.top()[i] - whole.underside()[i]) / (shrunk * shrunk);
        BoardFeet feet = new BoardFeet(bought.length(), bought.width(),
            bought.thickness().orElse(rough / (bought.length() * bought.width())));
        double area = sound(board);
        CuttingPlan cuts = forecast.cuts();
        OptionalDouble minutes = Machining.of(cuts, whole, request.shop().cuttersInRows()).stream()
            .mapToDouble(Machining::minutes).findFirst();
        return new PricedBoard(board.name(), file, board.kind(), forecast.verdict(), forecast.chance(), board.target(),
            forecast.outlook().levelled().thinned(FIGURES), feet, rough, Math.max(0, cuts.finished()) * area / (board.length() * board.width()), area, minutes,
            rates.woodOf(bought, feet, rough), rates.costOf(bought, feet, rough,
                // Nobody flattens a board that is sure to fail.
                forecast.verdict() == Verdict.NO ? OptionalDouble.empty() : minutes));
    }

    /** Area of a face (mm²) without what is trimmed off it and without its defects, each place counted once. */
    private static double sound(Board board) {
        Region kept = new Region(board.trim().along(), board.trim().across(), board.length() - board.trim().along(),
            board.width() - board.trim().across());
        List<Region> defects = board.defects().stream().map(Region::of).toList();
        double[] x = lines(kept.x1(), kept.x2(), defects.stream().flatMap(d -> Stream.of(d.x1(), d.x2())));
        double[] y = lines(kept.y1(), kept.y2(), defects.stream().flatMap(d -> Stream.of(d.y1(), d.y2())));
        double sound = 0;
        for (int i = 1; i < x.length; i++) {
            for (int j = 1; j < y.length; j++) {
                Region cell = new Region(x[i - 1], y[j - 1], x[i], y[j]);
                sound += defects.stream().anyMatch(cell::overlaps) ? 0 : cell.area();
            }
        }
        return sound;
    }

    private static double[] lines(double from, double to, Stream<Double> between) {
        return Stream.concat(Stream.of(from, to), between.filter(line -> line > from && line < to))
            .mapToDouble(Double::doubleValue).sorted().distinct().toArray();
    }

    /** What flattening it costs; empty where nothing is known of the money. */
    public Optional<BigDecimal> labour() {
        return cost.flatMap(all -> wood.map(all::subtract));
    }

    /** The same where others have a target and this one states none: it counts for nothing. */
    PricedBoard withoutHope() {
        return new PricedBoard(name, file, kind, verdict, OptionalDouble.of(0), target, finished, feet, roughVolume,
            finishedVolume, finishedArea, minutes, wood, cost);
    }

    /** Chance that it comes out as wanted; without a target, that it can be flattened at all. */
    public double makesIt() {
        return chance.orElse(median() > 0 ? 1 : 0);
    }

    /** Finished thickness that nineteen boards in twenty like it pass (mm). */
    public double low() {
        return finished.low();
    }

    /** Finished thickness to expect (mm). */
    public double median() {
        return finished.median();
    }

    /** Finished thickness that one board in twenty like it passes (mm). */
    public double high() {
        return finished.high();
    }

    /** Share of the wood bought that ends as shavings or dries away, 0 to 1. */
    public double waste() {
        return 1 - finishedVolume / roughVolume;
    }

    /**
     * What a square millimetre of finished board costs on the whole, those that fail paid for as well; empty if its
     * verdict is no or nothing is known of its cost.
     */
    public OptionalDouble costPerFinishedArea() {
        return cost.isPresent() && verdict != Verdict.NO && makesIt() > 0 && finishedArea > 0
            ? OptionalDouble.of(cost.get().doubleValue() / (finishedArea * makesIt()))
            : OptionalDouble.empty();
    }
}
