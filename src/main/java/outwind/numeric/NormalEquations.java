package outwind.numeric;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM;

/** G·b = g for some of the columns of a normal matrix; the coefficients of the others are zero. */
final class NormalEquations {

    private final int[] columns;
    private final int all;
    /** L of G = L·Lᵀ. */
    private final DMatrixRMaj lower;

    /** @param columns numbers of the columns that count, ascending; G must be positive definite in them */
    NormalEquations(double[][] normal, int[] columns) {
        this.columns = columns;
        this.all = normal.length;
        DMatrixRMaj kept = new DMatrixRMaj(columns.length, columns.length);
        for (int j = 0; j < columns.length; j++) {
            for (int k = 0; k < columns.length; k++) {
                kept.set(j, k, normal[columns[j]][columns[k]]);
            }
        }
        CholeskyDecompositionInner_DDRM decomposition = new CholeskyDecompositionInner_DDRM(true);
        if (!decomposition.decompose(kept)) {
            throw new IllegalStateException("columns that were distinguished have no positive definite normal matrix");
        }
        this.lower = decomposition.getT(null);
    }

    /** b for a right-hand side over all columns; zero where a column does not count. */
    double[] solve(double[] right) {
        double[] kept = kept(right);
        TriangularSolver_DDRM.solveL(lower.data, kept, columns.length);
        TriangularSolver_DDRM.solveTranL(lower.data, kept, columns.length);
        double[] solution = new double[all];
        for (int j = 0; j < columns.length; j++) {
            solution[columns[j]] = kept[j];
        }
        return solution;
    }

    /** The values of the columns that count. */
    double[] kept(double[] values) {
        double[] kept = new double[columns.length];
        for (int j = 0; j < columns.length; j++) {
            kept[j] = values[columns[j]];
        }
        return kept;
    }

    /** G⁻¹ in the columns that count. */
    double[][] inverse() {
        DMatrixRMaj half = CommonOps_DDRM.identity(columns.length);
        TriangularSolver_DDRM.solveL(lower.data, half.data, columns.length, columns.length);
        DMatrixRMaj inverse = new DMatrixRMaj(columns.length, columns.length);
        CommonOps_DDRM.multInner(half, inverse);
        double[][] rows = new double[columns.length][columns.length];
        for (int j = 0; j < rows.length; j++) {
            for (int k = 0; k < rows.length; k++) {
                rows[j][k] = inverse.get(j, k);
            }
        }
        return rows;
    }
}
