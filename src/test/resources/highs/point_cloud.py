"""Heights of invented boards: the same numbers, to the last bit, as outwind.benchmark.PointCloud makes.

Only + - * / and square roots are used, which every machine rounds alike.
"""
import numpy as np

KINDS = ("warped", "raster", "rounded", "cap", "wedge", "plane")


def congruential(count):
    """Knuth's MMIX generator from state 1: numbers from 0 on, below 1."""
    with np.errstate(over="ignore"):
        power = np.full(count, 6364136223846793005, dtype=np.uint64)
        power = np.multiply.accumulate(power)
        before = np.concatenate(([np.uint64(1)], power[:-1]))
        state = power + np.uint64(1442695040888963407) * np.add.accumulate(before)
    return (state >> np.uint64(11)).astype(np.float64) * 2.0 ** -53


def point_cloud(kind, n):
    """x, y, z (mm) of n points."""
    draws = congruential((7 if kind == "wedge" else 6) * n).reshape(n, -1)
    across, along = draws[:, 0], draws[:, 1]
    rough = draws[:, 2] + draws[:, 3] + draws[:, 4] + draws[:, 5] - 2
    if kind == "cap":
        return cap(across, along, rough)
    x, y = 2400 * along, 300 * across
    if kind in ("raster", "rounded"):
        rows = int(np.sqrt(n / 8.0))
        columns = n // rows
        i = np.arange(n)
        x = 2400.0 * (i % columns) / columns
        y = 300.0 * (i // columns) / rows
    s = x / 1200 - 1
    t = y / 150 - 1
    if kind == "plane":
        return x, y, 5 * s - t
    if kind == "wedge":
        return x, y, 5 * s - t + 0.2 * draws[:, 6]
    z = 3 * s * t + 2 * s * s - 1.5 * t * t + 0.8 * s * s * s + 0.2 * rough
    return x, y, np.rint(z * 100) / 100 if kind == "rounded" else z


def cap(radius, angle, side):
    r = 1000 * np.sqrt(radius)
    h = 2 * angle - 1
    x = np.where(side < 0, -r, r) * (1 - h * h) / (1 + h * h)
    y = r * 2 * h / (1 + h * h)
    return x, y, np.sqrt(2.5e7 - x * x - y * y) - 5000
