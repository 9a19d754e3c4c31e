package outwind.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import outwind.numeric.ReferenceTable;

class BoardFeetTest {

    private static BoardFeet inches(double thickness, double width, double length) {
        return new BoardFeet(25.4 * length, 25.4 * width, 25.4 * thickness);
    }

    // Reference: worked examples on public pages of the trade (src/test/resources/lumber).
    @Test
    void workedExamplesOfTheTradeComeOut() {
        int tallied = 0;
        for (String[] row : ReferenceTable.read("/lumber/board_foot_examples.csv").rows()) {
            BoardFeet feet = inches(Double.parseDouble(row[0]), Double.parseDouble(row[1]), Double.parseDouble(row[2]));
            double expected = Double.parseDouble(row[5]);
            String example = String.join(",", row);
            if (row[3].startsWith("NHLA")) {
                assertEquals(Double.parseDouble(row[4]), feet.surfaceMeasure(), example);
                assertEquals(expected, feet.tallied(), example);
                tallied++;
            } else {
                assertEquals(expected, feet.exact(), 1e-12, example);
            }
        }
        assertEquals(4, tallied);
    }

    // Common practice: stock under an inch counts as an inch; five quarters count as such.
    @Test
    void thinStockCountsAsAnInch() {
        assertEquals(8, inches(0.75, 12, 96).tallied());
        assertEquals(10, inches(1.25, 12, 96).tallied());
        assertEquals(8, inches(1.2, 12, 96).tallied());
    }

    @Test
    void aLengthCountsInWholeFeet() {
        assertEquals(8, inches(1, 12, 107).tallied());
    }
}
