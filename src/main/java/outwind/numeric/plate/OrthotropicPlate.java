package outwind.numeric.plate;

import java.util.Arrays;

/**
 * Bending of a thin rectangular plate whose stiffness differs along and across.
 *
 * <pre>
 *   Dx·w_xxxx + 2·(D1 + 2·Dxy)·w_xxyy + Dy·w_yyyy = q
 *   energy ½∫∫ (Dx·w_xx² + 2·D1·w_xx·w_yy + Dy·w_yy² + 4·Dxy·w_xy²) dx dy
 * </pre>
 * Finite elements on a grid of lines; every node carries w, w_x and w_y. Edges are free. One factorisation and one
 * pass of substitution per node give the whole compliance matrix; every question of supports after that is small and
 * dense. Thin: shear is left out, which in a beam of thickness h and span L is 1.2·(E/G)·(h/L)² of its deflection.
 *
 * <p>Source: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, chapter 11 (equation);
 * O. C. Zienkiewicz, The Finite Element Method, chapter on plate bending (element).
 */
public final class OrthotropicPlate {

    private final double[] x;
    private final double[] y;
    private final Rigidity rigidity;

    private OrthotropicPlate(double[] x, double[] y, Rigidity rigidity) {
        this.x = x;
        this.y = y;
        this.rigidity = rigidity;
    }

    /**
     * Deflections per unit force, with the corners (0, 0), (length, 0) and (0, width) held.
     *
     * @param x lines of the mesh along x (mm), from 0 rising to the length, at least 2; not modified
     * @param y lines of the mesh along y (mm), from 0 rising to the width, at least 2; the fewer the cheaper
     */
    public static Compliance compliance(double[] x, double[] y, Rigidity rigidity) {
        requireRising(x);
        requireRising(y);
        return new OrthotropicPlate(x, y, rigidity).compliance();
    }

    private static void requireRising(double[] lines) {
        boolean rising = lines.length >= 2 && lines[0] == 0 && Double.isFinite(lines[lines.length - 1]);
        for (int i = 1; rising && i < lines.length; i++) {
            rising = lines[i] > lines[i - 1];
        }
        if (!rising) {
            throw new IllegalArgumentException("lines of a mesh must start at 0 and rise, got "
                + Arrays.toString(lines));
        }
    }

    private Compliance compliance() {
        int across = y.length;
        int nodes = x.length * across;
        BandedCholesky cholesky = factor();
        double[][] deflection = new double[nodes][nodes];
        double[] column = new double[3 * nodes];
        for (int p = 0; p < nodes; p++) {
            if (isHeld(p)) {
                continue;
            }
            cholesky.solveUnit(3 * p, column);
            for (int i = p; i < nodes; i++) {
                deflection[p][i] = column[3 * i];
                deflection[i][p] = column[3 * i];
            }
        }
        double[] nodeX = new double[nodes];
        double[] nodeY = new double[nodes];
        for (int i = 0; i < nodes; i++) {
            nodeX[i] = x[i / across];
            nodeY[i] = y[i % across];
        }
        return new Compliance(nodeX, nodeY, deflection);
    }

    private boolean isHeld(int node) {
        return node == 0 || node == y.length - 1 || node == (x.length - 1) * y.length;
    }

    private BandedCholesky factor() {
        int across = y.length;
        int n = 3 * x.length * across;
        // The far corner of an element lies across + 1 nodes on.
        int band = 3 * (across + 1) + 2;
        double[] lower = new double[n * (band + 1)];
        int[] freedom = new int[PlateElement.FREEDOMS];
        for (int j = 0; j < across - 1; j++) {
            for (int i = 0; i < x.length - 1; i++) {
                double[][] k = PlateElement.stiffness(x[i + 1] - x[i], y[j + 1] - y[j], rigidity);
                int[] corners = {i * across + j, (i + 1) * across + j, (i + 1) * across + j + 1, i * across + j + 1};
                for (int f = 0; f < freedom.length; f++) {
                    freedom[f] = 3 * corners[f / 3] + f % 3;
                }
                add(lower, band, k, freedom);
            }
        }
        for (int node = 0; node < n / 3; node++) {
            if (isHeld(node)) {
                // A freedom that stays zero is one that nothing couples to.
                lower[3 * node * (band + 1) + band] = 1;
            }
        }
        return BandedCholesky.of(lower, n, band);
    }

    private void add(double[] lower, int band, double[][] k, int[] freedom) {
        for (int f = 0; f < freedom.length; f++) {
            for (int g = 0; g < freedom.length; g++) {
                int row = freedom[f];
                int column = freedom[g];
                boolean held = row % 3 == 0 && isHeld(row / 3) || column % 3 == 0 && isHeld(column / 3);
                if (column <= row && !held) {
                    lower[row * (band + 1) + band - row + column] += k[f][g];
                }
            }
        }
    }
}
