package outwind.cli.option;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.function.Supplier;
import outwind.report.files.Reports;
import outwind.report.sheet.LabelSheet;
import outwind.report.words.Label;
import picocli.CommandLine.Option;

/** Whether labels are wanted. */
public final class LabelOptions {

    @Option(names = "--labels", description = "Draw labels to stick on boards and blanks.")
    private boolean wanted;

    /** Draws the labels, if they are wanted, on as many pages as they take. */
    public void write(PrintWriter terminal, Reports folder, String name, Supplier<List<Label>> labels) throws IOException {
        if (!wanted) {
            return;
        }
        List<Label> all = labels.get();
        for (int page = 0; page < LabelSheet.pages(all.size()); page++) {
            List<Label> here = LabelSheet.onPage(all, page);
            OutputOptions.writeChart(terminal, folder, name + (page == 0 ? "" : "-" + (page + 1)) + ".png",
                () -> LabelSheet.png(here));
        }
    }
}
