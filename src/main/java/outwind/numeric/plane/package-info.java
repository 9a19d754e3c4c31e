/**
 * Which plane fits heights best in the largest distance: the minimum zone, the plane that rests on three points, and
 * the widest gap beneath it. Read {@link outwind.numeric.plane.WidestGap} first, then {@link
 * outwind.numeric.plane.Exchange}.
 */
package outwind.numeric.plane;
