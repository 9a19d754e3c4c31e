package outwind.board;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What kind of wood a board is of, or a blank is wanted in: free words, compared exactly but for case and spaces.
 *
 * @param species the wood; empty where nobody said, or where any will do
 * @param grade   what it was sorted as; empty where nobody said, or where any will do
 */
public record WoodKind(Optional<String> species, Optional<String> grade) {

    /** Of a board: nothing is known. Of a blank: any wood will do. */
    public static final WoodKind ANY = new WoodKind(Optional.empty(), Optional.empty());

    /** Whether a board of this kind may be cut into what is wanted: it must be known to be what is asked for. */
    public boolean serves(WoodKind wanted) {
        return answers(species, wanted.species) && answers(grade, wanted.grade);
    }

    private static boolean answers(Optional<String> known, Optional<String> wanted) {
        return wanted.isEmpty() || known.map(WoodKind::plain).equals(wanted.map(WoodKind::plain));
    }

    private static String plain(String words) {
        return words.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /** In words, as {@code white oak, select}; empty where nothing is known. */
    public String words() {
        return Stream.of(species, grade).flatMap(Optional::stream).collect(Collectors.joining(", "));
    }
}
