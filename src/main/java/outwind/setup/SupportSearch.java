package outwind.setup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;

/**
 * The search for the fewest shims.
 *
 * <p>Two starts: stations spaced evenly as beam theory allows, opened or closed until just enough hold; and shims at
 * the ends, then one more wherever the board moves most. Each is thinned: any shim the rest hold without goes; two make
 * way for one. Of the smaller result one shim is taken away and the others moved along, as long as they hold then. A
 * place is a node of the mesh. These moves find no smaller result, which is not a proof that none exists.
 */
final class SupportSearch {

    /** Rows of shims to try in turn, as lines of the mesh across: the edges; the middle too; the thirds instead. */
    private static final List<int[]> ROWS = List.of(
        new int[] {0, BoardMesh.ACROSS},
        new int[] {0, BoardMesh.ACROSS / 2, BoardMesh.ACROSS},
        new int[] {0, BoardMesh.ACROSS / 3, 2 * BoardMesh.ACROSS / 3, BoardMesh.ACROSS});

    /** How far in from an edge or an end a hand reaches under a board to set a shim (mm): our choice. */
    private static final double REACH = 150;

    /** Up to so many shims every pair is tried; the cost grows with the square. */
    private static final int FEW_SHIMS = 8;

    /** Fewer shims are seldom too many: our choice, for speed. */
    private static final int MANY_ENOUGH = 4;

    /** Moving shims seldom makes up for one without which the board gives so many times what it may: our choice. */
    private static final double HOPELESS = 3;

    /** How far along a shim is moved to make up for one that is taken away, in lines of the mesh. */
    private static final int[] STEPS = {-2, -1, 1, 2};

    /** Less than this gained by moving a shim is rounding, or not worth the search (mm). */
    private static final double WORTH_MOVING = 1e-4;

    private final BoardMesh mesh;
    private final HeldBoard held;
    /** Places where the bed itself is counted on. */
    private final List<Integer> counted;
    private final Set<Integer> free;

    private SupportSearch(BoardMesh mesh) {
        this.mesh = mesh;
        this.held = mesh.held();
        this.counted = mesh.countedContacts();
        this.free = new HashSet<>(mesh.contacts());
    }

    static SupportSearch over(BoardMesh mesh) {
        return new SupportSearch(mesh);
    }

    Supports best() {
        for (int[] rows : ROWS) {
            Optional<Set<Integer>> found = holding(rows);
            if (found.isPresent()) {
                return found(found.get(), true);
            }
        }
        return found(leastMovement(), false);
    }

    /** The smaller of the two thinned starts; empty if shims in these rows do not hold the board. */
    private Optional<Set<Integer>> holding(int[] rows) {
        if (!holds(places(rows))) {
            return Optional.empty();
        }
        List<Set<Integer>> starts = new ArrayList<>();
        evenStations(rows).ifPresent(starts::add);
        whereItMovesMost(rows).ifPresent(starts::add);
        return starts.stream().map(start -> thinned(start, rows))
            .min(Comparator.<Set<Integer>>comparingInt(Set::size).thenComparingDouble(this::highest))
            .map(best -> withFewer(best, rows));
    }

    /** The highest of some shims (mm). */
    private double highest(Set<Integer> shims) {
        return shims.stream().mapToDouble(node -> mesh.gap()[node]).max().orElse(0);
    }

    /** Every node in these rows where a shim can go. */
    private Set<Integer> places(int[] rows) {
        Set<Integer> places = new TreeSet<>();
        for (int j : rows) {
            for (int i = mesh.first(); i < mesh.x().length - mesh.first(); i++) {
                addShim(places, mesh.node(i, j));
            }
        }
        return places;
    }

    private void addShim(Set<Integer> shims, int node) {
        if (!free.contains(node) && isWithinReach(node)) {
            shims.add(node);
        }
    }

    private boolean isWithinReach(int node) {
        double alongIt = mesh.x()[mesh.lineAlong(node)];
        double acrossIt = mesh.y()[mesh.lineAcross(node)];
        double length = mesh.x()[mesh.x().length - 1];
        double width = mesh.y()[BoardMesh.ACROSS];
        return Math.min(Math.min(alongIt, length - alongIt), Math.min(acrossIt, width - acrossIt)) <= REACH;
    }

    private void restOn(Set<Integer> shims) {
        List<Integer> all = new ArrayList<>(counted);
        all.addAll(shims);
        held.restOn(all);
    }

    private boolean holds(Set<Integer> shims) {
        restOn(shims);
        return heldNow();
    }

