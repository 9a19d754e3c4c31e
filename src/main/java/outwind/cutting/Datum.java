package outwind.cutting;

/** What the height of the last pass is counted from when the cutter is set. */
public enum Datum {

    /** Zero on the bed; the last pass is a height above it. */
    BED,

    /** Zero on the highest spot of the face; the last pass is a depth below it. */
    HIGHEST_SPOT
}
