package outwind.cli.option;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import java.util.function.Supplier;
import outwind.report.files.Reports;
import picocli.CommandLine.Option;

/** Where reports go, and whether scripts get one too. */
public final class ReportOptions {

    @Option(names = "--out", paramLabel = "DIR", defaultValue = "reports",
        description = "Folder for the reports (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(names = "--json", description = "Write a JSON file beside each report.")
    private boolean json;

    boolean json() {
        return json;
    }

    /** The folder, with what was read protected from being written over. */
    public Reports reports(Collection<Path> inputs) {
        Reports reports = new Reports(out, inputs);
        reports.sweep();
        return reports;
    }

    /** Prints a report and writes it, with its JSON if that is wanted. */
    public void write(PrintWriter terminal, Reports reports, String name, String text, Supplier<String> script)
            throws IOException {
        terminal.println(text);
        terminal.println("Written: " + reports.write(name + ".txt", text));
        if (json) {
            terminal.println("Written: " + reports.write(name + ".json", script.get()));
        }
    }
}
