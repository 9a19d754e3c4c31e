package outwind.cli.option;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import java.util.function.Supplier;
import outwind.report.files.Reports;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where reports go, and which are wanted, charts among them. */
public final class OutputOptions {

    @Mixin
    private ReportOptions reports;

    @Option(names = "--no-chart", description = "Write no chart.")
    private boolean noChart;

    /** The folder, with what was read protected from being written over. */
    public Reports reports(Collection<Path> inputs) {
        return reports.reports(inputs);
    }

    public boolean charts() {
        return !noChart;
    }

    /** Prints a report, and writes it with its chart and its JSON as far as they are wanted. */
    public void write(PrintWriter terminal, Reports folder, String name, String text, Supplier<byte[]> chart,
               Supplier<String> script) throws IOException {
        reports.write(terminal, folder, name, text, script);
        if (charts()) {
            writeChart(terminal, folder, name + ".png", chart);
        }
    }

    public boolean json() {
        return reports.json();
    }

    /** Draws and writes a chart, and says where it is. */
    public static void writeChart(PrintWriter terminal, Reports folder, String name, Supplier<byte[]> chart)
            throws IOException {
        drawn(terminal, folder, name, chart).ifPresent(file -> terminal.println("Written: " + file));
    }

    /** Draws and writes a chart. A machine without fonts costs the chart, and nothing else. */
    public static Optional<Path> drawn(PrintWriter terminal, Reports folder, String name, Supplier<byte[]> chart)
            throws IOException {
        byte[] drawn;
        try {
            drawn = chart.get();
        } catch (RuntimeException | LinkageError | InternalError e) {
            terminal.println("Not written: " + name + ". No chart can be drawn here; are there fonts on this machine?");
            return Optional.empty();
        }
        return Optional.of(folder.write(name, drawn));
    }
}
