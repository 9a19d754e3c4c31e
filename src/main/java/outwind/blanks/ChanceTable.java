package outwind.blanks;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import outwind.board.Defect;
import outwind.surface.Region;

/**
 * The chance of every piece at every pair of stops; zero where it would lie over a defect or falls short of what counts
 * as sure.
 *
 * <p>A block of neighbouring positions is settled at once where the rectangle around them all is sure enough for any
 * purpose, where the rectangle common to them all is not sure enough, or where the two differ by less than
 * {@link #CLOSE}; else it is halved, large blocks first. What is settled by closeness, because the positions are less
 * than a raster apart, or because {@link #MOST_BLOCKS} were looked at, takes the chance of the rectangle around: never
 * more than the true one. Chances here are quick bounds; those of the blanks that are cut are computed again, in full.
 */
final class ChanceTable {

    /** Chances closer than this make no difference to where a blank is best cut. */
    private static final double CLOSE = 0.02;

    /** Blocks looked at for one piece; only where much of a board is on the verge of a thickness do they run out. */
    private static final int MOST_BLOCKS = 200;

    private final BlankThickness wood;
    private final Stops x;
    private final Stops y;
    private final double sure;
    private final double fine;
    private final double enough;

    /** @param enough chance above which more makes no difference, {@code sure} to 1 */
    ChanceTable(BlankThickness wood, Stops x, Stops y, double sure, double enough, Saw saw) {
        this.wood = wood;
        this.x = x;
        this.y = y;
        this.sure = sure;
        this.enough = enough;
        this.fine = saw.raster();
    }

    /** Chance over the stops along and across, x.count() × y.count(). */
    float[][] of(Piece piece, double thickness, List<Defect> defects) {
        float[][] chance = new float[x.count()][y.count()];
        int along = x.roomFor(piece.along());
        int across = y.roomFor(piece.across());
        if (along > 0 && across > 0) {
            settle(chance, piece, thickness, new Block(0, along - 1, 0, across - 1));
            for (Defect defect : defects) {
                clear(chance, piece, Region.of(defect), along, across);
            }
        }
        return chance;
    }

    /** Stops from {@code i1} to {@code i2} along and from {@code j1} to {@code j2} across. */
    private record Block(int i1, int i2, int j1, int j2) { }

    private void settle(float[][] chance, Piece piece, double thickness, Block all) {
        Deque<Block> open = new ArrayDeque<>(List.of(all));
        for (int looked = 0; !open.isEmpty(); looked++) {
            Block block = open.poll();
            double apartX = x.at()[block.i2] - x.at()[block.i1];
            double apartY = y.at()[block.j2] - y.at()[block.j1];
            double around = wood.atLeast(new Region(x.at()[block.i1], y.at()[block.j1], end(x, block.i2, piece.along()),
                end(y, block.j2, piece.across())), thickness, sure);
            if (around >= enough || apartX < fine && apartY < fine || looked + open.size() >= MOST_BLOCKS) {
                fill(chance, block, around);
                continue;
            }
            if (apartX < piece.along() && apartY < piece.across()) {
                double common = wood.atMost(new Region(x.at()[block.i2], y.at()[block.j2],
                    end(x, block.i1, piece.along()), end(y, block.j1, piece.across())), thickness, sure);
                // Both are zero where even the common rectangle is not sure enough.
                if (common - around <= CLOSE) {
                    fill(chance, block, around);
                    continue;
                }
            }
            halve(open, block, apartX / piece.along() >= apartY / piece.across());
        }
    }

    private static void halve(Deque<Block> open, Block block, boolean along) {
        if (along) {
            int middle = (block.i1 + block.i2) / 2;
            open.add(new Block(block.i1, middle, block.j1, block.j2));
            open.add(new Block(middle + 1, block.i2, block.j1, block.j2));
        } else {
            int middle = (block.j1 + block.j2) / 2;
            open.add(new Block(block.i1, block.i2, block.j1, middle));
            open.add(new Block(block.i1, block.i2, middle + 1, block.j2));
        }
    }

    private static double end(Stops stops, int i, double extent) {
        return Math.min(stops.to(), stops.at()[i] + extent);
    }

    private static void fill(float[][] chance, Block block, double value) {
        for (int i = block.i1; i <= block.i2; i++) {
            for (int j = block.j1; j <= block.j2; j++) {
                chance[i][j] = (float) value;
            }
        }
    }

    private void clear(float[][] chance, Piece piece, Region defect, int along, int across) {
        for (int i = x.indexFrom(defect.x1() - piece.along()); i < along && x.at()[i] < defect.x2(); i++) {
            for (int j = y.indexFrom(defect.y1() - piece.across()); j < across && y.at()[j] < defect.y2(); j++) {
                double beginX = x.at()[i];
                double beginY = y.at()[j];
                if (new Region(beginX, beginY, beginX + piece.along(), beginY + piece.across()).overlaps(defect)) {
                    chance[i][j] = 0;
                }
            }
        }
    }
}
