package outwind.cli;

import outwind.board.Units;
import outwind.board.Wedge;

/**
 * A tapered shim as typed on the command line.
 *
 * @param length from tip to butt
 * @param butt   thickness at the butt
 */
record WedgeOption(LengthOption length, LengthOption butt) {

    /** The wedge in mm. */
    Wedge in(Units units) {
        return new Wedge(length.in(units), butt.in(units));
    }
}
