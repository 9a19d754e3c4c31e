/**
 * How deep to cut, in how many passes, and what must stay out of the cutter's way.
 *
 * <p>Millimetres. {@link outwind.cutting.CuttingPlan} has one {@link outwind.cutting.Cut} for each face;
 * {@code Cutter} is what the person at the machine dials in.
 */
package outwind.cutting;
