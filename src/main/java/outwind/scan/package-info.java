/**
 * Dense scans: millions of points read, and the board found among them.
 */
package outwind.scan;
