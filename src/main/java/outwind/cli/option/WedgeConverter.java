package outwind.cli.option;

/** Reads the size of a tapered shim. */
final class WedgeConverter extends TwoLengths.Converter {

    WedgeConverter() {
        super("a wedge such as 150mmx12mm", "Write its length, an x, and its thickness at the butt.");
    }
}
