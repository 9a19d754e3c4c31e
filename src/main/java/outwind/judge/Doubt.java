package outwind.judge;

import outwind.flatten.ThicknessRange;
import outwind.surface.SuspectReading;

/**
 * A reading that looks wrong, and what the board would be without it.
 *
 * @param suspect the reading
 * @param without finished thickness, levelled, if it were left out
 */
public record Doubt(SuspectReading suspect, ThicknessRange without) { }
