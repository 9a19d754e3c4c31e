/**
 * Where the board is in a dense scan, and how high its face is there.
 *
 * <p>Points come in the scanner's own unit and frame, z up. The result is in mm, in the frame of the readings: x
 * along the grain from 0 to the length, y across from 0 to the width, z up, from the bed where that was scanned too.
 * Read {@link outwind.scan.find.ScannedBoard} first.
 */
package outwind.scan.find;
