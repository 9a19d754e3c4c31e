/**
 * How files are written so that nothing is lost. Read {@link outwind.report.files.Reports} first, then {@link
 * outwind.report.files.RecordingFile}.
 */
package outwind.report.files;
