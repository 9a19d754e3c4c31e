package outwind.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.CaliperReading;
import outwind.surface.field.KrigedField;

class FlatUndersideTest {

    /** A face that rises by 1 mm over 100 mm and is known to 0.24 mm everywhere. */
    private static final TopFace SLOPE = new TopFace() {
        @Override
        public double mean(double x, double y) {
            return x / 100;
        }

        @Override
        public double shared(double x, double y, double mean) {
            return mean;
        }

        @Override
        public double deviation(double x, double y) {
            return 0.24;
        }

        @Override
        public List<KrigedField.Predicted> leavingOut() {
            return List.of();
        }

        @Override
        public List<KrigedField.Predicted> leavingOutBeside(int reading) {
            return List.of();
        }

        @Override
        public Drawn draws(Places places, double[][] anchors, int count, SplittableRandom random) {
            throw new AssertionError("no face is drawn here");
        }
    };

    private static FlatUnderside calipered(double... thicknesses) {
        return FlatUnderside.under(DoubleStream.of(thicknesses)
            .mapToObj(thickness -> new CaliperReading(100, 0, thickness, 2)).toList(), SLOPE);
    }

    // Worked by hand: independent errors add by their squares (JCGM 100:2008, 5.1.2, from memory). One caliper reading
    // leaves √(0.24² + 0.1²) = 0.26 mm, the mean of four half of that.
    @Test
    void fourCaliperReadingsAreTwiceAsSureAsOne() {
        assertEquals(0.26, calipered(30).deviation(), 1e-12);
        assertEquals(0.13, calipered(30, 31, 30, 31).deviation(), 1e-12);
        assertEquals(1 - 30.5, calipered(30, 31, 30, 31).height(), 1e-12);
    }

    // Worked by hand: heights of ±0.48 mm about 0 and a figure that is good to 0.2 mm: √(0.48² + 0.2²) = 0.52 mm.
    @Test
    void oneFigureReadAnywhereIsAsUnsureAsTheFaceIsUneven() {
        Board even = ShapeOf.board().lyingFlat().read(4, 2, (x, y) -> Math.round(x / 300) % 2 == 0 ? 0.48 : -0.48);
        Board anywhere = Board.untouched("board", even.units(), even.length(), even.width(), even.thickness(),
            even.target()).withReadings(even.readings());

        assertEquals(0.52, FlatUnderside.under(anywhere).deviation(), 1e-12);
        assertEquals(-30, FlatUnderside.under(anywhere).height(), 1e-12);
        assertEquals(0, FlatUnderside.under(even).deviation(), 1e-12);
    }
}
