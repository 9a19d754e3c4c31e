package outwind.numeric.plate;

/**
 * Stiffness of one rectangle of a bent plate: the element of Adini, Clough and Melosh with twelve freedoms, w, w_x and
 * w_y at each corner.
 *
 * <pre>
 *   K = ∫∫ Bᵀ·D·B dx dy,   B·q = (w_xx, w_yy, 2·w_xy),   D = [Dx D1 0; D1 Dy 0; 0 0 Dxy]
 * </pre>
 * Neighbours agree in w but not quite in slope, so that deflections come out too great on a coarse mesh: the safe side
 * for a question of stiffness.
 *
 * <p>Source: O. C. Zienkiewicz, The Finite Element Method, chapter on plate bending, the rectangular element with
 * corner nodes; shape functions with ξ, η from −1 to 1.
 */
final class PlateElement {

    static final int FREEDOMS = 12;

    /** Corners in the order of their freedoms. */
    private static final int[] XI = {-1, 1, 1, -1};
    private static final int[] ETA = {-1, -1, 1, 1};

    /** Three Gauss points each way are exact: the integrand has degree four at most. */
    private static final double[] GAUSS = {-Math.sqrt(0.6), 0, Math.sqrt(0.6)};
    private static final double[] WEIGHT = {5.0 / 9, 8.0 / 9, 5.0 / 9};

    private PlateElement() { }

    /**
     * @param lengthX side along x (mm), positive
     * @param lengthY side along y (mm), positive
     * @return 12 × 12, corners (0, 0), (x, 0), (x, y), (0, y), each with w (mm), w_x and w_y
     */
    static double[][] stiffness(double lengthX, double lengthY, Rigidity rigidity) {
        double a = lengthX / 2;
        double b = lengthY / 2;
        double[][] k = new double[FREEDOMS][FREEDOMS];
        for (int gx = 0; gx < 3; gx++) {
            for (int gy = 0; gy < 3; gy++) {
                addAt(k, curvatures(GAUSS[gx], GAUSS[gy], a, b), WEIGHT[gx] * WEIGHT[gy] * a * b, rigidity);
            }
        }
        return k;
    }

    private static void addAt(double[][] k, double[][] curvature, double area, Rigidity rigidity) {
        double[] xx = curvature[0];
        double[] yy = curvature[1];
        double[] xy = curvature[2];
        for (int i = 0; i < FREEDOMS; i++) {
            double momentX = area * (rigidity.dx() * xx[i] + rigidity.d1() * yy[i]);
            double momentY = area * (rigidity.d1() * xx[i] + rigidity.dy() * yy[i]);
            double torque = area * 4 * rigidity.dxy() * xy[i];
            for (int j = 0; j < FREEDOMS; j++) {
                k[i][j] += momentX * xx[j] + momentY * yy[j] + torque * xy[j];
            }
        }
    }

    /** Second derivatives w_xx, w_yy, w_xy at (ξ, η) for each freedom in turn. */
    private static double[][] curvatures(double xi, double eta, double a, double b) {
        double[][] curvature = new double[3][FREEDOMS];
        for (int corner = 0; corner < 4; corner++) {
            int s = XI[corner];
            int t = ETA[corner];
            double u = s * xi;
            double v = t * eta;
            int w = 3 * corner;
            curvature[0][w] = -3 * u * (1 + v) / 4 / (a * a);
            curvature[1][w] = -3 * v * (1 + u) / 4 / (b * b);
            curvature[2][w] = s * t * (4 - 3 * u * u - 3 * v * v) / 8 / (a * b);
            curvature[0][w + 1] = s * (3 * u + 1) * (1 + v) / 4 / a;
            curvature[2][w + 1] = t * (3 * u * u + 2 * u - 1) / 8 / b;
            curvature[1][w + 2] = t * (3 * v + 1) * (1 + u) / 4 / b;
            curvature[2][w + 2] = s * (3 * v * v + 2 * v - 1) / 8 / a;
        }
        return curvature;
    }
}
