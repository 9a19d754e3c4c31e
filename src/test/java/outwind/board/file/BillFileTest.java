package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import outwind.board.BillItem;
import outwind.board.CuttingBill;
import outwind.board.Units;
import outwind.board.WoodKind;
import outwind.board.text.BadBoardFile;

class BillFileTest {

    private static final String HEADER = "name,length,width,thickness,quantity\n";

    private static CuttingBill parse(String text) throws BadBoardFile {
        return BillFile.parse("t.csv", text, Units.MILLIMETRES);
    }

    @Test
    void aBillIsReadInAnyOrderOfColumns() throws BadBoardFile {
        CuttingBill bill = parse("# for the porch\nquantity,any grain,Name,thickness,width (mm),length,value\n"
            + "4,yes,leg,28,48,520,6.50\n1,,\"shelf, top\",20,120,400,12\n");

        assertEquals(List.of(
            new BillItem("leg", 520, 48, 28, 4, OptionalDouble.of(6.5), true),
            new BillItem("shelf, top", 400, 120, 20, 1, OptionalDouble.of(12), false)), bill.items());
    }

    @Test
    void aRowMayAskForAKindOfWood() throws BadBoardFile {
        CuttingBill bill = parse("name,length,width,thickness,quantity,Species,grade\n"
            + "leg,520,48,28,4,white oak,select\nrail,520,48,28,4,ash,\nslat,520,48,28,4,,\n");

        assertEquals(List.of(new WoodKind(Optional.of("white oak"), Optional.of("select")),
            new WoodKind(Optional.of("ash"), Optional.empty()), WoodKind.ANY),
            bill.items().stream().map(BillItem::kind).toList());
    }

    @Test
    void semicolonsAllowDecimalCommas() throws BadBoardFile {
        assertEquals(List.of(new BillItem("leg", 520.5, 48, 28, 4, OptionalDouble.of(6.5), false)),
            parse("\ufeffname;length;width;thickness;quantity;value\r\nleg;520,5;48;28;4;6,5\r\n").items());
    }

    @Test
    void inchesMayBeFractions() throws BadBoardFile {
        BillItem item = parse("# units: in\n" + HEADER + "leg,20 1/2,2,1 1/8,4\n").items().get(0);

        assertEquals(520.7, item.length(), 1e-9);
        assertEquals(28.575, item.thickness(), 1e-9);
    }

    @Test
    void withoutValuesABlankIsWorthItsArea() throws BadBoardFile {
        CuttingBill bill = parse(HEADER + "leg,500,40,28,4\n");

        assertEquals(20_000, bill.worth(bill.items().get(0)));
    }

    // Worked by hand: 500·40 mm² and 300·100 mm²; four at 6.5 and two at 12.
    @Test
    void aBillAddsUpWhatIsWanted() throws BadBoardFile {
        CuttingBill bill = parse("name,length,width,thickness,quantity,value\n"
            + "leg,500,40,28,4,6.5\n"
            + "top,300,100,20,2,12\n");

        assertEquals(6, bill.wanted());
        assertArrayEquals(new int[] {4, 2}, bill.quantities());
        assertArrayEquals(new double[] {20_000, 30_000}, bill.areas());
        assertArrayEquals(new double[] {6.5, 12}, bill.worths());
        assertEquals(50, bill.worth());
    }

