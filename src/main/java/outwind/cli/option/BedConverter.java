package outwind.cli.option;

/** Reads the size of a bed. */
final class BedConverter extends TwoLengths.Converter {

    BedConverter() {
        super("a bed such as 1500mmx600mm", "Write its length, an x, and its width.");
    }
}
