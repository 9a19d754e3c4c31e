package outwind.report.words;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import outwind.board.Units;
import outwind.cutting.Cut;
import outwind.cutting.CuttingPlan;
import outwind.cutting.Machining;
import outwind.shop.Cutter;
import outwind.shop.Shop;
import outwind.surface.Places;
import outwind.surface.Region;
import outwind.surface.SampledBoard;
import outwind.surface.ShapeOf;

class CutWordsTest {

    private static final Cutter ROUGH = new Cutter("end mill", 12, 1, 0, 6, 2500, 12);
    private static final Cutter FINE = new Cutter("facing cutter", 40, 0.8, 0.3, 24, 3000, 26);

    // Worked by hand: from 30 mm down to 26.7 mm are 3.3 mm: three passes of 1 mm and a last one of 0.3 mm.
    @Test
    void theLastPassIsSaidWithItsOwnDepthAndCutter() {
        SampledBoard lying = ShapeOf.sampled(Places.grid(new Region(0, 0, 900, 180), 5, 3), (x, y) -> 30, (x, y) -> 0);
        Cut cut = CuttingPlan.faceBAlone(lying, lying, 26.7);
        List<Machining> way = Machining.ofFaceB(cut, lying, List.of(ROUGH, FINE)).stream()
            .filter(one -> one.roughing().equals(ROUGH) && one.finishing().isPresent()).toList();

        String words = new CutWords(Shop.UNKNOWN, way, new Figures(Units.MILLIMETRES)).cut(cut, Optional.empty())
            .replace('\u00a0', ' ');

        assertTrue(words.contains("Take 3 passes of at most 1.0 mm with the end mill, then the last 0.3 mm with the"
            + " facing cutter: about "), words);
    }

    // By hand: 0.4 mm is less than the least usual depth of a pass, and 2.5 mm is five times that.
    @ParameterizedTest
    @CsvSource({"29.6, Take it in one pass.",
        "27.5, 'That is 5 passes of 0.5 mm, 3 of 1.0 mm, 2 of 2.0 mm or 1 of 5.0 mm.'"})
    void withoutACutterUsualPassesAreCounted(double thickness, String said) {
        SampledBoard lying = ShapeOf.sampled(Places.grid(new Region(0, 0, 900, 180), 5, 3), (x, y) -> 30, (x, y) -> 0);

        String words = new CutWords(Shop.UNKNOWN, List.of(), new Figures(Units.MILLIMETRES))
            .cut(CuttingPlan.faceBAlone(lying, lying, thickness), Optional.empty()).replace('\u00a0', ' ');

        assertTrue(words.contains(said), words);
    }
}
