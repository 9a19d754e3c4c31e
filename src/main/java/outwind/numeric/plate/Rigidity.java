package outwind.numeric.plate;

/**
 * How hard an orthotropic plate is to bend, moment per unit width and unit curvature.
 *
 * <pre>
 *   Mx = −(Dx·w_xx + D1·w_yy),   My = −(Dy·w_yy + D1·w_xx),   Mxy = 2·Dxy·w_xy
 * </pre>
 * Source: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, chapter 11. An isotropic
 * plate has Dx = Dy = D, D1 = ν·D, Dxy = (1 − ν)·D/2.
 *
 * @param dx  against bending along x (N·mm), positive
 * @param dy  against bending along y (N·mm), positive
 * @param d1  what bending one way takes to stay flat the other way (N·mm), D1² under Dx·Dy
 * @param dxy against twisting (N·mm), positive
 */
public record Rigidity(double dx, double dy, double d1, double dxy) {

    public Rigidity {
        if (!(dx > 0 && dy > 0 && dxy > 0 && d1 * d1 < dx * dy) || !Double.isFinite(dx + dy + dxy)) {
            throw new IllegalArgumentException("plate needs positive rigidities and D1² under Dx·Dy, got Dx=" + dx
                + ", Dy=" + dy + ", D1=" + d1 + ", Dxy=" + dxy);
        }
    }
}
