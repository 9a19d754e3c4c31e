package outwind.report.sheet;

import java.util.stream.DoubleStream;
import outwind.judge.Judgement;

/**
 * What comes off face A along one line of the board, end to end.
 *
 * @param place along the grain from 0 to the end (mm), length n
 * @param depth face A above the plane it is cut to (mm), length n; negative where the cutter meets air
 */
record EdgeDepths(double[] place, double[] depth) {

    /** Places at which the depth is written: both ends, the middle and the quarters. */
    static final int STATIONS = 5;

    private static final int BETWEEN = 30;
    private static final int PLACES = (STATIONS - 1) * BETWEEN + 1;

    /** Along the grain at a place across (mm). */
    static EdgeDepths along(Judgement judgement, double y) {
        double[] place = new double[PLACES];
        double[] depth = new double[PLACES];
        for (int i = 0; i < PLACES; i++) {
            place[i] = judgement.board().length() * i / (PLACES - 1);
            depth[i] = judgement.depthAt(place[i], y);
        }
        return new EdgeDepths(place, depth);
    }

    /** Where a station lies along the grain (mm). */
    double stationAt(int station) {
        return place[station * BETWEEN];
    }

    /** What comes off there (mm). */
    double stationDepth(int station) {
        return depth[station * BETWEEN];
    }

    /** The most that comes off (mm); 0 where nothing does. */
    double most() {
        return Math.max(0, DoubleStream.of(depth).max().orElseThrow());
    }

    /** How far the face dips under the cut (mm), as a number below 0; 0 where it does not. */
    double least() {
        return Math.min(0, DoubleStream.of(depth).min().orElseThrow());
    }
}
