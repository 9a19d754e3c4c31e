package outwind.report.text;

import outwind.report.words.CompareSheet;
import outwind.report.words.Page;

/** Stacks side by side, in one table. */
public final class CompareReport {

    private CompareReport() { }

    public static String of(CompareSheet sheet) {
        Page page = new Page();
        page.paragraph(sheet.verdict());
        page.gap();
        page.table("", sheet.header(), sheet.rows());
        page.gap();
        page.paragraph(sheet.explanation());
        return page.toString();
    }
}
