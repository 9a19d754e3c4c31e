"""Every type of number, lists before and behind the coordinates, and elements before and behind the vertices.

Written with struct and numpy straight from G. Turk, The PLY Polygon File Format (1994): python3 make_ply.py FOLDER
"""
import struct
import sys
from pathlib import Path

import numpy as np

FOLDER = Path(sys.argv[1])
TYPES = [("char", "int8", "b"), ("uchar", "uint8", "B"), ("short", "int16", "h"), ("ushort", "uint16", "H"),
         ("int", "int32", "i"), ("uint", "uint32", "I"), ("float", "float32", "f"), ("double", "float64", "d")]
FORMATS = {"ascii": "", "binary_little_endian": "<", "binary_big_endian": ">"}
rng = np.random.default_rng(3)


def number(code):
    if code in "fd":
        return struct.unpack(code, struct.pack(code, rng.normal(0, 500)))[0]
    bits = 8 * struct.calcsize(code)
    low = -(1 << bits - 1) if code.islower() else 0
    return int(rng.integers(low, low + (1 << bits)))


def written(form, values):
    """One element: pairs of struct code and value."""
    if form == "ascii":
        return (" ".join(repr(float(v)) if code in "fd" else str(v) for code, v in values) + "\n").encode()
    return b"".join(struct.pack(FORMATS[form] + code, v) for code, v in values)


def listed(count_code, code, length):
    values = [number(code) for _ in range(length)]
    return [(count_code, length)] + [(code, v) for v in values]


def each_type():
    """Every type by its older and its newer name, three to a file, in the order y, x, z."""
    truth = []
    for newer in (0, 1):
        for triple in ((0, 3, 6), (1, 4, 7), (2, 5, 7)):
            names = [TYPES[i][newer] for i in triple]
            codes = [TYPES[i][2] for i in triple]
            rows = [[number(code) for code in codes] for _ in range(5)]
            stem = "-".join(names)
            for form in FORMATS:
                header = (f"ply\nformat {form} 1.0\ncomment units: mm\nelement vertex {len(rows)}\n"
                          + "".join(f"property {name} {axis}\n" for name, axis in zip(names, "yxz")) + "end_header\n")
                body = b"".join(written(form, list(zip(codes, row))) for row in rows)
                (FOLDER / f"{stem}-{form}.ply").write_bytes(header.encode() + body)
            truth += [(stem, float(x), float(y), float(z)) for y, x, z in rows]
    return truth


def with_lists():
    truth = [("lists", number("f"), number("f"), number("f")) for _ in range(40)]
    lengths = rng.integers(0, 5, (40, 2))
    before = [listed("B", "i", int(n)) for n in rng.integers(0, 4, 6)]
    inside = [(listed("H", "f", int(a)), listed("B", "h", int(b))) for a, b in lengths]
    for form in FORMATS:
        header = (f"ply\nformat {form} 1.0\ncomment board: with lists\nobj_info made for a test\n"
                  "element strip 6\nproperty list uchar int vertex_indices\n"
                  "element camera 1\nproperty float focus\nproperty uchar x\n"
                  "element vertex 40\nproperty list ushort float weights\nproperty float y\nproperty float x\n"
                  "property uchar red\nproperty float z\nproperty list uchar short tags\n"
                  "element face 2\nproperty list uchar int vertex_indices\nend_header\n")
        body = b"".join(written(form, strip) for strip in before) + written(form, [("f", 35.0), ("B", 7)])
        for (_, x, y, z), (weights, tags) in zip(truth, inside):
            body += written(form, weights + [("f", y), ("f", x), ("B", 200), ("f", z)] + tags)
        body += written(form, [("B", 3), ("i", 0), ("i", 1), ("i", 2)]) * 2
        (FOLDER / f"lists-{form}.ply").write_bytes(header.encode() + body)
    return truth


with (FOLDER / "points.csv").open("w") as out:
    out.write("file,x,y,z\n")
    for name, *point in each_type() + with_lists():
        out.write(name + "," + ",".join(map(repr, point)) + "\n")
