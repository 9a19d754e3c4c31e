package outwind.numeric.plane;

/**
 * How a program over many points is taken in portions. None of it changes the answer, only what it costs.
 *
 * @param together points of one set up to which all are looked at in every exchange
 * @param sample   points that are looked at first where there are more
 * @param block    points that share one bound
 * @param stride   of the blocks one in so many is read before all are
 */
record Portions(int together, int sample, int block, int stride) {

    /** Chosen by measuring, from 10⁴ to 10⁷ points in several orders; from 10⁵ on half or twice hardly matters. */
    static final Portions USUAL = new Portions(4096, 1024, 512, 16);
}
