package outwind.scan.find;

import java.util.ArrayDeque;
import java.util.Deque;

/** Square tiles over points in the plane: which of the points hang together in one large piece. */
final class Tiles {

    /** More tiles than this tell nothing more of an outline. */
    private static final double MOST = 400_000;

    private final double[] x;
    private final double[] y;
    private final double left;
    private final double near;
    private final double side;
    private final int columns;
    private final int rows;

    /** @param each points that a tile should hold if they are spread evenly over the rectangle around them */
    Tiles(double[] x, double[] y, int each) {
        this.x = x;
        this.y = y;
        double right = x[0];
        double far = y[0];
        double leftmost = x[0];
        double nearest = y[0];
        for (int i = 1; i < x.length; i++) {
            leftmost = Math.min(leftmost, x[i]);
            right = Math.max(right, x[i]);
            nearest = Math.min(nearest, y[i]);
            far = Math.max(far, y[i]);
        }
        double area = Math.max((right - leftmost) * (far - nearest), Double.MIN_NORMAL);
        this.side = Math.sqrt(area / Math.max(1, Math.min(MOST, x.length / (double) each)));
        // A frame of empty tiles, so that every tile has eight neighbours.
        this.left = leftmost - side;
        this.near = nearest - side;
        this.columns = (int) ((right - left) / side) + 2;
        this.rows = (int) ((far - near) / side) + 2;
    }

    /** Points of the largest piece of tiles that touch each other, and those in tiles right beside it. */
    boolean[] inOnePiece() {
        int[] count = new int[columns * rows];
        for (int i = 0; i < x.length; i++) {
            count[tile(i)]++;
        }
        int[] piece = new int[count.length];
        int largest = 0;
        int most = 0;
        int pieces = 0;
        for (int start = 0; start < count.length; start++) {
            if (count[start] > 1 && piece[start] == 0) {
                int size = fill(count, piece, start, ++pieces);
                if (size > most) {
                    most = size;
                    largest = pieces;
                }
            }
        }
        boolean[] kept = new boolean[x.length];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = touches(piece, tile(i), largest);
        }
        return kept;
    }

    private int tile(int i) {
        return (int) ((y[i] - near) / side) * columns + (int) ((x[i] - left) / side);
    }

    /** Marks the piece that a tile belongs to; returns how many points it holds. */
    private int fill(int[] count, int[] piece, int start, int number) {
        Deque<Integer> open = new ArrayDeque<>();
        open.add(start);
        piece[start] = number;
        int points = 0;
        while (!open.isEmpty()) {
            int tile = open.poll();
            points += count[tile];
            for (int dy = -columns; dy <= columns; dy += columns) {
                for (int beside = tile + dy - 1; beside <= tile + dy + 1; beside++) {
                    if (beside >= 0 && beside < count.length && count[beside] > 1 && piece[beside] == 0) {
                        piece[beside] = number;
                        open.add(beside);
                    }
                }
            }
        }
        return points;
    }

    private boolean touches(int[] piece, int tile, int number) {
        for (int dy = -columns; dy <= columns; dy += columns) {
            for (int beside = tile + dy - 1; beside <= tile + dy + 1; beside++) {
                if (beside >= 0 && beside < piece.length && piece[beside] == number) {
                    return true;
                }
            }
        }
        return false;
    }
}
