package outwind.numeric.plate;

/**
 * How far each node of a plate moves for a force at each other, while three corners are held.
 *
 * <p>With three points held a plate is statically determinate: under forces in balance the corners carry nothing, and
 * the plate may as well float. So
 * <pre>
 *   w = C·f + a + b·x + c·y,   Σf = Σf·x = Σf·y = 0
 * </pre>
 * answers for any other set of supports, with a, b, c and the reactions among f found from a few equations.
 *
 * @param x          of each node (mm), length n; node i·across + j lies on line i of x and line j of y
 * @param y          of each node (mm), length n
 * @param deflection C, n × n, symmetric (mm per N)
 */
public record Compliance(double[] x, double[] y, double[][] deflection) {

    /** Number of nodes. */
    public int size() {
        return x.length;
    }

    /**
     * The same plate with its three corners on springs instead of held, so that it can tip.
     *
     * <p>On springs soft enough to carry nothing that matters, the matrix is positive definite and needs no equations
     * of balance: supports that can only push are then a plain complementarity problem with one answer.
     *
     * @param softness of each spring (mm per N), not negative
     */
    public Compliance onSprings(double softness) {
        int n = size();
        double length = x[n - 1];
        double width = y[n - 1];
        double[][] sprung = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                // A unit force at j shares out over the corners (0, 0), (length, 0), (0, width) as on a plane; what
                // they yield carries node i down by the same shares.
                double origin = (1 - x[i] / length - y[i] / width) * (1 - x[j] / length - y[j] / width);
                double shares = origin + x[i] * x[j] / (length * length) + y[i] * y[j] / (width * width);
                sprung[i][j] = deflection[i][j] + softness * shares;
                sprung[j][i] = sprung[i][j];
            }
        }
        return new Compliance(x, y, sprung);
    }
}
