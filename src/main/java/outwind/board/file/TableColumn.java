package outwind.board.file;

/** A column that a table may have; its kinds are constants of an enum. */
public interface TableColumn extends Worded {

    /** Whether a unit may stand behind its name. */
    default boolean isLength() {
        return true;
    }

    /** Whether the table is worth nothing without it. */
    boolean isNeeded();

    /** Whether its cells hold what was measured, so that they may say that nothing was. */
    default boolean isReading() {
        return false;
    }
}
