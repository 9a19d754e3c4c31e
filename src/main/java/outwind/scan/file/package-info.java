/**
 * What is in a file of points, as text or as PLY. Read {@link outwind.scan.file.ScanFile} first; {@link
 * outwind.scan.file.Scan} is what it gives.
 */
package outwind.scan.file;
