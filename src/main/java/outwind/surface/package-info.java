/**
 * The board's two faces everywhere, not only where somebody touched them.
 *
 * <p>Heights in mm, x along the grain from 0 to the length, y across from 0 to the width, z up.
 * {@link outwind.surface.trend.Fits} compares the readings with a plane, a twisted and a curved face;
 * {@link outwind.surface.trend.Warp} names twist, bow and cup with their uncertainty;
 * {@link outwind.surface.BoardShape} is the seam behind which the height of both faces at any place is known;
 * {@link outwind.surface.SampledBoard} holds them on a grid that includes every reading, edge and corner, which is
 * all that later packages look at.
 */
package outwind.surface;
