/**
 * Boards as stock: everything known of one board.
 *
 * <p>Millimetres. {@link outwind.stock.Judgement} runs a board through the packages before this one, in order, and
 * holds what each of them found; reports read it and compute nothing. {@link outwind.stock.Stack} prices many boards;
 * {@link outwind.stock.BlankPlan} lays a cutting bill out on one, {@link outwind.stock.LengthsPlan} crosscuts it alone
 * into {@link outwind.stock.EqualLengths}, which may save a board that falls short, and
 * {@link outwind.stock.StackPlan} chooses the boards of a stack to cut a bill from.
 */
package outwind.stock;
