package outwind.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.board.file.Recording;
import outwind.web.BenchServer;
import outwind.web.Browser;

/**
 * Takes the pictures of the page that the pages show, and others to look at: each screen for a board that finishes, one
 * that does not, one in inches and one with a slip, on a phone and a desktop, light and dark, in target/bench-pictures.
 *
 * <p>Run by {@code mvn -q verify -DskipTests -Dbenchmark=BenchPictures}.
 */
public final class BenchPictures {

    private static final Path TO_LOOK_AT = Path.of("target/bench-pictures");
    private static final Path PAGES = Path.of("src/site/resources/images");
    private static final Path SAMPLES = Path.of("sample-probes");
    private static final List<String> BOARDS = List.of("hall-table", "bed-rail-short", "blanket-chest-inches",
        "door-panel-misread");

    private BenchPictures() { }

    public static void main(String[] args) throws Exception {
        Files.createDirectories(TO_LOOK_AT);
        Files.createDirectories(PAGES);
        Path folder = Files.createTempDirectory("bench");
        for (String board : BOARDS) {
            Files.copy(SAMPLES.resolve(board + ".csv"), folder.resolve(board + ".csv"));
        }
        Files.writeString(folder.resolve("side-table.csv"), halfTouched());
        try (BenchServer server = BenchServer.start(folder, 0, false, () -> { }, Throwable::printStackTrace);
                Browser browser = new Browser()) {
            String opening = server.opening();
            String base = opening.substring(0, opening.indexOf("?"));
            browser.size(1280, 800, false);
            browser.open(opening);
            shoot(browser, base + "#/boards", "h1", "Boards", "boards");
            shoot(browser, base + "#/new", "h1", "Begin", "new");
            shoot(browser, base + "#/measure/side-table.csv", "main", "So far", "measure");
            for (String board : BOARDS) {
                shoot(browser, base + "#/see/" + board + ".csv", "#gain", "evelling", "see-" + board);
                shoot(browser, base + "#/cut/" + board + ".csv", "h1", "ut", "cut-" + board);
            }
            shoot(browser, base + "#/stack", "h1", "Stack", "stack");
            Files.copy(TO_LOOK_AT.resolve("measure-360.png"), PAGES.resolve("bench-measure.png"),
                StandardCopyOption.REPLACE_EXISTING);
            Files.copy(TO_LOOK_AT.resolve("see-hall-table-1280.png"), PAGES.resolve("bench-see.png"),
                StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Nine readings of fifteen, off a board with a twist of 2.4 mm (invented). */
    private static String halfTouched() throws Exception {
        Recording recording = Recording.of("side-table.csv", Recording.stating("", List.of("board: side table top",
            "units: mm", "length: 1180", "width: 212", "thickness: 31.5", "target: 26")));
        List<Place> tour = new TouchGrid(1180, 212, 5, 3, 20).tour().stream()
            .map(spot -> new Place(spot.x(), spot.y())).toList();
        recording = recording.planning(tour);
        for (Place place : tour.subList(0, 9)) {
            recording = recording.touched(place, String.valueOf(Math.rint(240 * (place.x() / 1180 - 0.5)
                * (place.y() / 212 - 0.5)) / 100));
        }
        return recording.text();
    }

    private static void shoot(Browser browser, String address, String where, String words, String name)
            throws IOException, InterruptedException {
        browser.open(address);
        browser.awaitText(where, words);
        for (boolean dark : new boolean[] {false, true}) {
            for (int[] size : new int[][] {{360, 740}, {1280, 800}}) {
                browser.size(size[0], size[1], dark);
                browser.toTop();
                browser.picture(TO_LOOK_AT.resolve(name + "-" + size[0] + (dark ? "-dark" : "") + ".png"));
            }
        }
    }
}
