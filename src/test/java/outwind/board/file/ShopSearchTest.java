package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.board.text.BadBoardFile;
import outwind.shop.Shop;

class ShopSearchTest {

    @TempDir
    private Path home;

    private ShopSearch search(String system, Map<String, String> environment) {
        return new ShopSearch(environment, home, system);
    }

    // The folder is that of each system; on Linux that of the XDG Base Directory Specification.
    @Test
    void theConfigurationFolderIsThatOfTheSystem() {
        assertEquals(home.resolve(".config/outwind"), search("Linux", Map.of()).configuration());
        assertEquals(Path.of("/else/outwind"), search("Linux", Map.of("XDG_CONFIG_HOME", "/else")).configuration());
        assertEquals(home.resolve("Library/Application Support/outwind"), search("Mac OS X", Map.of()).configuration());
        assertEquals(Path.of("/roaming/outwind"), search("Windows 11", Map.of("APPDATA", "/roaming")).configuration());
    }

    @Test
    void theNearestFileCounts() throws IOException, BadBoardFile {
        Path boards = Files.createDirectories(home.resolve("work/boards"));
        Path board = boards.resolve("board.csv");
        ShopSearch search = search("Linux", Map.of());
        assertEquals(Optional.empty(), search.near(board));
        assertEquals(Shop.UNKNOWN, search.shopNear(board));

        Path own = Files.createDirectories(search.configuration()).resolve(ShopFile.NAME);
        Files.writeString(own, "# clamps: 1");
        assertEquals(Optional.of(own), search.near(board));

        Path above = Files.writeString(home.resolve("work").resolve(ShopFile.NAME), "# clamps: 2");
        assertEquals(Optional.of(above), search.near(board));
        assertEquals(Optional.of(above), search.near(boards));

        Files.writeString(boards.resolve(ShopFile.NAME), "# clamps: 3");
        assertEquals(3, search.shopNear(board).clamps().getAsDouble());
    }
}
