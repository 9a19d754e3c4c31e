"""Writes minimum_zone.csv: the zone of point clouds by SciPy's HiGHS, every point a constraint.

    python3 minimum_zone.py > minimum_zone.csv
"""
import numpy as np
import scipy
from scipy.optimize import linprog

from point_cloud import KINDS, point_cloud


def width(x, y, z):
    """min c1 - c2 with a u + b v + c1 >= z >= a u + b v + c2, u and v from -1 to 1."""
    u = (x - (x.min() + x.max()) / 2) / np.ptp(x) * 2
    v = (y - (y.min() + y.max()) / 2) / np.ptp(y) * 2
    one, nought = np.ones_like(z), np.zeros_like(z)
    rows = np.vstack((np.column_stack((-u, -v, -one, nought)), np.column_stack((u, v, nought, one))))
    answer = linprog([0, 0, 1, -1], A_ub=rows, b_ub=np.concatenate((-z, z)), bounds=(None, None), method="highs-ds",
                     options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10})
    assert answer.success, answer.message
    return answer.fun


print(f"# SciPy {scipy.__version__}, linprog highs-ds, feasibility tolerances 1e-10; width in mm")
print("kind,points,width")
for n in (1_000, 100_000):
    for kind in KINDS:
        print(f"{kind},{n},{width(*point_cloud(kind, n)):.17g}", flush=True)
