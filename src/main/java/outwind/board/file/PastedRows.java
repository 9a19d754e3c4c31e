package outwind.board.file;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import outwind.board.Face;
import outwind.board.Reading;

/**
 * Rows that stand in a file twice because they were pasted or exported twice.
 *
 * <p>Taken for repeats they would make readings look better than they are. A place that is really read again seldom
 * reads the very same to the last digit, and nobody reads half of the places again: so repeats count as pasted where
 * they are many, and make up a good part of the distinct rows.
 */
final class PastedRows {

    /** Fewer identical rows may be honest repeats, read on a dial: our choice. */
    private static final int FEWEST = 4;
    private static final double SHARE = 0.4;

    /** What makes two rows the same. */
    private record Key(Face face, double x, double y, double z) {

        Key(Reading reading) {
            this(reading.face(), reading.x(), reading.y(), reading.z());
        }
    }

    private PastedRows() { }

    /** The readings with each pasted row once; the same list where none is pasted. */
    static List<Reading> once(List<Reading> readings, List<String> remarks) {
        Set<Key> seen = new HashSet<>();
        List<Reading> distinct = readings.stream().filter(reading -> seen.add(new Key(reading))).toList();
        int again = readings.size() - distinct.size();
        if (again < FEWEST || again < SHARE * distinct.size()) {
            return readings;
        }
        remarks.add(again + " rows stand in the file twice, to the last digit; each is counted once.");
        return distinct;
    }
}
