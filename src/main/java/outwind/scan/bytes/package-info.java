/**
 * How a file of millions of points is read in blocks, on all cores, with numbers parsed in place. Read {@link
 * outwind.scan.bytes.BlockReader} first, then {@link outwind.scan.bytes.NumberScanner}.
 */
package outwind.scan.bytes;
