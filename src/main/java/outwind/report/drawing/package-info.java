/**
 * The tools that sheets are drawn with: paper, letters, frames, scales, labels that keep clear of each other. Read
 * {@link outwind.report.drawing.Paper} first, then {@link outwind.report.drawing.Frame} and {@link
 * outwind.report.drawing.Labels}.
 */
package outwind.report.drawing;
