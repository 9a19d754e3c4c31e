package outwind.board.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.text.BadBoardFile;
import outwind.shop.BedSize;
import outwind.shop.Cutter;
import outwind.shop.SawLimits;
import outwind.shop.Shop;
import outwind.shop.Sled;
import outwind.shop.Wedge;

class ShopFileTest {

    private static Shop shop(String... lines) throws BadBoardFile {
        return ShopFile.parse("outwind-shop.txt", String.join("\n", lines));
    }

    private static String refused(String... lines) {
        return assertThrows(BadBoardFile.class, () -> shop(lines)).getMessage();
    }

    @Test
    void everyKeyIsRead() throws BadBoardFile {
        Shop shop = shop("# My shop", "# units: mm", "# bed: 1500 x 600", "# clamps: 18", "# stops: 12",
            "# shims: 2, 0.5, 1", "# tapered shim: 150 x 12", "# rate: 48.50", "# skim: 0.4", "# push: 40 N",
            "# sled: router", "# shortest: 250", "# widest: 310", "# first edge: 3", "# over length: 20", "# over width: 4",
            "cutter,diameter,deepest pass,rows,feed,last pass", "end mill,12.7,5,,2500,",
            "facing,40,0.8,24,3m,0.3");

        assertEquals(Optional.of(new BedSize(1500, 600)), shop.bed());
        assertEquals(OptionalDouble.of(18), shop.clamps());
        assertEquals(OptionalDouble.of(12), shop.stops());
        assertEquals(List.of(0.5, 1.0, 2.0), shop.shims());
        assertEquals(Optional.of(new Wedge(150, 12)), shop.wedge());
        assertEquals(Optional.of(new BigDecimal("48.50")), shop.rate());
        assertEquals(OptionalDouble.of(0.4), shop.skim());
        assertEquals(OptionalDouble.of(40), shop.push());
        assertEquals(Optional.of(Sled.ROUTER), shop.sled());
        assertEquals(new SawLimits(250, 310, 3, 20, 4), shop.limits());
        assertEquals(List.of(new Cutter("end mill", 12.7, 5, 0, 6.35, 2500, 12.7),
            new Cutter("facing", 40, 0.8, 0.3, 24, 3000, 26.35)), shop.cutters());
    }

    @Test
    void inchesAreReadAsSuch() throws BadBoardFile {
        Shop shop = shop("# units: in", "# bed: 60 x 24", "# shims: 1/64; 1/32", "# push: 10 lbf",
            "cutter;diameter;deepest pass;feed", "end mill;1/2;3/16;100");

        assertEquals(1524, shop.bed().get().length(), 1e-9);
        assertEquals(609.6, shop.bed().get().width(), 1e-9);
        assertEquals(12.7, shop.cutters().get(0).diameter(), 1e-9);
        assertEquals(2540, shop.cutters().get(0).feed(), 1e-9);
        assertEquals(44.48, shop.push().getAsDouble(), 0.01);
        assertEquals(25.4 / 64, shop.shims().get(0), 1e-9);
    }

    @Test
    void anEmptyFileStatesNothing() throws BadBoardFile {
        assertEquals(Shop.UNKNOWN, shop(""));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', value = {
        "# clamp: 18|1:3: expected a key but found \"clamp\"|Did you mean clamps?",
        "# bed: 1500|1:8: expected bed as length x width but found \"1500\"|Write two lengths with an x",
        "# bed: 1500 x wide|1:8: expected length in mm|Type a number",
        "# clamps: -2|1:11: expected thickness more than 0|Check the number",
        "# rate: much|1:9: expected price of an hour|Type a number such as 48.",
        "# push: 50 kg|1:9: expected push in N or lbf|Type a number such as 50 N or 11 lbf.",
        "# push: 0|1:9: expected push above zero|Type a number such as 50 N or 11 lbf.",
        "# sled: planner|1:9: expected sled router or planer|Write router",
        "# tapered shim: 150|1:17: expected tapered shim as length x butt|Write two lengths",
        "# shims: 1, thick|1:10: expected thickness in mm|Type a number",
        "# units: yards|1:10: expected|mm or in",
        "bit,size|1:1: expected a header row such as cutter,diameter|Above the first row",
        "cutter,size|1:8: expected a column cutter, diameter|Rename it"})
    void aFaultNamesItsPlaceAndItsCure(String line, String fault, String cure) {
        String message = refused(line);

        assertTrue(message.contains("outwind-shop.txt:" + fault), message);
        assertTrue(message.contains(cure), message);
    }

    @Test
    void cuttersThatCannotBeAreFaults() {
        String header = "cutter,diameter,deepest pass,rows,feed";

        assertTrue(refused(header, "wide,40,0.5,41,2000").contains("2:1: expected a cutter that can be"));
        assertTrue(refused(header, ",40,0.5,20,2000").contains("2:1: expected a name"));
        assertTrue(refused(header, "wide,forty,0.5,20,2000").contains("2:6: expected length in mm"));
        assertTrue(refused("cutter,diameter", "wide,40").contains("expected a column deepest pass"));
        assertTrue(refused("cutter,diameter,diameter,deepest pass,feed", "w,4,4,1,1").contains("one column diameter"));
        assertTrue(refused("# clamps: 1", "# clamps: 2").contains("Line 1 says \"1\", line 2"));
    }
}
