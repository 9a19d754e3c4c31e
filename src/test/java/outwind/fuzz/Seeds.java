package outwind.fuzz;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/** Good inputs to begin with: the samples, and small ones for what no sample shows. */
final class Seeds {

    private static final Path SAMPLES = Path.of("sample-probes");

    /** Enough points for a board to be looked for, and not many more. */
    private static final int POINTS = 1_020;

    private Seeds() { }

    static List<byte[]> of(AnyReader reader) throws IOException {
        return switch (reader) {
            case LENGTH -> texts("20mm", "13/16in", "1 3/16\"", "1-3/16\"", "-5/64", "+0.3", "1.9m", "6ft", "12,5", "302.5",
                "46 1/2", "1e3mm", "31.5 cm");
            case PRICE -> texts("9.50 per bf", "$9.50 per bf", "1400 EUR per m3", "38 per board", "GBP 1,400 per m3",
                "12,50 € per m²", "3/cu ft", "0.5 per square metre");
            case BOARD_FILE -> boards();
            case BARE_POINTS -> texts("# thickness: 30\n0 0 0.1\n600 0 0.4\n600 150 -0.2\n0 150 0.3\n",
                "# units: in\n# thickness: 1 1/4\n# length: 24\n1 1 0\n12 1 1/64\n12 5 -1/64\n1 5 0.01",
                "thickness: 25 everywhere\n# target: 20\n1e2 5 .1\n2e2 5 .2\n1e2 95 n/a\n2e2 95 0\n150 50 -1.25\n");
            case CUTTING_BILL -> with(files(SAMPLES.resolve("bills"), ".csv"), "# units: in\npart;qty;L;W;T;value\nleg;4;17 "
                + "1/2;2;1 1/4;3,50\nrail;2;30;3;3/4;2\n", "name\tlength\twidth\tthickness\tquantity\tany grain\tspecies\t"
                + "grade\nlid\t300\t200\t18\t1\tyes\twhite oak\tselect\n\"box, small\"\t100\t80\t10\t12\tno\t\t\n");
            case SHOP_FILE -> with(List.of(Files.readAllBytes(SAMPLES.resolve("outwind-shop.txt"))),
                "# units: in\n# bed: 48 x 24\n# sled: planer\n# push: 11 lbf\n# tapered shim: 6 x 1/2\n# rate: $48\n"
                + "# shortest: 12\n# widest: 12 1/2\n# first edge: 1/8\n# over length: 1/2\n# over width: 1/16\n",
                "# skim: 0.3\n# push: 50 N\n# shims: 0,1; 0,2; 1,5\ncutter;diameter;deepest pass;feed\nfacing;40;0,8;3000\n");
            case PLY_SCAN -> scans(true);
            case TEXT_SCAN -> scans(false);
        };
    }

    private static List<byte[]> boards() throws IOException {
        return with(files(SAMPLES, ".csv"), "# units: mm\n# length: 600\n# width: 150\n# thickness: 30\n# defect: 300 40 "
            + "420 90\n# trim: 20 x 5\n# price: 9.50 per bf\n# species: maple\n# grade: select\n# repeatability: 0.05\n"
            + "# underside: flat\nx,y,depth\n15,15,0.1\n300,15,0.4\n585,15,0.2\n15,135,-0.3\n",
            "# length: 600\n# width: 150\nx;y;z;thickness;note\n15;15;0,1;30,1;\n300;15;0,4;30,0;\"knot; dark\"\n585;15;0,2;;\n"
            + "15;135;-0,3;29,9;\n", "length: 24in\nwidth: 6in\nthickness: 1.25in everywhere\ny\\x\t1\t12\t23\n1\t0\t1\t2\n"
            + "75\t1\t-\t2\n140\t0\t1\tn/a\n");
    }

    private static List<byte[]> scans(boolean ply) {
        List<byte[]> scans = new ArrayList<>();
        for (int points : new int[] {6, 12, POINTS}) {
            for (int form = 0; form < 4; form++) {
                scans.add(ply ? ply(points, form) : rows(points, form));
            }
        }
        return scans;
    }

    /** Points in rows along a board of 600 x 150 mm, with a bow and a little noise. */
    private static double[] point(int i, int points, SplittableRandom random) {
        int rows = points < 100 ? 2 : 20;
        double x = 600.0 * (i / rows) / Math.max(1, points / rows - 1);
        double y = 150.0 * (i % rows) / (rows - 1);
        return new double[] {Math.min(600, x), y, 2 * x * (600 - x) / 90_000 + random.nextGaussian() * 0.05};
    }

    private static byte[] rows(int points, int form) {
        SplittableRandom random = new SplittableRandom(points);
        String between = List.of(" ", ",", ";", "\t").get(form);
        StringBuilder text = new StringBuilder(List.of("", "# units: mm\nx,y,z\n", "# length: 600\n# width: 150\nX;Y;Z;r\n",
            "x (mm)\ty (mm)\tz (mm)\n").get(form)).insert(0, "# thickness: 30\n");
        for (int i = 0; i < points; i++) {
            double[] at = point(i, points, random);
            text.append(String.format(Locale.ROOT, "%.1f%s%.1f%s%.3f%s%n", at[0], between, at[1], between, at[2],
                form == 2 ? ";7" : ""));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] ply(int points, int form) {
        SplittableRandom random = new SplittableRandom(points);
        String format = List.of("ascii", "binary_little_endian", "binary_big_endian", "ascii").get(form);
        String type = form == 2 ? "double" : "float";
        String before = form == 3 ? "element camera 1\nproperty float view\n" : "";
        String header = "ply\nformat " + format + " 1.0\ncomment thickness: 30\n" + before + "element vertex " + points
            + "\nproperty " + type + " x\nproperty " + type + " y\nproperty " + type + " z\n"
            + (form == 1 ? "property uchar red\n" : "") + "element face 1\nproperty list uchar int vertex_indices\nend_header\n"
            + (form == 3 ? "1.5\n" : "");
        ByteBuffer bytes = ByteBuffer.allocate(header.length() + points * 40 + 64)
            .order(form == 2 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
        bytes.put(header.getBytes(StandardCharsets.US_ASCII));
        for (int i = 0; i < points; i++) {
            double[] at = point(i, points, random);
            switch (form) {
                case 1 -> bytes.putFloat((float) at[0]).putFloat((float) at[1]).putFloat((float) at[2]).put((byte) i);
                case 2 -> bytes.putDouble(at[0]).putDouble(at[1]).putDouble(at[2]);
                default -> bytes.put(String.format(Locale.ROOT, "%.1f %.1f %.3f\n", at[0], at[1], at[2])
                    .getBytes(StandardCharsets.US_ASCII));
            }
        }
        if (form == 1 || form == 2) {
            bytes.put((byte) 3).putInt(0).putInt(1).putInt(2);
        } else {
            bytes.put("3 0 1 2\n".getBytes(StandardCharsets.US_ASCII));
        }
        byte[] written = new byte[bytes.position()];
        bytes.rewind().get(written);
        return written;
    }

    private static List<byte[]> files(Path folder, String ending) throws IOException {
        List<byte[]> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(one -> one.toString().endsWith(ending)).sorted().toList()) {
                all.add(Files.readAllBytes(file));
            }
        }
        return all;
    }

    private static List<byte[]> texts(String... texts) {
        return Stream.of(texts).map(text -> text.getBytes(StandardCharsets.UTF_8)).toList();
    }

    private static List<byte[]> with(List<byte[]> some, String... texts) {
        return Stream.concat(some.stream(), texts(texts).stream()).toList();
    }
}
