package outwind.scan.bytes;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines of a file in blocks, and how many each block has.
 *
 * @param blocks    the lines
 * @param firstLine number of each block's first line, and behind them that of the line after the last
 */
public record CountedLines(LineBlocks blocks, long[] firstLine) {

    /**
     * Counts them.
     *
     * @param from      where the first line begins (bytes)
     * @param firstLine its number in the file
     */
    public static CountedLines of(ScanBytes file, long from, long firstLine, ReadingPlan plan) throws IOException {
        LineBlocks blocks = new LineBlocks(file, from, plan.blockSize());
        int[] lines = new int[blocks.count()];
        List<BlockReader.Worker> hands = new ArrayList<>();
        for (int i = 0; i < plan.hands(lines.length); i++) {
            LineBlocks.Block block = blocks.block();
            hands.add(piece -> {
                lines[piece] = block.lines(piece);
                return true;
            });
        }
        BlockReader.work(blocks.count(), hands, new PacedProgress(Progress.UNSEEN, 0));
        long[] first = new long[lines.length + 1];
        first[0] = firstLine;
        for (int i = 0; i < lines.length; i++) {
            first[i + 1] = first[i] + lines[i];
        }
        return new CountedLines(blocks, first);
    }

    /** Number of the line after the last. */
    public long endLine() {
        return firstLine[firstLine.length - 1];
    }
}
