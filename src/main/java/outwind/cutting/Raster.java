package outwind.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import outwind.shop.Cutter;
import outwind.surface.SampledBoard;

/**
 * Rows along the grain, one beside the other: where they have to go, and the time they take.
 *
 * <pre>
 *   rows = ⌈(width + 2·overrun) / distance⌉ + 1, evenly spaced from −overrun to width + overrun
 *   way  = rows · (length + 2·overrun) + (width + 2·overrun),   minutes = way / feed
 * </pre>
 * A layer that meets only part of the board is cut in the rectangles that hold wood: the box round all of it, split in
 * two as often as that saves a tenth of the time. A split is tried between every two lines of the sampled board.
 *
 * @param cutter in use
 * @param whole  the board sampled all over
 * @param board  all of it as one rectangle
 */
record Raster(Cutter cutter, SampledBoard whole, Area board) {

    /** A split that saves less than this share of the time is more trouble than it is worth: our choice. */
    private static final double WORTH = 0.1;

    /** More rectangles than this in one layer nobody sets up: our choice. */
    private static final int MOST = 4;

    static Raster over(SampledBoard whole, Cutter cutter) {
        return new Raster(cutter, whole, new Area(0, Arrays.stream(whole.x()).max().orElseThrow(), 0,
            Arrays.stream(whole.y()).max().orElseThrow()));
    }

    /** Minutes to cut one rectangle. */
    double minutes(Area area) {
        double across = area.width() + 2 * cutter.overrun();
        int rows = (int) Math.ceil(across / cutter.rows() - 1e-9) + 1;
        return (rows * (area.length() + 2 * cutter.overrun()) + across) / cutter.feed();
    }

    /** Minutes to cut several rectangles, the ways between them not counted. */
    double minutes(List<Area> areas) {
        return areas.stream().mapToDouble(this::minutes).sum();
    }

    /**
     * The rectangles in which a layer has wood; the whole board where less would save too little, none where there is
     * no wood.
     *
     * @param isWood true at the places where wood stands above the layer's floor
     */
    List<Area> areas(IntPredicate isWood) {
        int[] wood = IntStream.range(0, whole.size()).filter(isWood).toArray();
        if (wood.length == 0) {
            return List.of();
        }
        List<Area> areas = new ArrayList<>();
        split(wood, MOST, areas);
        return minutes(areas) <= (1 - WORTH) * minutes(board) ? areas : List.of(board);
    }

    /** Adds the box round this wood, or the boxes that it is better split into. */
    private void split(int[] wood, int most, List<Area> areas) {
        Area all = box(wood);
        double least = (1 - WORTH) * minutes(all);
        int[] first = null;
        int[] second = null;
        for (int direction = 0; direction < 2 && most > 1; direction++) {
            double[] at = direction == 0 ? whole.x() : whole.y();
            double[] lines = IntStream.of(wood).mapToDouble(i -> at[i]).distinct().sorted().toArray();
            for (int k = 1; k < lines.length; k++) {
                double line = lines[k];
                int[] before = IntStream.of(wood).filter(i -> at[i] < line).toArray();
                int[] after = IntStream.of(wood).filter(i -> at[i] >= line).toArray();
                double minutes = minutes(box(before)) + minutes(box(after));
                if (minutes < least) {
                    least = minutes;
                    first = before;
                    second = after;
                }
            }
        }
        if (first == null) {
            areas.add(all);
            return;
        }
        split(first, most / 2, areas);
        split(second, most / 2, areas);
    }

    /** Between two sampled places wood may reach a cell further than it was seen. */
    private Area box(int[] wood) {
        double cellX = whole.places().cellX();
        double cellY = whole.places().cellY();
        return new Area(
            Math.max(0, IntStream.of(wood).mapToDouble(i -> whole.x()[i]).min().orElseThrow() - cellX),
            Math.min(board.x2(), IntStream.of(wood).mapToDouble(i -> whole.x()[i]).max().orElseThrow() + cellX),
            Math.max(0, IntStream.of(wood).mapToDouble(i -> whole.y()[i]).min().orElseThrow() - cellY),
            Math.min(board.y2(), IntStream.of(wood).mapToDouble(i -> whole.y()[i]).max().orElseThrow() + cellY));
    }
}
