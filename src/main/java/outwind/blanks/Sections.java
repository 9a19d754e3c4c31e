package outwind.blanks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The two nested dynamic programmes of two-stage cutting: how best to part the board into sections and each section
 * into blanks, at any prices of the blanks, without regard to quantities.
 *
 * <pre>
 *   within a section of kind k:  F_k(v) = max(F_k(v + 1), max_p  worth_p·chance_kpv − price_p + F_k(behind p at v))
 *   over the board:              G(u)   = max(G(u + 1),   max_c  F_k(c,u)(0) + G(behind c at u))
 * </pre>
 * What follows from the places alone is set up once, so that many prices may be tried; nothing changes after that.
 *
 * <p>Most stops are never needed. A blank moves to the stop before its own, and loses nothing, unless it is less sure
 * there or something lies in the way; so do whole sections. Only stops count that are reached from others by a chain of
 * blanks, beginning at the first one or where some blank (or kind of section) becomes surer than a stop before. The
 * answer is the same as over all stops. Within this class and its kinds, places are numbered among those that count.
 *
 * <p>Sources: P. C. Gilmore, R. E. Gomory, Operations Research 13 (1965) 94–120; for the stops that count: J. C. Herz,
 * IBM J. Res. Dev. 16 (1972) 462–469. Authors and years from memory.
 */
public final class Sections {

    /** What an item is worth that is not to be cut, even where it costs nothing. */
    static final double NOT_CUT = -1;

    private final int[] itemOf;
    private final int classes;

    /** Stops that count, and over them for each class the kind (−1 for none) and the place behind. */
    private final int[] stops;
    private final int[][] kindAt;
    private final int[][] behind;
    private final List<Kind> kinds = new ArrayList<>();

    /**
     * A section's inside: at each place the blanks that may begin there, one after the other in three arrays.
     *
     * @param stops  of the places
     * @param begin  where each place's blanks begin in the arrays, and their end
     * @param piece  which blank
     * @param chance of its thickness, above zero
     * @param behind the place behind it
     */
    public record Kind(int[] stops, int[] begin, int[] piece, float[] chance, int[] behind) {

        public int places() {
            return stops.length;
        }
    }

    /** Value from each place to the end, and what begins there (blank's index or class), −1 for none. */
    record Chain(double[] best, int[] choice) { }

    /**
     * The best at some prices.
     *
     * @param within of each kind of section
     * @param over   of the board
     */
    record Filled(Chain[] within, Chain over) {

        /** What the board is worth at these prices; no way to cut it is worth more. */
        double value() {
            return over.best[0];
        }
    }

    /**
     * @param chance of each piece over stops along and across, zero where it must not lie
     * @param along  stops along the board
     * @param across stops across it
     */
    public Sections(List<Piece> pieces, float[][][] chance, CutOrder order, Stops along, Stops across, double kerf) {
        boolean lengthsFirst = order == CutOrder.CROSSCUT_FIRST;
        Stops second = lengthsFirst ? across : along;
        Stops first = lengthsFirst ? along : across;
        this.itemOf = pieces.stream().mapToInt(Piece::item).toArray();
        double[] extents = pieces.stream().mapToDouble(piece -> piece.first(order)).distinct().sorted().toArray();
        this.classes = extents.length;
        int[][] members = Arrays.stream(extents).mapToObj(extent -> IntStream.range(0, pieces.size())
            .filter(p -> pieces.get(p).first(order) <= extent).toArray()).toArray(int[][]::new);
        int[][] after = Arrays.stream(extents).mapToObj(extent -> behind(first, extent + kerf)).toArray(int[][]::new);
        int[][] afterWithin = pieces.stream().map(piece -> behind(second, piece.second(order) + kerf))
            .toArray(int[][]::new);

        Rows rows = new Rows(chance, lengthsFirst, first.count(), second.count());
        int[][] groups = new int[classes][];
        List<int[]> groupRows = new ArrayList<>();
        List<int[]> groupMembers = new ArrayList<>();
        for (int c = 0; c < classes; c++) {
            groups[c] = grouped(members[c], c == 0 ? new int[0] : members[c - 1], rows, groupRows, groupMembers);
        }
        this.stops = counting(first.count(), groups, groupRows, after, rows);
        int[] numberOf = numbers(stops, first.count());
        this.kindAt = new int[classes][stops.length];
        this.behind = new int[classes][stops.length];
        Map<Integer, Integer> known = new HashMap<>();
        for (int c = 0; c < classes; c++) {
            for (int i = 0; i < stops.length; i++) {
                int group = groups[c][stops[i]];
                behind[c][i] = numberOf[after[c][stops[i]]];
                kindAt[c][i] = group < 0 ? -1 : known.computeIfAbsent(group, g -> {
                    kinds.add(kind(groupMembers.get(g), groupRows.get(g), rows, afterWithin));
                    return kinds.size() - 1;
                });
            }
        }
    }

