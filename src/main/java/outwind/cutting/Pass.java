package outwind.cutting;

import java.util.List;
import outwind.shop.Cutter;

/**
 * One layer of a cut.
 *
 * @param depth   below the face's highest spot (mm)
 * @param cutter  that takes it
 * @param wood    share of the board's area that stands above the layer's floor, 0 to 1; the rest is air
 * @param areas   the rectangles to cut; empty where it is the whole board
 * @param minutes for these rectangles, or the whole board
 */
public record Pass(double depth, Cutter cutter, double wood, List<Area> areas, double minutes) {

    public Pass {
        areas = List.copyOf(areas);
    }
}
