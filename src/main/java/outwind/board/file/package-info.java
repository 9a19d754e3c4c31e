/**
 * How a person's files are read and written: boards, cutting bills, recordings and the shop. Read {@link
 * outwind.board.file.BoardFile} first; {@link outwind.board.file.BillFile}, {@link outwind.board.file.ShopFile} and
 * {@link outwind.board.file.Recording} stand beside it.
 */
package outwind.board.file;
