/**
 * Outwind for other programs: a board in, what is known of it out. Three lines judge a file:
 *
 * <pre>{@code
 *     Board board = Outwind.read(Path.of("hall-table.csv"));
 *     Judgement judgement = Outwind.judge(board);
 *     System.out.print(Outwind.report(judgement));
 * }</pre>
 *
 * <p>A whole program, for a board that a machine has read:
 *
 * <pre>{@code
 * import outwind.Outwind;
 * import outwind.board.Board;
 * import outwind.flatten.ThicknessRange;
 * import outwind.judge.Judgement;
 * import outwind.setup.Shim;
 *
 * public final class Shelf {
 *     public static void main(String[] args) {
 *         Board shelf = Board.builder("shelf", 900, 200).thickness(27.4).target(22)
 *             .reading(20, 20, 0.0).reading(450, 20, 0.9).reading(880, 20, 0.1)
 *             .reading(20, 180, 0.8).reading(450, 180, 1.2).reading(880, 180, -0.6)
 *             .build();
 *         Judgement judgement = Outwind.judge(shelf);
 *
 *         ThicknessRange thickness = judgement.outlook().levelled();
 *         System.out.printf("%s: finishes at %.1f mm, 90 %% range %.1f to %.1f mm%n",
 *             judgement.verdict(), thickness.median(), thickness.low(), thickness.high());
 *         for (Shim shim : judgement.setup().shims()) {
 *             System.out.printf("shim of %.1f mm at x %.0f, y %.0f mm%n", shim.height(), shim.x(), shim.y());
 *         }
 *         System.out.printf("cut %.1f mm off face A%n", judgement.cuts().faceA().depth());
 *     }
 * }
 * }</pre>
 *
 * <p>{@link outwind.Outwind} is the whole entrance. {@link outwind.board.Board} is what goes in,
 * {@link outwind.forecast.JudgeOptions} what may be asked beside it, {@link outwind.judge.Judgement} what comes out.
 * Lengths are in mm: x runs along the grain, y across, z up. Cautions that the reports print hold for what other
 * programs make of these figures as well: the machine maker's manual, local rules and trained practice come first.
 */
package outwind;
