package outwind.report.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Colours that mean something are distinguished by everybody, and on a grey print. */
class ColourTest {

    // G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, A physiologically-based model for simulation of color vision
    // deficiency, IEEE Transactions on Visualization and Computer Graphics 15(6), 2009, table of matrices, severity
    // 1.0, on linear light; values from memory. That each row sums to 1, so that grey stays grey, is checked below.
    private static final double[][] DEUTERANOPIA = {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413},
        {-0.011820, 0.042940, 0.968881}};
    private static final double[][] PROTANOPIA = {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216},
        {-0.003882, -0.048116, 1.051998}};
    private static final double[][] EVERYBODY = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

    /** A difference of 2.3 is just noticed (from memory); neighbours on paper want several times that. */
    private static final double CLEAR = 8;

    @Test
    void greyStaysGreyInTheSimulation() {
        for (double[][] eye : List.of(DEUTERANOPIA, PROTANOPIA)) {
            for (double[] row : eye) {
                assertEquals(1, DoubleStream.of(row).sum(), 2e-6);
            }
        }
    }

    // CIE 15: L* of white is 100, of black 0; of middle grey 0x77 it is 50.03 (worked by hand from the sRGB curve of
    // IEC 61966-2-1: 119/255 is 0.1845 of white, 116·∛0.1845 − 16 = 50.03).
    @Test
    void lightnessIsThatOfTheStandard() {
        assertEquals(100, lab(Color.WHITE, EVERYBODY)[0], 0.01);
        assertEquals(0, lab(Color.BLACK, EVERYBODY)[0], 0.01);
        assertEquals(50.03, lab(new Color(0x777777), EVERYBODY)[0], 0.05);
    }

    @Test
    void bandsOfDepthAreToldApartByEveryEyeAndInGrey() {
        for (int bands = 2; bands <= 7; bands++) {
            DepthScale scale = new DepthScale(0, 1, bands);
            for (int i = 1; i < bands; i++) {
                Color lighter = scale.colour(i - 1);
                Color darker = scale.colour(i);
                for (double[][] eye : List.of(EVERYBODY, DEUTERANOPIA, PROTANOPIA)) {
                    assertTrue(difference(lighter, darker, eye) >= CLEAR, bands + " bands, " + i + ": "
                        + difference(lighter, darker, eye));
                }
                assertTrue(lab(lighter, EVERYBODY)[0] - lab(darker, EVERYBODY)[0] >= CLEAR, "in grey");
            }
        }
    }

    /** Distance in CIELAB of 1976. */
    static double difference(Color one, Color other, double[][] eye) {
        double[] a = lab(one, eye);
        double[] b = lab(other, eye);
        return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }

    private static double[] lab(Color colour, double[][] eye) {
        double[] rgb = {linear(colour.getRed()), linear(colour.getGreen()), linear(colour.getBlue())};
        double[] seen = times(eye, rgb);
        // sRGB to XYZ under D65: IEC 61966-2-1.
        double[] xyz = times(new double[][] {{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722},
            {0.0193, 0.1192, 0.9505}}, seen);
        double x = curve(xyz[0] / 0.9505);
        double y = curve(xyz[1]);
        double z = curve(xyz[2] / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double linear(int part) {
        double share = part / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    private static double curve(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] product = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                product[i] += matrix[i][j] * vector[j];
            }
        }
        return product;
    }
}
