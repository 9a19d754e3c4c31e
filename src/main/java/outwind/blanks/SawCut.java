package outwind.blanks;

import outwind.surface.Region;

/**
 * One straight cut.
 *
 * @param crosscut true across the grain, false along it
 * @param section  the section that it parts, from 1; 0 if it goes right through the board
 * @param blank    the blank that it trims, from 1 as counted over all sections; 0 if it goes through a section or board
 * @param within   what it parts (mm)
 * @param from     nearer side of the kerf, along x for a crosscut, else along y (mm)
 * @param to       further side of it (mm)
 * @param keeps    which sides of the kerf are good wood, so that the line is sawn on its other side
 */
public record SawCut(boolean crosscut, int section, int blank, Region within, double from, double to, Keeps keeps) {

    /** A cut of the same kind elsewhere. */
    SawCut at(double begin, double end, Keeps kept) {
        return new SawCut(crosscut, section, blank, within, begin, end, kept);
    }

    /** Where a blank or section lies against a cut. */
    public enum Keeps {
        BEFORE, BEHIND, BOTH
    }
}
