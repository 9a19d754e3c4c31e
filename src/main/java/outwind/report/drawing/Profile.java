package outwind.report.drawing;

import java.util.Arrays;
import outwind.judge.Judgement;
import outwind.numeric.plane.Plane;

/**
 * A section through the middle of the board as it stands on the bed.
 *
 * @param place     along the section from 0 to the end (mm), length n
 * @param top       height of face A above the bed (mm), length n
 * @param underside height of the underside above the bed (mm), length n
 */
public record Profile(double[] place, double[] top, double[] underside) {

    /** Places along a section; straight lines between them look smooth. */
    private static final int PLACES = 121;

    /** Along the grain at half the width. */
    public static Profile lengthwise(Judgement judgement) {
        double length = judgement.board().length();
        double middle = judgement.board().width() / 2;
        return along(judgement, length, 0, middle, 1, 0);
    }

    /** Across the grain at half the length. */
    public static Profile crosswise(Judgement judgement) {
        double width = judgement.board().width();
        double middle = judgement.board().length() / 2;
        return along(judgement, width, middle, 0, 0, 1);
    }

    private static Profile along(Judgement judgement, double length, double x, double y, double dx, double dy) {
        Plane bed = judgement.setup().bed();
        double[] place = new double[PLACES];
        double[] top = new double[PLACES];
        double[] underside = new double[PLACES];
        for (int i = 0; i < PLACES; i++) {
            place[i] = length * i / (PLACES - 1);
            double atX = x + dx * place[i];
            double atY = y + dy * place[i];
            top[i] = judgement.shape().topAt(atX, atY) - bed.at(atX, atY);
            underside[i] = judgement.shape().undersideAt(atX, atY) - bed.at(atX, atY);
        }
        return new Profile(place, top, underside);
    }

    public double length() {
        return place[place.length - 1];
    }

    double highest() {
        return Arrays.stream(top).max().orElseThrow();
    }

    double lowest() {
        return Arrays.stream(underside).min().orElseThrow();
    }
}
