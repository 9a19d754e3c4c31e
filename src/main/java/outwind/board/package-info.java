/**
 * What did a person measure? A {@link outwind.board.Board} holds one rough board as it was touched off and
 * calipered: its size, the {@link outwind.board.Reading}s on its faces, and what its owner said about price, target
 * and defects. {@link outwind.board.file.BoardFile} reads it from a text file and answers either with a board or with
 * every {@link outwind.board.Fault} in the file at once, each with its place and its cure.
 *
 * <p>Everything inside is in mm: x along the grain from 0 to the length, y across from 0 to the width, z up. Inches
 * live only in the text that is read, see {@link outwind.board.Length} and {@link outwind.board.Units}.
 */
package outwind.board;
