package outwind.blanks;

import outwind.surface.Region;

/**
 * One straight cut.
 *
 * @param crosscut true across the grain, false along it
 * @param section  the section that it parts, from 1; 0 if it goes right through the board
 * @param blank    the blank that it trims, from 1 as counted over all sections; 0 if it goes through a section or board
 * @param within   what it parts (mm)
 * @param bears    where that lies against fence or stop: its near side, or the further side of the cut before (mm)
 * @param from     nearer side of the kerf, along x for a crosscut, else along y (mm)
 * @param to       further side of it (mm)
 * @param before   the section or blank that comes off between fence and blade, from 1; 0 if that is waste
 * @param behind   the section or blank that begins at the further side of the kerf, from 1; 0 if that is waste
 */
public record SawCut(boolean crosscut, int section, int blank, Region within, double bears, double from, double to,
        int before, int behind) {

    /** A cut of the same kind elsewhere. */
    SawCut at(double edge, double begin, double end, int kept, int next) {
        return new SawCut(crosscut, section, blank, within, edge, begin, end, kept, next);
    }

    /** From fence or stop to the nearer side of the blade (mm), whatever was cut off before. */
    public double setting() {
        return from - bears;
    }

    /** Which sides of the kerf are good wood, so that the line is sawn on its other side. */
    public Keeps keeps() {
        return before == 0 ? Keeps.BEHIND : behind == 0 ? Keeps.BEFORE : Keeps.BOTH;
    }

    /** Where a blank or section lies against a cut. */
    public enum Keeps {
        BEFORE, BEHIND, BOTH
    }
}
