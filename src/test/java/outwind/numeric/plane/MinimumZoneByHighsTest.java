package outwind.numeric.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import outwind.benchmark.PointCloud;

/** A thousand and a hundred thousand points against SciPy's HiGHS (src/test/resources/highs/README.md). */
class MinimumZoneByHighsTest {

    // Reference: SciPy 1.17.1, linprog highs-ds. It lets a point lie 1e-10 of its own scale beyond a plane.
    @ParameterizedTest(name = "{1} points, {0}")
    @CsvFileSource(resources = "/highs/minimum_zone.csv", numLinesToSkip = 2)
    void zoneIsAsWideAsHighsFindsIt(String kind, int points, double width) {
        PointCloud cloud = PointCloud.of(PointCloud.Kind.valueOf(kind.toUpperCase(Locale.ROOT)), points);

        Zone zone = WidestGap.minimumZone(cloud.x(), cloud.y(), cloud.z());

        assertEquals(width, zone.width(), 2e-10);
        for (int i = 0; i < points; i++) {
            double off = Math.abs(cloud.z()[i] - zone.middle().at(cloud.x()[i], cloud.y()[i]));
            assertTrue(off <= zone.width() / 2 + 1e-11, "point " + i + " lies outside by " + (off - zone.width() / 2));
        }
    }
}
