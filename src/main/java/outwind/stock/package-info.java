/**
 * Boards as stock: everything known of one board.
 *
 * <p>Millimetres. {@link outwind.stock.Judgement} runs a board through the packages before this one, in order, and
 * holds what each of them found; reports read it and compute nothing.
 */
package outwind.stock;
