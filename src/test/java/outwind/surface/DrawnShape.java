package outwind.surface;

/** A board for tests that look at drawn boards alone; whatever else is asked of it fails. */
public interface DrawnShape extends BoardShape {

    @Override
    default double topAt(double x, double y) {
        throw onlyDrawn();
    }

    @Override
    default double undersideAt(double x, double y) {
        throw onlyDrawn();
    }

    @Override
    default SampledBoard at(Places places) {
        throw onlyDrawn();
    }

    @Override
    default double topDeviationAt(double x, double y) {
        throw onlyDrawn();
    }

    private static UnsupportedOperationException onlyDrawn() {
        return new UnsupportedOperationException("only drawn boards are looked at");
    }
}
