/**
 * One height or thickness over the whole board, from noisy readings: what is believed before, and what follows from the
 * readings. {@link outwind.surface.field.KrigedField} is where to begin; {@link outwind.surface.field.Prior} and {@link
 * outwind.surface.field.Bends} hold what is believed.
 */
package outwind.surface.field;
