package outwind.report.drawing;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import outwind.board.Units;

/**
 * A picture as a PNG file: eight bits each of red, green and blue, not interlaced, no transparency.
 *
 * <p>Rows are stored as they are. On drawings with large even patches the filters that the format offers make larger
 * files, and trying them on every row, as the JDK's own writer does, takes three times as long as all the rest.
 *
 * <p>Format: ISO/IEC 15948:2004, Portable Network Graphics, clauses 5 (chunks), 9 (filters), 11.2 (IHDR, IDAT, IEND),
 * 11.3.5.3 (pHYs: how large a pixel is).
 */
final class Png {

    private static final long SIGNATURE = 0x89504e470d0a1a0aL;

    private static final int BITS = 8;
    private static final int COLOUR = 2;
    private static final int DEFLATE = 0;
    private static final int ADAPTIVE = 0;
    private static final int UNFILTERED = 0;
    private static final int ONE_PASS = 0;
    private static final int METRE = 1;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final DataOutputStream out = new DataOutputStream(bytes);

    private Png() { }

    /** @param image of {@link BufferedImage#TYPE_INT_RGB}, or a part of such a one */
    static byte[] of(BufferedImage image) {
        try {
            Png png = new Png();
            png.out.writeLong(SIGNATURE);
            png.chunk("IHDR", header(image));
            png.chunk("pHYs", density());
            png.chunk("IDAT", pixels(image));
            png.chunk("IEND", new byte[0]);
            return png.bytes.toByteArray();
        } catch (IOException e) {
            throw new IllegalStateException("a picture in memory could not be written to memory", e);
        }
    }

    /** Length, type, content, and the check of the latter two. */
    private void chunk(String type, byte[] content) throws IOException {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 check = new CRC32();
        check.update(name);
        check.update(content);
        out.writeInt(content.length);
        out.write(name);
        out.write(content);
        out.writeInt((int) check.getValue());
    }

    private static byte[] header(BufferedImage image) throws IOException {
        ByteArrayOutputStream header = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(header);
        out.writeInt(image.getWidth());
        out.writeInt(image.getHeight());
        out.write(new byte[] {BITS, COLOUR, DEFLATE, ADAPTIVE, ONE_PASS});
        return header.toByteArray();
    }

    /** Pixels per metre to the right and down. */
    private static byte[] density() throws IOException {
        ByteArrayOutputStream density = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(density);
        int perMetre = (int) Math.round(Paper.DPI * 1000 / Units.INCHES.toMillimetres(1));
        out.writeInt(perMetre);
        out.writeInt(perMetre);
        out.writeByte(METRE);
        return density.toByteArray();
    }

    private static byte[] pixels(BufferedImage image) throws IOException {
        int width = image.getWidth();
        int[] colours = new int[width];
        byte[] row = new byte[1 + 3 * width];
        row[0] = UNFILTERED;
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(packed)) {
            for (int y = 0; y < image.getHeight(); y++) {
                image.getRaster().getDataElements(0, y, width, 1, colours);
                for (int x = 0, at = 1; x < width; x++) {
                    row[at++] = (byte) (colours[x] >> 16);
                    row[at++] = (byte) (colours[x] >> 8);
                    row[at++] = (byte) colours[x];
                }
                deflater.write(row);
            }
        }
        return packed.toByteArray();
    }
}
