package outwind.fuzz;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.Length;
import outwind.board.Price;
import outwind.board.PriceUnit;
import outwind.board.Reading;
import outwind.board.Trim;
import outwind.board.Turned;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.shop.Cutter;
import outwind.shop.Shop;

/**
 * What was read, written down in the plainest form that its page allows, every length with all its digits and in mm: read
 * again it must be the same.
 */
final class WrittenAgain {

    private WrittenAgain() { }

    /** Neither remarks nor numbers of lines are written. */
    static String of(Board board) {
        List<String> lines = new ArrayList<>(List.of("# board: " + board.name(),
            "# units: " + (board.units() == Units.INCHES ? "in" : "mm"), "# length: " + mm(board.length()),
            "# width: " + mm(board.width()), "# trim: " + trim(board.trim()),
            "# underside: " + (board.underside() == Underside.FLAT ? "flat" : "alike")));
        key("thickness", board.thickness(), board.evenThickness() ? " everywhere" : "", lines);
        key("repeatability", board.repeatability(), "", lines);
        key("target", board.target(), "", lines);
        key("skim", board.skim(), "", lines);
        board.species().ifPresent(wood -> lines.add("# species: " + wood));
        board.grade().ifPresent(sorted -> lines.add("# grade: " + sorted));
        board.price().ifPresent(price -> lines.add("# price: " + of(price)));
        board.turned().ifPresent(way -> lines.add("# turned: " + (way == Turned.ALONG ? "along" : "end over end")));
        for (Defect defect : board.defects()) {
            lines.add("# defect: " + Stream.of(defect.x1(), defect.y1(), defect.x2(), defect.y2())
                .map(WrittenAgain::mm).collect(Collectors.joining("; ")));
        }
        lines.add("x,y,z,thickness,face,note");
        for (Reading reading : board.readings()) {
            String face = reading.face() == Face.BED ? "bed" : reading.face().name();
            lines.add(String.join(",", mm(reading.x()), mm(reading.y()), mm(reading.z()), "", face, quoted(reading.note())));
        }
        for (CaliperReading caliper : board.calipers()) {
            lines.add(String.join(",", mm(caliper.x()), mm(caliper.y()), "", mm(caliper.thickness()), "", ""));
        }
        return String.join("\n", lines);
    }

    /** A price with its unit. */
    static String of(Price price) {
        String unit = switch (price.per()) {
            case BOARD_FOOT -> "bf";
            case CUBIC_METRE -> "m3";
            case CUBIC_FOOT -> "ft3";
            case SQUARE_METRE -> "m2";
            case SQUARE_FOOT -> "ft2";
            case BOARD -> "board";
        };
        return price.amount().toPlainString() + " " + price.currency() + " per " + unit;
    }

    /** A bill; columns that were left alone are not written. */
    static String of(CuttingBill bill) {
        String columns = "name,length,width,thickness,quantity,any grain,species,grade";
        List<String> lines = new ArrayList<>(List.of("# units: mm", columns + (bill.hasValues() ? ",value" : "")));
        for (BillItem item : bill.items()) {
            lines.add(String.join(",", quoted(item.name()), mm(item.length()), mm(item.width()), mm(item.thickness()),
                String.valueOf(item.quantity()), item.anyGrain() ? "yes" : "no", quoted(item.kind().species().orElse("")),
                quoted(item.kind().grade().orElse(""))) + (bill.hasValues() ? "," + value(item) : ""));
        }
        return String.join("\n", lines);
    }

    private static String value(BillItem item) {
        // A bill's value has nine decimals at most.
        return new BigDecimal(item.value().getAsDouble()).setScale(9, RoundingMode.HALF_EVEN).toPlainString();
    }

    /** A shop but for its push, which may be stated in a unit that has no exact number of newtons. */
    static String of(Shop shop) {
        List<String> lines = new ArrayList<>(List.of("# units: mm"));
        shop.bed().ifPresent(bed -> lines.add("# bed: " + mm(bed.length()) + " x " + mm(bed.width())));
        key("clamps", shop.clamps(), "", lines);
        key("stops", shop.stops(), "", lines);
        key("skim", shop.skim(), "", lines);
        if (!shop.shims().isEmpty()) {
            lines.add("# shims: " + shop.shims().stream().map(WrittenAgain::mm).collect(Collectors.joining("; ")));
        }
        shop.wedge().ifPresent(wedge -> lines.add("# tapered shim: " + mm(wedge.length()) + " x " + mm(wedge.butt())));
        shop.rate().ifPresent(rate -> lines.add("# rate: " + rate.toPlainString()));
        shop.sled().ifPresent(sled -> lines.add("# sled: " + sled.name().toLowerCase(Locale.ROOT)));
        if (shop.limits().shortest() > 0) {
            lines.add("# shortest: " + mm(shop.limits().shortest()));
        }
        if (shop.limits().widest() < Double.POSITIVE_INFINITY) {
            lines.add("# widest: " + mm(shop.limits().widest()));
        }
        lines.add("# first edge: " + mm(shop.limits().firstEdge()));
        lines.add("# over length: " + mm(shop.limits().overLength()));
        lines.add("# over width: " + mm(shop.limits().overWidth()));
        lines.add("cutter,diameter,deepest pass,rows,feed,last pass");
        for (Cutter cutter : shop.cutters()) {
            lines.add(String.join(",", quoted(cutter.name()), mm(cutter.diameter()), mm(cutter.deepest()),
                mm(cutter.rows()), mm(cutter.feed()), cutter.lastPass() == 0 ? "" : mm(cutter.lastPass())));
        }
        return String.join("\n", lines);
    }

    /** A length as {@link Length} reads it back to the last bit. */
    static String mm(double length) {
        return length + "mm";
    }

    private static String trim(Trim trim) {
        return mm(trim.along()) + " x " + mm(trim.across());
    }

    private static void key(String word, OptionalDouble length, String behind, List<String> lines) {
        length.ifPresent(value -> lines.add("# " + word + ": " + mm(value) + behind));
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }
}
