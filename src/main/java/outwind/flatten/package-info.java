/**
 * Which plane to cut, and what thickness is left.
 *
 * <p>Millimetres, in the frame of the readings. {@link outwind.flatten.Slab} says how thick a flat, parallel board
 * can come out of the rough one for given slopes; {@link outwind.flatten.Planes} compares the reference planes and
 * chooses one; {@link outwind.flatten.ReadingsAlone} is what the readings alone would promise, beside what the whole
 * board will bear; {@link outwind.flatten.Verdict} answers the question.
 */
package outwind.flatten;
