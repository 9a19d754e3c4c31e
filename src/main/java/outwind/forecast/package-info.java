/**
 * What can be said of a board before it is set down: its faces, its thickness and how sure. All that pricing a stack
 * needs. Read {@link outwind.forecast.Forecast} first; {@link outwind.forecast.JudgeOptions} is what was asked.
 */
package outwind.forecast;
