/**
 * What scripts read. Read {@link outwind.report.json.JsonReport} first.
 */
package outwind.report.json;
