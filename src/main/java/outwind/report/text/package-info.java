/**
 * What is read in a terminal or a text file. Read {@link outwind.report.text.TextReport} first.
 */
package outwind.report.text;
