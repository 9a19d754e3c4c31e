package outwind.surface;

/**
 * Heights or thicknesses at places, each with its noise.
 *
 * @param x             mm along the grain, length n
 * @param y             mm across, length n
 * @param z             observed (mm), length n
 * @param noiseVariance of each (mm²), length n, above zero
 */
record Observations(double[] x, double[] y, double[] z, double[] noiseVariance) {

    int size() {
        return x.length;
    }
}
