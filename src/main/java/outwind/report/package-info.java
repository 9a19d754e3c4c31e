/**
 * What a judged board says to people and to scripts.
 *
 * <p>{@link outwind.report.TextReport} is read at the machine, {@link outwind.report.BoardSheet} hangs beside it, {@link
 * outwind.report.DetailSheet} has the rest, {@link outwind.report.JsonReport} is for scripts. Nothing is computed here but
 * layout; {@link outwind.report.Figures} is the only place where a number becomes words, {@link
 * outwind.report.Reports} the only one that writes files.
 */
package outwind.report;
