/**
 * What a stack of boards is worth, and which of them to cut a bill from. Millimetres. Read {@link
 * outwind.stock.Stack} first, then {@link outwind.stock.StackPlan}.
 */
package outwind.stock;
