/**
 * What stands in a text file of rows: lines, cells and the faults found in them, each with its line and column. Read
 * {@link outwind.board.text.Sheet} first, then {@link outwind.board.text.Row} and {@link
 * outwind.board.text.FaultList}.
 */
package outwind.board.text;
