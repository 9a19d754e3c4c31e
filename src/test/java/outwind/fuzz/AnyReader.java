package outwind.fuzz;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import outwind.board.BadValue;
import outwind.board.BillItem;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.board.CuttingBill;
import outwind.board.Defect;
import outwind.board.Face;
import outwind.board.Length;
import outwind.board.PointCloud;
import outwind.board.Price;
import outwind.board.Reading;
import outwind.board.Units;
import outwind.board.file.BillFile;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.file.ShopFile;
import outwind.board.text.BadBoardFile;
import outwind.scan.bytes.Progress;
import outwind.scan.file.Scan;
import outwind.scan.file.ScanFile;
import outwind.scan.find.ScannedBoard;
import outwind.shop.Cutter;
import outwind.shop.Shop;

/**
 * What each reader owes to whatever it is given. It refuses in plain words; or what it took lies within the limits that
 * its page states, and is the same when it is written plainly and read again.
 */
enum AnyReader {

    LENGTH {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) {
            String text = text(input);
            Units bare = random.nextBoolean() ? Units.MILLIMETRES : Units.INCHES;
            double length = Length.parse(text, bare, random.nextBoolean());
            require(Double.isFinite(length), "not finite");
            require(Length.parse(WrittenAgain.mm(length), Units.INCHES) == length, "written again it differs");
            Matcher plain = PLAIN_LENGTH.matcher(text);
            if (plain.matches()) {
                double each = plain.group(2).isEmpty() ? bare == Units.INCHES ? 25.4 : 1 : EACH.get(plain.group(2));
                double meant = new BigDecimal(plain.group(1)).doubleValue() * each;
                require(Math.abs(length - meant) <= 1e-12 * Math.abs(meant), "it is " + length);
            }
        }
    },

    PRICE {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) {
            Price price = Price.parse(text(input), random.nextBoolean());
            require(price.amount().signum() >= 0 && price.amount().precision() <= 18, "amount " + price.amount());
            require(price.currency().length() <= 6, "currency");
            require(Price.parse(WrittenAgain.of(price), false).equals(price), "written again it differs");
        }
    },

    BOARD_FILE {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile {
            requireBoard(board("board.csv", input, random, folder), input);
        }
    },

    BARE_POINTS {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile {
            requireBoard(board("board.xyz", input, random, folder), input);
        }
    },

    CUTTING_BILL {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile {
            CuttingBill bill = random.nextInt(DISK) > 0 ? BillFile.parse("bill.csv", text(input), Units.INCHES)
                : BillFile.read(Files.write(folder.resolve("bill.csv"), input), Units.INCHES);
            Set<String> names = new HashSet<>();
            for (BillItem item : bill.items()) {
                requireSize(item.length(), LONGEST, "length");
                requireSize(item.width(), WIDEST, "width");
                requireSize(item.thickness(), THICKEST, "thickness");
                require(item.quantity() >= 1 && item.quantity() <= 10_000, "quantity " + item.quantity());
                require(!item.name().isBlank() && names.add(item.name().toLowerCase(Locale.ROOT)), "name " + item.name());
                require(item.value().orElse(1) > 0 && item.value().orElse(1) < 1e9, "value " + item.value());
            }
            require(bill.items().size() < lines(input), "more items than lines");
            CuttingBill again = BillFile.parse("again.csv", WrittenAgain.of(bill), Units.INCHES);
            require(again.items().equals(bill.items()), "written again it differs: " + again.items());
        }
    },

    SHOP_FILE {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile {
            Shop shop = random.nextInt(DISK) > 0 ? ShopFile.parse("outwind-shop.txt", text(input))
                : ShopFile.read(Files.write(folder.resolve("outwind-shop.txt"), input));
            shop.bed().ifPresent(bed -> requireSize(Math.max(bed.length(), bed.width()), LONGEST, "bed"));
            shop.shims().forEach(shim -> requireSize(shim, THICKEST, "shim"));
            for (Cutter cutter : shop.cutters()) {
                requireSize(cutter.diameter(), LONGEST, "diameter");
                requireSize(cutter.rows(), cutter.diameter(), "rows");
                requireSize(cutter.feed(), LONGEST, "feed");
                require(cutter.deepest() > 0 && cutter.lastPass() <= cutter.deepest(), "passes");
            }
            // 999,999.9999 lbf is the most that can be written.
            require(shop.push().orElse(1) > 0 && shop.push().orElse(1) < 4.5e6, "push " + shop.push());
            Shop plain = new Shop(shop.bed(), shop.cutters(), shop.clamps(), shop.stops(), shop.shims(), shop.wedge(),
                shop.rate(), shop.skim(), Shop.UNKNOWN.push(), shop.sled(), shop.limits());
            Shop again = ShopFile.parse("again.txt", WrittenAgain.of(shop));
            require(again.equals(plain), "written again it differs: " + again);
        }
    },

    PLY_SCAN {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile {
            requireScan(Files.write(folder.resolve("scan.ply"), input), input.length);
        }
    },

    TEXT_SCAN {
        @Override
        void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile {
            requireScan(Files.write(folder.resolve("scan.xyz"), input), lines(input));
        }
    };

    /** Limits that the page about security states (mm). */
    private static final double LONGEST = 20_000;
    private static final double WIDEST = 3_000;
    private static final double THICKEST = 1_000;

    /** One text in so many goes by way of the disk, where its bytes are decoded. */
    private static final int DISK = 20;

    private static final Pattern PLAIN_LENGTH = Pattern.compile("([+-]?\\d{1,15}(?:\\.\\d{1,15})?)(mm|cm|m|in|ft|)");
    private static final Map<String, Double> EACH = Map.of("mm", 1.0, "cm", 10.0, "m", 1000.0, "in", 25.4, "ft", 304.8);

    /** A message of a few hundred letters can be read; two lines to a fault, 50 faults and a closing line. */
    private static final int LONGEST_LINE = 1_000;
    private static final int MOST_LINES = 101;
    private static final Pattern INSIDE = Pattern.compile("Exception|java\\.|outwind\\.[a-z]+\\.|\\bnull\\b|\\bat fault here");

    /**
     * Gives a reader an input.
     *
     * @param folder to write in
     * @throws BadValue              if it refused it
     * @throws BadBoardFile          if it refused it
     * @throws IllegalStateException if what it took cannot be right
     */
    abstract void read(byte[] input, SplittableRandom random, Path folder) throws IOException, BadBoardFile;

    /**
     * The same; what is wrong with a refusal counts as well.
     *
     * @return whether it took the input
     */
    boolean isTaken(byte[] input, SplittableRandom random, Path folder) throws IOException {
        try {
            read(input, random, folder);
            return true;
        } catch (BadValue e) {
            requirePlain(e.getMessage());
            requirePlain(e.mend());
        } catch (BadBoardFile e) {
            require(!e.faults().isEmpty(), "refused without a fault");
            requirePlain(e.getMessage().replace(folder.toString(), ""));
        }
        return false;
    }

    private static void requirePlain(String message) {
        int lines = 1;
        int start = 0;
        for (int i = 0; i < message.length(); i++) {
            char c = message.charAt(i);
            int kind = Character.getType(c);
            boolean half = kind == Character.SURROGATE && !(i + 1 < message.length()
                && Character.isSurrogatePair(c, message.charAt(i + 1)) || i > 0
                && Character.isSurrogatePair(message.charAt(i - 1), c));
            require(c == '\n' || kind != Character.CONTROL && kind != Character.FORMAT && !half
                && kind != Character.LINE_SEPARATOR && kind != Character.PARAGRAPH_SEPARATOR,
                "the message holds " + Integer.toHexString(c) + ": " + message);
            if (c == '\n') {
                lines++;
                start = i + 1;
            }
            require(i - start <= LONGEST_LINE, "the message has a line too long: " + message);
        }
        require(lines <= MOST_LINES, "the message has " + lines + " lines");
        require(!message.isBlank() && !INSIDE.matcher(message).find(), "the message shows the inside: " + message);
    }

    private static Board board(String name, byte[] input, SplittableRandom random, Path folder)
            throws IOException, BadBoardFile {
        return random.nextInt(DISK) > 0 ? BoardFile.parse(name, text(input), Defaults.NOTHING)
            : BoardFile.read(Files.write(folder.resolve(name), input), Defaults.NOTHING);
    }

    private static void requireBoard(Board board, byte[] input) throws BadBoardFile {
        requireWithinLimits(board);
        int before = 0;
        int most = lines(input);
        for (Reading reading : board.readings()) {
            require(reading.line() >= before && reading.line() >= 1 && reading.line() <= most, "order of the readings");
            before = reading.line();
            require(Math.abs(reading.z()) <= THICKEST, "height " + reading.z());
            double x = reading.x();
            double y = reading.y();
            require(reading.face() == Face.BED ? Math.max(Math.abs(x), Math.abs(y)) <= LONGEST
                : isOn(board, x, y), "reading at " + x + ", " + y);
        }
        require(board.readingsOf(Face.A).size() >= 3, "too few readings");
        require(board.thickness().isPresent() || !board.calipers().isEmpty(), "no thickness");
        require(board.readingsOf(Face.B).isEmpty() || board.turned().isPresent() && board.calipers().size() >= 3, "face B");
        Board again = BoardFile.parse("again.csv", WrittenAgain.of(board), Defaults.NOTHING);
        requireSame(board, again);
    }

    private static void requireWithinLimits(Board board) {
        requireSize(board.length(), LONGEST, "length");
        requireSize(board.width(), WIDEST, "width");
        board.thickness().ifPresent(thickness -> requireSize(thickness, THICKEST, "thickness"));
        board.target().ifPresent(target -> requireSize(target, THICKEST, "target"));
        double skim = board.skim().orElse(0);
        require(skim >= 0 && 2 * skim < board.thickest().orElse(THICKEST), "skim");
        require(2 * board.trim().along() < board.length() && 2 * board.trim().across() < board.width(), "trim");
        for (CaliperReading caliper : board.calipers()) {
            requireSize(caliper.thickness(), THICKEST, "caliper reading");
            require(isOn(board, caliper.x(), caliper.y()), "caliper reading beside the board");
        }
        for (Defect defect : board.defects()) {
            require(isOn(board, defect.x1(), defect.y1()) && isOn(board, defect.x2(), defect.y2())
                && defect.x1() < defect.x2() && defect.y1() < defect.y2(), "defect");
        }
        require(!board.name().isBlank() && board.name().lines().count() == 1, "name");
    }

    private static void requireSame(Board board, Board again) {
        require(again.name().equals(board.name()) && again.units() == board.units() && again.length() == board.length()
            && again.width() == board.width() && again.thickness().equals(board.thickness())
            && again.evenThickness() == board.evenThickness(), "written again its sizes differ");
        require(again.species().equals(board.species()) && again.grade().equals(board.grade())
            && again.repeatability().equals(board.repeatability()) && again.price().equals(board.price())
            && again.target().equals(board.target()) && again.skim().equals(board.skim())
            && again.trim().equals(board.trim()) && again.underside() == board.underside()
            && again.turned().equals(board.turned()) && again.defects().equals(board.defects()),
            "written again its keys differ");
        require(again.readings().stream().map(AnyReader::withoutLine).toList().equals(board.readings().stream()
            .map(AnyReader::withoutLine).toList()), "written again its readings differ");
        require(again.calipers().stream().map(AnyReader::withoutLine).toList().equals(board.calipers().stream()
            .map(AnyReader::withoutLine).toList()), "written again its caliper readings differ");
    }

    private static Reading withoutLine(Reading reading) {
        return new Reading(reading.x(), reading.y(), reading.z(), reading.face(), reading.note(), 0);
    }

    private static CaliperReading withoutLine(CaliperReading caliper) {
        return new CaliperReading(caliper.x(), caliper.y(), caliper.thickness(), 0);
    }

    /** @param most points that the file has room for */
    private static void requireScan(Path file, long most) throws IOException, BadBoardFile {
        Scan scan = ScanFile.read(file, Progress.UNSEEN);
        PointCloud points = scan.points();
        require(points.size() > 0 && points.size() + scan.unmeasured() <= most, "number of points");
        for (double[] axis : List.of(points.x(), points.y(), points.z())) {
            require(Arrays.stream(axis).allMatch(Double::isFinite), "not finite");
        }
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < points.size(); i++) {
            plain.append(points.x()[i]).append(' ').append(points.y()[i]).append(' ').append(points.z()[i]).append('\n');
        }
        Path again = Files.writeString(file.resolveSibling("again.xyz"), plain);
        require(ScanFile.read(again, Progress.UNSEEN).points().equals(points), "written again it differs");
        if (points.size() < Scan.FEWEST) {
            return;
        }
        Board board = ScannedBoard.in(scan, file.toString(), Defaults.NOTHING);
        requireWithinLimits(board);
        PointCloud face = board.scan().orElseThrow().points();
        for (int i = 0; i < face.size(); i++) {
            require(Double.isFinite(face.z()[i]) && isOn(board, face.x()[i], face.y()[i]), "a point beside the board");
        }
        require(Arrays.stream(board.scan().get().cells().height()).noneMatch(Double::isInfinite), "height of a cell");
    }

    private static boolean isOn(Board board, double x, double y) {
        return x >= 0 && x <= board.length() && y >= 0 && y <= board.width();
    }

    private static String text(byte[] input) {
        return new String(input, StandardCharsets.UTF_8);
    }

    /** Lines that an input has at most, whatever ends them. */
    private static int lines(byte[] input) {
        int lines = 1;
        for (byte b : input) {
            lines += b == '\n' || b == '\r' ? 1 : 0;
        }
        return lines;
    }

    private static void requireSize(double size, double most, String what) {
        require(size > 0 && size <= most, what + " " + size);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException(otherwise);
        }
    }
}
