package outwind.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import outwind.board.file.ShopFile;
import outwind.board.file.ShopSearch;
import outwind.report.files.Reports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a shop file to begin with. */
@Command(name = "shop", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Write a shop file to begin with: bed, cutters, clamps and shims, stated once for all boards.",
    footer = {"", "A shop file is found beside the board, in the folder above it, or in your configuration folder.", "",
        "Example: outwind shop boards"})
final class ShopCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "DIR", defaultValue = ".",
        description = "Folder to write it into (default: this one).")
    private Path folder;

    @Option(names = "--mine", description = "Write it into your configuration folder, for boards in any folder.")
    private boolean mine;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Path place = mine ? ShopSearch.ofThisUser().configuration() : folder;
        try {
            if (Files.exists(place.resolve(ShopFile.NAME))) {
                spec.commandLine().getErr().println(place.resolve(ShopFile.NAME) + " is there already and stays as it"
                    + " is. Edit it, or move it out of the way first.");
                return 1;
            }
            out.println("Written: " + new Reports(place, List.of()).writeNew(ShopFile.NAME, beginning()));
            out.println("Put your own figures in. The cutters in it are examples and do not count.");
            return 0;
        } catch (IOException e) {
            spec.commandLine().getErr().println(FileTrouble.inWords(place, e));
            return 1;
        }
    }

    private static String beginning() throws IOException {
        try (InputStream in = ShopCommand.class.getResourceAsStream(ShopFile.NAME)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