    static Stream<Arguments> faults() {
        return Stream.of(
            Arguments.of("two faults in one row", HEADER + "leg,52O,48,28,0\n", """
                t.csv:2:5: expected length in mm but found "52O"
                  Type a number such as 1180.
                t.csv:2:15: expected quantity from 1 to 10000 but found "0"
                  Type a whole number such as 4."""),
            Arguments.of("no quantity", "name,length,width,thickness\nleg,520,48,28\n", """
                t.csv:1:28: expected a column quantity but found the end of the row
                  A cutting bill needs the columns name, length, width, thickness and quantity."""),
            Arguments.of("a column misspelt", "name,length,width,thickness,quantity,specie\nleg,520,48,28,4,ash\n", """
                t.csv:1:38: expected a column name, length, width, thickness, quantity, value, any grain, species or grade \
                but found "specie"
                  Did you mean species? Rename it or take it out."""),
            Arguments.of("one value missing", "name,length,width,thickness,quantity,value\nleg,520,48,28,4,\n", """
                t.csv:2:17: expected value above 0 but found nothing
                  Type a number such as 12.50; where one row has a value, every row needs one."""),
            Arguments.of("grain", "name,length,width,thickness,quantity,any grain\nleg,520,48,28,4,maybe\n", """
                t.csv:2:17: expected any grain yes or no but found "maybe"
                  Write yes if the grain may run across the blank as well; empty means no."""),
            Arguments.of("two of one name", HEADER + "leg,520,48,28,4\nLeg,400,48,28,1\n", """
                t.csv:3:1: expected a name of its own but found "Leg"
                  Line 2 has this name already: give each row another, or add the quantities together."""),
            Arguments.of("no name", HEADER + ",520,48,28,4\n", """
                t.csv:2:1: expected a name but found nothing
                  Write what the blank is for, such as leg."""),
            Arguments.of("a cell too many", HEADER + "leg,520,48,28,4,5\n", """
                t.csv:2:17: expected no cell beyond the columns named in line 1 but found "5"
                  Take it out or name its column; decimal commas need semicolons between the cells."""),
            Arguments.of("units unknown", "# units: ell\n" + HEADER + "leg,1,1,1,1\n", """
                t.csv:1:10: expected units mm or in but found "ell"
                  Write mm or in."""),
            Arguments.of("units of the column", "name,length (in),width,thickness,quantity\nleg,1,1,1,1\n", """
                t.csv:1:6: expected length in mm but found "length (in)"
                  Bare numbers of this file are read in mm: correct the column's name, or state the units in a line \
                "# units: in"."""),
            Arguments.of("another key", "# board: oak\n" + HEADER + "leg,520,48,28,4\n", """
                t.csv:1:3: expected a key but found "board"
                  Keys of a cutting bill are units; a remark after # must hold no colon."""),
            Arguments.of("no rows", HEADER, """
                t.csv:1:1: expected a header row and 1 to 999 rows of blanks but found 0 rows of blanks
                  Write a row "name,length,width,thickness,quantity" and below it one row for each size of blank."""),
            Arguments.of("too thick to be true", HEADER + "leg,520,48,2800,4\n", """
                t.csv:2:12: expected thickness more than 0 and at most 1000 mm but found "2800"
                  Check the number and its unit; a bare number is read in mm here."""));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faults")
    void faultsAreToldInWhole(String name, String text, String message) {
        assertEquals(message, assertThrows(BadBoardFile.class, () -> parse(text)).getMessage());
    }

    @Test
    void columnsMayBeNamedAsInSpreadsheets() throws BadBoardFile {
        assertEquals(BillFile.parse("b.csv", "name,quantity,length,width,thickness\nleg,4,700,60,45\n",
            Units.MILLIMETRES), BillFile.parse("b.csv", "Part,Qty,L,W,T\nleg,4,700,60,45\n", Units.MILLIMETRES));
        assertEquals(parse("name,quantity,length,width,thickness,species\nleg,4,700,60,45,ash\n"),
            parse("Item,Pcs,L (mm),W (mm),T (mm),Wood\nleg,4,700,60,45,ash\n"));
    }

    // "note" is two letters from "name", which is there, and so no slip of the pen.
    @Test
    void otherColumnsAreLeftAloneAndNamed() throws BadBoardFile {
        CuttingBill bill = parse("name,note,length,width,thickness,quantity,Colour,supplier code\n"
            + "leg,front,520,48,28,4,red,x-17\n");

        assertEquals(parse(HEADER + "leg,520,48,28,4\n").items(), bill.items());
        assertEquals(List.of("note", "Colour", "supplier code"), bill.ignored());
    }
}
