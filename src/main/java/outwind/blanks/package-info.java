/**
 * Which shorter blanks a board gives, and how to cut them. Read {@link outwind.blanks.BlankPlan} first; {@link
 * outwind.blanks.LengthsPlan} crosscuts a board alone.
 */
package outwind.blanks;
