/**
 * Everything known of one board. {@link outwind.judge.Judgement} runs a board through the rooms before this one, in
 * order, and holds what each of them found; reports read it and compute nothing.
 */
package outwind.judge;