    private static int[] behind(Stops stops, double extent) {
        return Arrays.stream(stops.at()).mapToInt(at -> stops.indexFrom(at + extent)).toArray();
    }

    /** The rows of chances along the second stops, equal ones under one number; −1 for a row of zeros. */
    private static final class Rows {

        private final int[][] at;
        private final List<float[]> distinct = new ArrayList<>();

        private record Row(float[] chances) {

            @Override
            public boolean equals(Object other) {
                return other instanceof Row row && Arrays.equals(chances, row.chances);
            }

            @Override
            public int hashCode() {
                return Arrays.hashCode(chances);
            }
        }

        Rows(float[][][] chance, boolean lengthsFirst, int first, int second) {
            at = new int[chance.length][first];
            Map<Row, Integer> known = new HashMap<>();
            for (int p = 0; p < chance.length; p++) {
                for (int u = 0; u < first; u++) {
                    float[] row = new float[second];
                    float most = 0;
                    for (int v = 0; v < second; v++) {
                        row[v] = lengthsFirst ? chance[p][u][v] : chance[p][v][u];
                        most = Math.max(most, row[v]);
                    }
                    at[p][u] = most <= 0 ? -1 : known.computeIfAbsent(new Row(row), r -> {
                        distinct.add(r.chances);
                        return distinct.size() - 1;
                    });
                }
            }
        }

        boolean isAsSure(int row, int other) {
            if (row == other || other < 0) {
                return true;
            }
            if (row < 0) {
                return false;
            }
            float[] chances = distinct.get(row);
            float[] others = distinct.get(other);
            for (int v = 0; v < chances.length; v++) {
                if (chances[v] < others[v]) {
                    return false;
                }
            }
            return true;
        }
    }

    /**
     * For each stop the number of its set of rows, equal ones under one number; −1 where none of the largest members
     * goes, so that a smaller section does as well.
     */
    private static int[] grouped(int[] members, int[] smaller, Rows rows, List<int[]> groupRows,
            List<int[]> groupMembers) {
        int[] largest = Arrays.stream(members).filter(p -> Arrays.stream(smaller).noneMatch(s -> s == p)).toArray();
        Map<List<Integer>, Integer> known = new HashMap<>();
        int[] groups = new int[rows.at[0].length];
        for (int u = 0; u < groups.length; u++) {
            int stop = u;
            List<Integer> key = Arrays.stream(members).mapToObj(p -> rows.at[p][stop]).toList();
            boolean none = Arrays.stream(largest).allMatch(p -> rows.at[p][stop] < 0);
            groups[u] = none ? -1 : known.computeIfAbsent(key, k -> {
                groupRows.add(k.stream().mapToInt(Integer::intValue).toArray());
                groupMembers.add(members);
                return groupRows.size() - 1;
            });
        }
        return groups;
    }

    /** The first stops that count. */
    private static int[] counting(int count, int[][] groups, List<int[]> groupRows, int[][] after, Rows rows) {
        boolean[] counts = new boolean[count + 1];
        counts[0] = true;
        for (int u = 0; u < count; u++) {
            for (int c = 0; c < groups.length && !counts[u]; c++) {
                counts[u] = groups[c][u] >= 0 && !isAsSure(groups[c][u - 1], groups[c][u], groupRows, rows);
            }
            for (int c = 0; c < groups.length && counts[u]; c++) {
                if (groups[c][u] >= 0) {
                    counts[after[c][u]] = true;
                }
            }
        }
        return IntStream.range(0, count).filter(u -> counts[u]).toArray();
    }

    private static boolean isAsSure(int group, int other, List<int[]> groupRows, Rows rows) {
        if (group == other) {
            return true;
        }
        if (group < 0) {
            return false;
        }
        int[] some = groupRows.get(group);
        int[] others = groupRows.get(other);
        return IntStream.range(0, some.length).allMatch(m -> rows.isAsSure(some[m], others[m]));
    }

    /** The number of each stop among those that count, or of the first behind it. */
    private static int[] numbers(int[] counting, int count) {
        int[] numbers = new int[count + 1];
        int number = 0;
        for (int u = 0; u <= count; u++) {
            while (number < counting.length && counting[number] < u) {
                number++;
            }
            numbers[u] = number;
        }
        return numbers;
    }

