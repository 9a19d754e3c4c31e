/**
 * The sheets and charts a person takes to the machine. Read {@link outwind.report.sheet.BoardSheet} first.
 */
package outwind.report.sheet;
