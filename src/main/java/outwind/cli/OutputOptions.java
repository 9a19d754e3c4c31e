package outwind.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import java.util.function.Supplier;
import outwind.report.Reports;
import picocli.CommandLine.Option;

/** Where reports go, and which are wanted. */
final class OutputOptions {

    @Option(names = "--out", paramLabel = "DIR", defaultValue = "reports",
        description = "Folder for the reports (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(names = "--json", description = "Write a JSON file beside each report.")
    private boolean json;

    @Option(names = "--no-chart", description = "Write no chart.")
    private boolean noChart;

    /** The folder, with what was read protected from being written over. */
    Reports reports(Collection<Path> inputs) {
        Reports reports = new Reports(out, inputs);
        reports.sweep();
        return reports;
    }

    boolean charts() {
        return !noChart;
    }

    /** Prints a report, and writes it with its chart and its JSON as far as they are wanted. */
    void write(PrintWriter terminal, Reports reports, String name, String text, Supplier<byte[]> chart,
               Supplier<String> script) throws IOException {
        terminal.println(text);
        terminal.println("Written: " + reports.write(name + ".txt", text));
        if (charts()) {
            terminal.println("Written: " + reports.write(name + ".png", chart.get()));
        }
        if (json) {
            terminal.println("Written: " + reports.write(name + ".json", script.get()));
        }
    }
}