    private static Kind kind(int[] members, int[] rowsOf, Rows rows, int[][] afterWithin) {
        int count = afterWithin[0].length;
        float[][] chances = Arrays.stream(rowsOf).mapToObj(row -> row < 0 ? new float[count] : rows.distinct.get(row))
            .toArray(float[][]::new);
        boolean[] counts = new boolean[count + 1];
        counts[0] = true;
        int blanks = 0;
        for (int v = 0; v < count; v++) {
            for (int m = 0; m < members.length && !counts[v]; m++) {
                counts[v] = chances[m][v] > chances[m][v - 1];
            }
            for (int m = 0; m < members.length && counts[v]; m++) {
                if (chances[m][v] > 0) {
                    counts[afterWithin[members[m]][v]] = true;
                    blanks++;
                }
            }
        }
        int[] stops = IntStream.range(0, count).filter(v -> counts[v]).toArray();
        int[] numberOf = numbers(stops, count);
        Kind kind = new Kind(stops, new int[stops.length + 1], new int[blanks], new float[blanks], new int[blanks]);
        int next = 0;
        for (int i = 0; i < stops.length; i++) {
            for (int m = 0; m < members.length; m++) {
                float chance = chances[m][stops[i]];
                if (chance > 0) {
                    kind.piece[next] = members[m];
                    kind.chance[next] = chance;
                    kind.behind[next] = numberOf[afterWithin[members[m]][stops[i]]];
                    next++;
                }
            }
            kind.begin[i + 1] = next;
        }
        return kind;
    }

    /**
     * The best way to cut where a blank of item i brings {@code worth[i]·chance − price[i]}; none of those that are
     * {@link #NOT_CUT}.
     */
    Filled filled(double[] worth, double[] price) {
        double[] worthOf = Arrays.stream(itemOf).mapToDouble(item -> worth[item]).toArray();
        double[] priceOf = Arrays.stream(itemOf).mapToDouble(item -> price[item]).toArray();
        Chain[] within = new Chain[kinds.size()];
        Arrays.setAll(within, k -> within(kinds.get(k), worthOf, priceOf));
        return new Filled(within, over(within));
    }

    private static Chain within(Kind kind, double[] worth, double[] price) {
        int count = kind.stops.length;
        double[] value = new double[count + 1];
        int[] choice = new int[count];
        for (int i = count - 1; i >= 0; i--) {
            double best = value[i + 1];
            int chosen = -1;
            for (int b = kind.begin[i]; b < kind.begin[i + 1]; b++) {
                int piece = kind.piece[b];
                if (worth[piece] < 0) {
                    continue;
                }
                double gained = worth[piece] * kind.chance[b] - price[piece] + value[kind.behind[b]];
                if (gained >= best) {
                    best = gained;
                    chosen = b;
                }
            }
            value[i] = best;
            choice[i] = chosen;
        }
        return new Chain(value, choice);
    }

    private Chain over(Chain[] within) {
        double[] value = new double[stops.length + 1];
        int[] choice = new int[stops.length];
        for (int i = stops.length - 1; i >= 0; i--) {
            value[i] = value[i + 1];
            choice[i] = -1;
            for (int c = 0; c < classes; c++) {
                if (kindAt[c][i] >= 0) {
                    double gained = within[kindAt[c][i]].best[0] + value[behind[c][i]];
                    if (gained >= value[i]) {
                        value[i] = gained;
                        choice[i] = c;
                    }
                }
            }
        }
        return new Chain(value, choice);
    }

    /** Most that sections before each place can gain, at the prices of {@code filled}. */
    double[] before(Filled filled) {
        double[] value = new double[stops.length + 1];
        for (int i = 0; i < stops.length; i++) {
            value[i + 1] = Math.max(value[i + 1], value[i]);
            for (int c = 0; c < classes; c++) {
                if (kindAt[c][i] >= 0) {
                    int next = behind[c][i];
                    value[next] = Math.max(value[next], value[i] + filled.within[kindAt[c][i]].best[0]);
                }
            }
        }
        return value;
    }

    /** Where the blanks of the best way lie, by section and by place in it. */
    List<TwoStage.Spot> spots(Filled filled) {
        List<TwoStage.Spot> spots = new ArrayList<>();
        for (int i = 0; i < stops.length;) {
            int c = filled.over.choice[i];
            if (c < 0) {
                i++;
                continue;
            }
            Kind kind = kinds.get(kindAt[c][i]);
            int[] choice = filled.within[kindAt[c][i]].choice;
            for (int v = 0; v < kind.places();) {
                int b = choice[v];
                if (b >= 0) {
                    spots.add(new TwoStage.Spot(kind.piece[b], stops[i], kind.stops[v], kind.chance[b]));
                }
                v = b < 0 ? v + 1 : kind.behind[b];
            }
            i = behind[c][i];
        }
        return spots;
    }

    public int item(int piece) {
        return itemOf[piece];
    }

    /** How many places there are for sections. */
    public int places() {
        return stops.length;
    }

    /** The stop of a place. */
    public int stop(int place) {
        return stops[place];
    }

    public int classes() {
        return classes;
    }

    /** The kind of a section of class {@code c} at a place; −1 where nothing goes into it. */
    public int kindAt(int c, int place) {
        return kindAt[c][place];
    }

    /** The place behind a section of class {@code c}. */
    public int behind(int c, int place) {
        return behind[c][place];
    }

    public List<Kind> kinds() {
        return kinds;
    }
}
