package outwind.scan.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import outwind.board.CellHeights;
import outwind.board.file.ScanHeader;

/** What is said about how a board was found in its scan: what was assumed, moved and left out. */
final class FindingNotes {

    /** A turn (degrees) and a shift (mm) that are worth a word. */
    private static final double TURN = 0.05;
    private static final double SHIFT = 2;

    /** A side found may differ from the one stated by this share before it is worth a word. */
    private static final double NOTABLE = 0.02;

    /** The face may stand this much less above the bed than the board is thick (mm). */
    private static final double SLACK = 0.5;

    private final ScanHeader header;
    private final boolean overBed;
    private final List<String> sentences = new ArrayList<>();

    FindingNotes(ScanHeader header, boolean overBed) {
        this.header = header;
        this.overBed = overBed;
    }

    List<String> sentences() {
        return sentences;
    }

    /** How it lay, and how large it is. */
    void onPlace(Alignment squared, boolean levelledByFace) {
        if (levelledByFace) {
            sentences.add("The scan was tilted and shows no bed. It is laid level by the face, and \"as measured\" means"
                + " that position.");
        }
        if (squared.found().isEmpty()) {
            return;
        }
        Outline outline = squared.found().get();
        double degrees = Math.toDegrees(squared.angle());
        if (Math.abs(degrees) > TURN || Math.hypot(outline.fromX(), outline.fromY()) > SHIFT) {
            sentences.add(String.format(Locale.ROOT, "The scan was turned by %.1f degrees or moved. It is put back"
                + " with its corner at 0.",
                Math.abs(degrees) < TURN ? 0 : degrees));
        }
        size("length", header.length(), outline.length());
        size("width", header.width(), outline.width());
    }

    private void size(String side, OptionalDouble stated, double found) {
        if (stated.isEmpty()) {
            sentences.add("No " + side + " is stated: " + header.shown(found) + " is used, from the outline of the"
                + " face.");
        } else if (Math.abs(found - stated.getAsDouble()) > NOTABLE * stated.getAsDouble()) {
            sentences.add("In the scan the " + side + " is " + header.shown(found) + ". The "
                + header.shown(stated.getAsDouble()) + " stated are centred on it.");
        }
    }

    /** What the bed tells of the thickness. */
    void onThickness(double lowest) {
        if (header.thickness().isEmpty()) {
            sentences.add("No thickness is stated: " + header.shown(lowest) + " is used, the lowest point of the face"
                + " above the bed. That is right if the board lay on the bed without shims.");
        } else if (overBed && lowest < header.thickness().getAsDouble() - SLACK) {
            sentences.add("The face is only " + header.shown(lowest) + " above the bed at its lowest, less than the thickness of "
                + header.shown(header.thickness().getAsDouble()) + ". Check both.");
        }
    }

    /** What was left out. */
    void onPoints(long all, long unmeasured, int astray, int[] leftOut, int flying) {
        List<String> parts = new ArrayList<>();
        part(parts, unmeasured, "without a whole x, y and z");
        part(parts, leftOut[-CellPoints.BELOW], overBed ? "on the bed or below the face" : "well below the face");
        part(parts, leftOut[-CellPoints.ABOVE], "well above it, such as clamps");
        part(parts, leftOut[-CellPoints.BEYOND], "beyond its sides");
        part(parts, astray, "far away");
        part(parts, flying, "alone in the air");
        if (!parts.isEmpty()) {
            sentences.add("Of " + count(all) + " points left out: " + String.join(", ", parts) + ".");
        }
    }

    private static void part(List<String> parts, long points, String where) {
        if (points > 0) {
            parts.add(count(points) + " " + where);
        }
    }

    private static String count(long points) {
        return String.format(Locale.ROOT, "%,d", points).replace(',', '\u00a0');
    }

    /** How fine the cells are, and what was not scanned. */
    void onCells(CellHeights cells) {
        sentences.add("The face is averaged in cells of " + header.shown(cells.cellX()) + " by "
            + header.shown(cells.cellY()) + ".");
        double share = 1 - cells.measuredShare();
        if (share > 0) {
            sentences.add(String.format(Locale.ROOT, "%s\u00a0%% of the cells hold no point; there it is filled in"
                + " from around.", share < 0.01 ? "Less than 1" : String.format(Locale.ROOT, "%.0f", 100 * share)));
        }
    }
}
