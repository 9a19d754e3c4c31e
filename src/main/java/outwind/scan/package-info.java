/**
 * Where the board is in a dense scan, and how high its face is there.
 *
 * <p>Points come in the scanner's own unit and frame, z up. What is found is told in mm, in the frame of touch-offs: x
 * along the grain from 0 to the length, y across from 0 to the width, z up, from the bed where that was scanned too.
 * {@link outwind.scan.ScanFile} reads a file of points, as text or as PLY; {@link outwind.scan.Scan} is what it holds;
 * {@link outwind.scan.ScannedBoard} finds the board among the points and tells its face in cells.
 */
package outwind.scan;
