package outwind.surface.trend;

import static outwind.surface.trend.Term.CONSTANT;
import static outwind.surface.trend.Term.X;
import static outwind.surface.trend.Term.XX;
import static outwind.surface.trend.Term.XY;
import static outwind.surface.trend.Term.Y;
import static outwind.surface.trend.Term.YY;

import java.util.List;

/** The three shapes that a face is compared with, each holding the one before it. */
public enum TrendModel {
    /** Flat, perhaps tilted: 1, x, y. */
    PLANE(CONSTANT, X, Y),
    /** Flat but for twist: 1, x, y, xy. */
    TWISTED(CONSTANT, X, Y, XY),
    /** Twist, bow and cup: 1, x, y, xy, x², y². */
    CURVED(CONSTANT, X, Y, XY, XX, YY);

    private final List<Term> terms;

    TrendModel(Term... terms) {
        this.terms = List.of(terms);
    }

    /** Terms of the model, the constant first. */
    public List<Term> terms() {
        return terms;
    }
}
