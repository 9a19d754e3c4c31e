/**
 * Mathematics that knows no wood: what fits given points best, how sure that is, what lies between them, and how a
 * plate bends.
 *
 * <p>Everything here takes and returns plain {@code double} arrays in whatever one unit the caller uses (the rest of
 * the program uses millimetres) and a frame with z up. {@link outwind.numeric.LeastSquares} fits linear models and
 * brings their standard errors; {@link outwind.numeric.plane.WidestGap} answers every question of the form "which
 * plane, or which pair of parallel planes, lies best against these points", and proves its answer with multipliers;
 * {@link outwind.numeric.TurnedObservations} carries readings to where nobody read;
 * {@link outwind.numeric.plate.OrthotropicPlate} bends; {@link outwind.numeric.CoveringProgram} chooses among many
 * columns; {@link outwind.numeric.plane.Plane} is what the fits speak in.
 */
package outwind.numeric;
