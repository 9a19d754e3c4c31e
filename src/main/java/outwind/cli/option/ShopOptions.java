package outwind.cli.option;

import java.io.IOException;
import java.nio.file.Path;
import outwind.board.file.ShopFile;
import outwind.board.file.ShopSearch;
import outwind.board.text.BadBoardFile;
import outwind.shop.Shop;
import picocli.CommandLine.Option;

/** Which shop file counts. */
public final class ShopOptions {

    @Option(names = "--shop", paramLabel = "FILE", description = "Shop file with bed, cutters and clamps (else "
        + ShopFile.NAME + " beside the board, in the folder above or in your configuration folder).")
    private Path file;

    /**
     * The shop that goes with a board.
     *
     * @throws IOException  if its file cannot be read
     * @throws BadBoardFile if it is no shop file
     */
    public Shop shop(Path board) throws IOException, BadBoardFile {
        return file == null ? ShopSearch.ofThisUser().shopNear(board) : ShopFile.read(file);
    }
}
