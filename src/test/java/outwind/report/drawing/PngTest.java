package outwind.report.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HexFormat;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class PngTest {

    // Reference: the JDK's own reader. Every colour of every pixel must come back, on a part that begins inside its
    // picture as well.
    @Test
    void everyPixelIsReadBack() throws IOException {
        BufferedImage whole = speckled(211, 97);
        BufferedImage part = whole.getSubimage(13, 5, 101, 67);

        assertArrayEquals(colours(whole), colours(readBack(whole)));
        assertArrayEquals(colours(part), colours(readBack(part)));
    }

    // Published: ISO/IEC 15948:2004, 5.2 (signature) and 11.2.2 (IHDR: width, height, bit depth 8, colour type 2, then
    // three zeros); the check of the IEND chunk is the same in every file. The check of IHDR by Python's zlib.crc32.
    @Test
    void aFileOpensAndEndsAsTheStandardSays() {
        byte[] png = Png.of(new BufferedImage(1600, 1130, BufferedImage.TYPE_INT_RGB));

        String hex = HexFormat.of().formatHex(png);

        assertEquals("89504e470d0a1a0a" + "0000000d49484452" + "00000640" + "0000046a" + "0802000000" + "9fc62e89",
            hex.substring(0, 66));
        // pHYs: 160 per inch are 6299 = 189b hex per metre, both ways; unit 1 is the metre (11.3.5.3).
        assertEquals("00000009" + "70485973" + "0000189b" + "0000189b" + "01", hex.substring(66, 100));
        assertEquals("0000000049454e44ae426082", hex.substring(hex.length() - 24));
    }

    private static BufferedImage speckled(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(4);
        image.setRGB(0, 0, width, height, random.ints(width * height).toArray(), 0, width);
        return image;
    }

    private static BufferedImage readBack(BufferedImage image) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(Png.of(image)));
    }

    private static int[] colours(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }
}
