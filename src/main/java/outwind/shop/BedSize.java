package outwind.shop;

import outwind.board.Quantity;

/**
 * The bed of a machine: the largest board that its cutter can go over, past every edge.
 *
 * @param length along the machine's longer way (mm)
 * @param width  across (mm)
 */
public record BedSize(double length, double width) {

    public BedSize {
        Quantity.LENGTH.require(length);
        Quantity.LENGTH.require(width);
    }

    /** True if a board of this size can be cut in one set-up, lying either way. */
    public boolean holds(double boardLength, double boardWidth) {
        return boardLength <= length && boardWidth <= width || boardLength <= width && boardWidth <= length;
    }
}
