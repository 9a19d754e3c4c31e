/**
 * Which low polynomial a face follows, and whether its terms are more than noise. Read {@link
 * outwind.surface.trend.TrendFit} first, then {@link outwind.surface.trend.Warp}.
 */
package outwind.surface.trend;
