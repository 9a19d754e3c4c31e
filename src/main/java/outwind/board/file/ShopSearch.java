package outwind.board.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import outwind.board.text.BadBoardFile;
import outwind.shop.Shop;

/**
 * Where a shop file is looked for: beside the board, in the folder above it, then in the user's own configuration.
 *
 * <p>The configuration folder is that of the system: {@code $XDG_CONFIG_HOME} or {@code ~/.config} (XDG Base Directory
 * Specification), {@code %APPDATA%}, or {@code ~/Library/Application Support}.
 *
 * @param environment of the process
 * @param home        the user's home folder
 * @param system      name of the operating system
 */
public record ShopSearch(Map<String, String> environment, Path home, String system) {

    private static final String FOLDER = "outwind";

    /** Where the files of the user of this process are. */
    public static ShopSearch ofThisUser() {
        return new ShopSearch(System.getenv(), Path.of(System.getProperty("user.home", "")),
            System.getProperty("os.name", ""));
    }

    /** The shop file that goes with a board; empty if there is none. */
    public Optional<Path> near(Path board) {
        Path folder = board.toAbsolutePath().normalize();
        folder = Files.isDirectory(folder) ? folder : folder.getParent();
        return Stream.concat(Stream.of(folder, folder.getParent()).filter(Objects::nonNull), Stream.of(configuration()))
            .map(place -> place.resolve(ShopFile.NAME)).filter(Files::isRegularFile).findFirst();
    }

    /** Where a shop file for all boards of this user belongs. */
    public Path configuration() {
        if (system.startsWith("Windows") && environment.containsKey("APPDATA")) {
            return Path.of(environment.get("APPDATA"), FOLDER);
        }
        if (system.startsWith("Mac")) {
            return home.resolve(Path.of("Library", "Application Support", FOLDER));
        }
        String stated = environment.getOrDefault("XDG_CONFIG_HOME", "");
        return (stated.isEmpty() ? home.resolve(".config") : Path.of(stated)).resolve(FOLDER);
    }

    /**
     * What that file states; a shop of which nothing is known if there is none.
     *
     * @throws IOException  if it cannot be read
     * @throws BadBoardFile if it is no shop file
     */
    public Shop shopNear(Path board) throws IOException, BadBoardFile {
        Optional<Path> file = near(board);
        return file.isPresent() ? ShopFile.read(file.get()) : Shop.UNKNOWN;
    }
}
