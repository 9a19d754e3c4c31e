package outwind.board.file;

import java.util.List;

/** A column that a cutting bill may have. */
enum BillColumn implements TableColumn {
    NAME, LENGTH, WIDTH, THICKNESS, QUANTITY, VALUE, ANY_GRAIN, SPECIES, GRADE;

    // Common practice.
    @Override
    public List<String> otherWords() {
        return switch (this) {
            case NAME -> List.of("part", "item");
            case LENGTH -> List.of("l");
            case WIDTH -> List.of("w");
            case THICKNESS -> List.of("t");
            case QUANTITY -> List.of("qty", "pieces", "pcs");
            case SPECIES -> List.of("wood");
            default -> List.of();
        };
    }

    @Override
    public boolean isLength() {
        return this == LENGTH || this == WIDTH || this == THICKNESS;
    }

    @Override
    public boolean isNeeded() {
        return isLength() || this == NAME || this == QUANTITY;
    }
}
