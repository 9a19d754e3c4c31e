package outwind.scan.bytes;

import java.util.Arrays;
import java.util.stream.IntStream;
import outwind.board.PointCloud;
import outwind.board.text.BadBoardFile;
import outwind.board.text.FaultList;

/**
 * Points that several hands write at once. Each piece has room of its own in the arrays, for as many points as it can
 * have at most; what stays empty is closed up in the end.
 */
public final class PointPieces {

    // What an array can hold.
    private static final int MOST = Integer.MAX_VALUE - 8;

    private final double[] x;
    private final double[] y;
    private final double[] z;
    private final int[] begin;
    private final int[] count;

    /**
     * @param file how faults name the file
     * @param room for how many points each piece needs room at most
     * @throws BadBoardFile if all of them are too many for an array or for the memory
     */
    public PointPieces(String file, int[] room) throws BadBoardFile {
        begin = new int[room.length];
        count = new int[room.length];
        long sum = 0;
        for (int piece = 0; piece < room.length; piece++) {
            begin[piece] = (int) sum;
            sum += room[piece];
            if (sum > MOST) {
                throw tooMany(file, "more than " + MOST + " points");
            }
        }
        try {
            x = new double[(int) sum];
            y = new double[(int) sum];
            z = new double[(int) sum];
        } catch (OutOfMemoryError e) {
            throw tooMany(file, sum + " points");
        }
    }

    private static BadBoardFile tooMany(String file, String found) {
        return FaultList.ofScan(file).withLast("no more points than the memory holds, at 24 bytes each", found,
            "Thin out the scan, for instance to every tenth point, or give java more memory with -Xmx.");
    }

    /**
     * Writes a point, if it was measured at all.
     *
     * @return whether all three are finite, so that the place is taken
     */
    public boolean put(int place, double px, double py, double pz) {
        // Infinity and NaN times 0 are NaN.
        if (px * 0 + py * 0 + pz * 0 != 0) {
            return false;
        }
        x[place] = px;
        y[place] = py;
        z[place] = pz;
        return true;
    }

    /** Where a piece's room begins. */
    public int begin(int piece) {
        return begin[piece];
    }

    /** So many points were written to a piece, from where it begins. */
    public void filled(int piece, int points) {
        count[piece] = points;
    }

    /** How many points were written in all. */
    public long filled() {
        return IntStream.of(count).asLongStream().sum();
    }

    /** All points in the order of the pieces. */
    public PointCloud closedUp() {
        return new PointCloud(closedUp(x), closedUp(y), closedUp(z));
    }

    private double[] closedUp(double[] values) {
        int end = 0;
        for (int piece = 0; piece < begin.length; piece++) {
            if (end < begin[piece]) {
                System.arraycopy(values, begin[piece], values, end, count[piece]);
            }
            end += count[piece];
        }
        return end == values.length ? values : Arrays.copyOf(values, end);
    }
}
