package outwind.report.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Units;
import outwind.report.drawing.DepthScale;
import outwind.report.words.RoundStep;

/** The scale of depths and the steps that it and the axes are divided into. */
class ChartScaleTest {

    @ParameterizedTest
    @CsvSource({"0.3, 0.5", "0.5, 0.5", "0.51, 1", "7, 10", "84, 100", "130, 200", "0.001, 0.1"})
    void stepsInMillimetres(double atLeast, double step) {
        assertEquals(step, RoundStep.ofDepth(Units.MILLIMETRES).atLeast(atLeast), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0.001, 0.015625", "0.2, 0.25", "1.1, 2", "5, 6", "7, 12"})
    void stepsInInches(double atLeast, double step) {
        assertEquals(step * 25.4, RoundStep.ofDepth(Units.INCHES).atLeast(atLeast * 25.4), 1e-9);
    }

    @Test
    void bandsAreRoundFewAndCoverAllDepths() {
        SplittableRandom random = new SplittableRandom(11);
        for (int run = 0; run < 500; run++) {
            double least = 5 * random.nextDouble();
            double most = least + Math.pow(10, 4 * random.nextDouble() - 2);

            DepthScale scale = DepthScale.covering(least, most, Units.MILLIMETRES);

            String found = scale + " for " + least + " to " + most;
            assertTrue(scale.bands() >= 1 && scale.bands() <= 7, found);
            assertTrue(scale.from() <= least + 1e-6 * scale.step(), found);
            assertTrue(scale.from() + scale.bands() * scale.step() >= most - 1e-6 * scale.step(), found);
            assertTrue(isRound(scale.step()), found);
            assertEquals(scale.from() / 0.1, Math.rint(scale.from() / 0.1), 1e-6, found);
        }
    }

    private static boolean isRound(double step) {
        double digit = step / Math.pow(10, Math.floor(Math.log10(step) + 1e-9));
        return List.of(1.0, 2.0, 5.0).stream().anyMatch(round -> Math.abs(digit - round) < 1e-6);
    }

    // Relative luminance as W3C, Web Content Accessibility Guidelines 2.2, defines it.
    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed()) + 0.7152 * linear(colour.getGreen())
            + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    @Test
    void deeperBandsAreDarkerByFar() {
        for (int bands = 2; bands <= 7; bands++) {
            DepthScale scale = new DepthScale(0, 1, bands);
            for (int i = 1; i < bands; i++) {
                double lighter = luminance(scale.colour(i - 1)) + 0.05;
                double darker = luminance(scale.colour(i)) + 0.05;
                assertTrue(lighter / darker > 1.15, bands + " bands, " + i + ": " + lighter / darker);
            }
        }
    }

    @Test
    void depthsThatAreAllAlikeMakeOneBand() {
        assertEquals(1, DepthScale.covering(0, 0, Units.MILLIMETRES).bands());
        assertEquals(1, DepthScale.covering(2.496, 2.504, Units.MILLIMETRES).bands());
        assertEquals(1, DepthScale.covering(-3, -2, Units.INCHES).bands());
    }

    @Test
    void aDepthBeyondTheEndsBelongsToTheNearestBand() {
        DepthScale scale = new DepthScale(1, 0.5, 4);

        assertEquals(0, scale.band(0.2));
        assertEquals(0, scale.band(1.49));
        assertEquals(1, scale.band(1.5));
        assertEquals(3, scale.band(7));
    }
}