    private boolean heldNow() {
        return held.greatest(mesh.push().give()) < mesh.push().give();
    }

    /** The fewest evenly spaced stations that hold, near the number that beam theory asks for. */
    private Optional<Set<Integer>> evenStations(int[] rows) {
        int most = mesh.x().length - 1 - 2 * mesh.first();
        double span = mesh.x()[mesh.first() + most] - mesh.x()[mesh.first()];
        int spans = (int) Math.max(1, Math.min(most, Math.ceil(span / mesh.limit().along())));
        if (holds(stations(rows, spans))) {
            while (spans > 1 && holds(stations(rows, spans - 1))) {
                spans--;
            }
            return Optional.of(stations(rows, spans));
        }
        for (spans++; spans <= most && (spans + 1) * rows.length <= Supports.MOST_SHIMS; spans++) {
            Set<Integer> stations = stations(rows, spans);
            if (holds(stations)) {
                return Optional.of(stations);
            }
        }
        return Optional.empty();
    }

    private Set<Integer> stations(int[] rows, int spans) {
        Set<Integer> shims = new TreeSet<>();
        for (int j : rows) {
            addEvenly(shims, j, spans);
        }
        return shims;
    }

    private void addEvenly(Set<Integer> shims, int j, int spans) {
        int steps = mesh.x().length - 1 - 2 * mesh.first();
        for (int s = 0; s <= spans; s++) {
            addShim(shims, mesh.node(mesh.first() + (int) Math.round((double) steps * s / spans), j));
        }
    }

    private Optional<Set<Integer>> whereItMovesMost(int[] rows) {
        Set<Integer> shims = stations(new int[] {0, BoardMesh.ACROSS}, 1);
        restOn(shims);
        while (!heldNow()) {
            Optional<Integer> next = nearestTo(held.weakest(), rows, shims);
            if (next.isEmpty() || shims.size() == Supports.MOST_SHIMS) {
                return Optional.empty();
            }
            shims.add(next.get());
            held.add(next.get());
        }
        return Optional.of(shims);
    }

    /** The place for a shim nearest to a node, across counted double as wood is softer that way. */
    private Optional<Integer> nearestTo(int weakest, int[] rows, Set<Integer> shims) {
        Shim at = mesh.support(weakest);
        ToDoubleFunction<Integer> distance = node -> {
            Shim there = mesh.support(node);
            return Math.hypot(there.x() - at.x(), 2 * (there.y() - at.y()));
        };
        return places(rows).stream().filter(node -> !shims.contains(node)).min(Comparator.comparingDouble(distance));
    }

    /** Of all evenly spaced stations within the limit, those on which the board moves least. */
    private Set<Integer> leastMovement() {
        Set<Integer> best = stations(ROWS.get(0), 1);
        double least = Double.POSITIVE_INFINITY;
        int most = mesh.x().length - 1 - 2 * mesh.first();
        for (int[] rows : ROWS) {
            for (int spans = 1; spans <= most && (spans + 1) * rows.length <= Supports.MOST_SHIMS; spans++) {
                Set<Integer> stations = stations(rows, spans);
                restOn(stations);
                double movement = held.greatest(least);
                if (movement < least) {
                    least = movement;
                    best = stations;
                }
            }
        }
        return best;
    }

    private Set<Integer> thinned(Set<Integer> start, int[] rows) {
        Set<Integer> shims = new TreeSet<>(start);
        do {
            dropNeedless(shims);
        } while (replaceTwoByOne(shims, rows));
        return shims;
    }

    /** Drops, one after another, the shim whose going moves the board least, as long as the rest hold. */
    private void dropNeedless(Set<Integer> shims) {
        restOn(shims);
        while (true) {
            int needless = -1;
            double least = mesh.push().give();
            for (int shim : shims) {
                if (held.movementWithout(shim) >= least) {
                    continue;
                }
                held.remove(shim);
                double movement = held.greatest(least);
                held.add(shim);
                if (movement < least) {
                    needless = shim;
                    least = movement;
                }
            }
            if (needless < 0) {
                return;
            }
            shims.remove(needless);
            held.remove(needless);
        }
    }

