"""What numpy.loadtxt and pandas.read_csv take to read the same scan: python3 read_scan.py board.xyz

The file is the one that outwind.benchmark.ScanSpeed writes when it is given a path. A reader that is not installed is
left out. Imports are not counted; processor seconds are those of all threads.
"""
import statistics
import sys
import time

RUNS = 3


def measure(name, read):
    wall, worked = [], []
    for _ in range(RUNS):
        start, start_worked = time.perf_counter(), time.process_time()
        count = len(read())
        wall.append(time.perf_counter() - start)
        worked.append(time.process_time() - start_worked)
    print(f"{name:40} {count} points, {RUNS} runs: least {min(wall):.2f} s, median {statistics.median(wall):.2f} s;"
          f" processor {min(worked):.2f} s")


def main(path):
    import numpy
    try:
        import pandas
        name = f"pandas.read_csv {pandas.__version__}"
        measure(name, lambda: pandas.read_csv(path, sep=" ", header=None).to_numpy())
        measure(name + " round_trip", lambda: pandas.read_csv(path, sep=" ", header=None,
                                                              float_precision="round_trip").to_numpy())
    except ImportError:
        print("pandas is not installed")
    measure(f"numpy.loadtxt {numpy.__version__}", lambda: numpy.loadtxt(path))


main(sys.argv[1])
