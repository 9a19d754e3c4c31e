"""The minimum zone and the tools beside it, on one machine, in one run, from the same files. Prints Markdown.

    python3 src/test/python/side_by_side.py [--kind warped] [--points 1000 10000 100000 1000000 10000000]

Needs Maven, numpy and scipy; pandas is timed where it is installed. Times are medians of warm runs.
"""
import argparse
import datetime
import io
import pathlib
import platform
import statistics
import subprocess
import sys
import tempfile
import time

import numpy as np
import scipy
from scipy.optimize import linprog
from scipy.spatial import ConvexHull

ROOT = pathlib.Path(__file__).resolve().parents[3]
sys.path.insert(0, str(ROOT / "src/test/resources/highs"))
from point_cloud import KINDS, point_cloud  # noqa: E402

# Points that the tools can bear in reasonable time and memory.
MOST_FOR_HIGHS_ALONE = 100_000
MOST_FOR_TEXT = 1_000_000


def by_highs(x, y, z):
    u = (x - (x.min() + x.max()) / 2) / np.ptp(x) * 2
    v = (y - (y.min() + y.max()) / 2) / np.ptp(y) * 2
    one, nought = np.ones_like(z), np.zeros_like(z)
    rows = np.vstack((np.column_stack((-u, -v, -one, nought)), np.column_stack((u, v, nought, one))))
    answer = linprog([0, 0, 1, -1], A_ub=rows, b_ub=np.concatenate((-z, z)), bounds=(None, None), method="highs")
    return answer.fun


def by_hull_and_highs(x, y, z):
    corners = ConvexHull(np.column_stack((x, y, z))).vertices
    return by_highs(x[corners], y[corners], z[corners])


def median_ms(work):
    """Runs for two seconds after a first run, at least three times."""
    result = work()
    times = []
    while len(times) < 3 or sum(times) < 2 and len(times) < 200:
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return 1000 * statistics.median(times), result


def by_python(x, y, z):
    """Rows (what, n, median ms, width or None)."""
    n = len(z)
    yield "hull", n, *median_ms(lambda: by_hull_and_highs(x, y, z))
    if n <= MOST_FOR_HIGHS_ALONE:
        yield "HiGHS", n, *median_ms(lambda: by_highs(x, y, z))
    if n <= MOST_FOR_TEXT:
        text = io.StringIO()
        np.savetxt(text, np.column_stack((x, y, z)), fmt="%.4f", delimiter=",")
        yield "loadtxt", n, median_ms(lambda: np.loadtxt(io.StringIO(text.getvalue()), delimiter=","))[0], None
        try:
            import pandas
        except ImportError:
            return
        yield "read_csv", n, median_ms(lambda: pandas.read_csv(io.StringIO(text.getvalue()), header=None))[0], None


def by_java(files):
    """Rows (what, n, median ms, result) from outwind.benchmark.SideBySide."""
    run = subprocess.run(
        ["mvn", "-q", "test-compile", "exec:java", "-Dexec.classpathScope=test",
         "-Dexec.mainClass=outwind.benchmark.SideBySide", "-Dexec.args=" + " ".join(files)],
        cwd=ROOT, check=True, capture_output=True, text=True)
    for line in run.stdout.splitlines():
        cells = line.split("\t")
        if len(cells) == 4:
            yield cells[0], int(cells[1]), float(cells[2]), float(cells[3])


def processor():
    try:
        with open("/proc/cpuinfo", encoding="ascii") as info:
            return next(line.split(":")[1].strip() for line in info if line.startswith("model name"))
    except (OSError, StopIteration):
        return platform.processor() or platform.machine()


def figure(ms):
    if ms is None:
        return "–"
    return f"{ms:.2g} ms" if ms < 100 else f"{ms:.0f} ms" if ms < 1000 else f"{ms / 1000:.1f} s"


WORDS = {
    "sum": "summing the three arrays once, one core",
    "outwind": "**minimum zone, Outwind**",
    "hull": "minimum zone, SciPy `ConvexHull` and HiGHS on its corners",
    "HiGHS": "minimum zone, SciPy HiGHS on all points",
    "commons-math": "minimum zone, commons-math simplex on the dual",
    "ojAlgo": "minimum zone, ojAlgo",
    "loadtxt": "reading them as text, numpy `loadtxt`",
    "read_csv": "reading them as text, pandas `read_csv`",
}


def main():
    ask = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    ask.add_argument("--kind", choices=KINDS[:-1], default="warped")
    ask.add_argument("--points", type=int, nargs="+", default=[1_000, 10_000, 100_000, 1_000_000, 10_000_000])
    given = ask.parse_args()
    rows = []
    with tempfile.TemporaryDirectory() as folder:
        files = []
        for n in given.points:
            points = point_cloud(given.kind, n)
            files.append(f"{folder}/{n}.f64")
            np.concatenate(points).astype("<f8").tofile(files[-1])
            rows += by_python(*points)
        rows += by_java(files)
    times = {(what, n): ms for what, n, ms, _ in rows}
    print(f"| {given.kind} board | " + " | ".join(f"{n:,} points".replace(",", " ") for n in given.points) + " |")
    print("| --- " * (1 + len(given.points)) + "|")
    for what, words in WORDS.items():
        cells = [times.get((what, n)) for n in given.points]
        if any(cells):
            print(f"| {words} | " + " | ".join(map(figure, cells)) + " |")
    apart = max(abs(width - by) for what, n, _, width in rows for other, m, _, by in rows
                if what == "outwind" and m == n and other in ("hull", "HiGHS", "commons-math", "ojAlgo"))
    print(f"\nAll widths agree with Outwind's within {apart:.1g} mm. Medians, {datetime.date.today()}, {processor()}, "
          f"{platform.system()}, SciPy {scipy.__version__}, numpy {np.__version__}.")
    if not any(what == "read_csv" for what, *_ in rows):
        print("pandas is not installed here, so it was not timed.")


main()