    /**
     * Puts one shim in the stead of two; true if one such change holds. Among few shims any two may go for one
     * anywhere; among many, two neighbours of a row for one between them, since the pairs grow too many.
     */
    private boolean replaceTwoByOne(Set<Integer> shims, int[] rows) {
        List<Integer> all = List.copyOf(shims);
        boolean few = all.size() <= FEW_SHIMS;
        Set<Integer> places = places(rows);
        restOn(shims);
        for (int k = 0; k < all.size(); k++) {
            int one = all.get(k);
            held.remove(one);
            for (int l = k + 1; l < all.size(); l++) {
                int other = all.get(l);
                boolean neighbours = areNeighbours(one, other, all);
                if (!few && !neighbours) {
                    continue;
                }
                held.remove(other);
                Optional<Integer> instead = placeThatHolds(places.stream()
                    .filter(node -> !shims.contains(node) && (few || isBetween(node, one, other))).toList());
                if (instead.isPresent()) {
                    shims.remove(one);
                    shims.remove(other);
                    shims.add(instead.get());
                    return true;
                }
                held.add(other);
            }
            held.add(one);
        }
        return false;
    }

    private Set<Integer> withFewer(Set<Integer> found, int[] rows) {
        Set<Integer> shims = found;
        while (oneFewer(shims, rows)) {
            shims = thinned(shims, rows);
        }
        return shims;
    }

    /** Takes one shim away and moves the others along until they hold without it; true if they do. */
    private boolean oneFewer(Set<Integer> shims, int[] rows) {
        if (shims.size() > FEW_SHIMS || shims.size() < MANY_ENOUGH) {
            return false;
        }
        Set<Integer> places = places(rows);
        for (int dropped : List.copyOf(shims)) {
            Set<Integer> rest = new TreeSet<>(shims);
            rest.remove(dropped);
            restOn(rest);
            double movement = held.greatest(HOPELESS * mesh.push().give());
            if (movement >= HOPELESS * mesh.push().give()) {
                continue;
            }
            for (double before = Double.POSITIVE_INFINITY; movement < before - WORTH_MOVING && !heldNow(); ) {
                before = movement;
                for (int shim : List.copyOf(rest)) {
                    movement = moved(shim, rest, places, movement);
                }
            }
            if (heldNow()) {
                shims.clear();
                shims.addAll(rest);
                return true;
            }
        }
        return false;
    }

    /** Moves a shim to the first place near it on which the board moves less; gives how far it then moves (mm). */
    private double moved(int shim, Set<Integer> shims, Set<Integer> places, double movement) {
        for (int lines : STEPS) {
            int other = shim + lines * (BoardMesh.ACROSS + 1);
            if (places.contains(other) && !shims.contains(other)) {
                held.remove(shim);
                held.add(other);
                double then = held.greatest(movement);
                if (then < movement - WORTH_MOVING) {
                    shims.remove(shim);
                    shims.add(other);
                    return then;
                }
                held.remove(other);
                held.add(shim);
            }
        }
        return movement;
    }

    /** A place at which one more shim makes the board hold, as it now lies. */
    private Optional<Integer> placeThatHolds(List<Integer> places) {
        for (int place : places) {
            if (held.movementWith(place, held.lastWeak()) >= mesh.push().give()) {
                continue;
            }
            held.add(place);
            boolean holds = heldNow();
            held.remove(place);
            if (holds) {
                return Optional.of(place);
            }
        }
        return Optional.empty();
    }

    private boolean areNeighbours(int one, int other, List<Integer> shims) {
        return mesh.lineAcross(one) == mesh.lineAcross(other)
            && shims.stream().noneMatch(node -> isBetween(node, one, other));
    }

    private boolean isBetween(int node, int one, int other) {
        return mesh.lineAcross(node) == mesh.lineAcross(one) && one < node && node < other;
    }

    private Supports found(Set<Integer> shims, boolean holds) {
        List<Integer> needed = holds ? neededContacts(shims) : counted;
        List<Integer> nodes = new ArrayList<>(needed);
        nodes.addAll(shims);
        held.restOn(nodes);
        int weakest = held.weakest();
        Shim at = mesh.support(weakest);
        boolean inside = shims.stream().map(mesh::lineAcross).anyMatch(j -> j != 0 && j != BoardMesh.ACROSS);
        return new Supports(nodes.stream().map(mesh::support).toList(), mesh.limit(), held.movement(weakest), at.x(),
            at.y(), inside, holds);
    }

    /** Contacts enough for the board to hold, so that whoever checks them with paper has few to check. */
    private List<Integer> neededContacts(Set<Integer> shims) {
        restOn(shims);
        List<Integer> needed = new ArrayList<>(counted);
        for (int contact : counted) {
            held.remove(contact);
            if (heldNow()) {
                needed.remove(Integer.valueOf(contact));
            } else {
                held.add(contact);
            }
        }
        return needed;
    }
}
