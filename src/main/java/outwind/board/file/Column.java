package outwind.board.file;

/** A column that a table of readings may have. */
public enum Column implements TableColumn {
    X, Y, Z,

    /** Measured downwards: z with its sign turned round. */
    DEPTH,

    THICKNESS, FACE, NOTE;

    @Override
    public boolean isLength() {
        return this != FACE && this != NOTE;
    }

    @Override
    public boolean isNeeded() {
        return this == X || this == Y;
    }

    @Override
    public boolean isReading() {
        return this == Z || this == DEPTH || this == THICKNESS;
    }
}
