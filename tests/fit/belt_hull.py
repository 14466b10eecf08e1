# /// script
# requires-python = ">=3.11"
# dependencies = ["shapely==2.1.2", "numpy==2.4.6"]
# ///
"""Lengths of open belts as the perimeter of the convex hull of two circles, which knows no belt formula.

    python tests/fit/belt_hull.py            print the table
    python tests/fit/belt_hull.py --write    write tests/fixture/belts/hull.csv

Circles of 80 000 corners: their perimeter is 2.6e-10 of itself too short.
"""

import sys
from math import pi
from pathlib import Path

from shapely import Point, union

OUT = Path(__file__).resolve().parents[1] / "fixture/belts/hull.csv"
# Motor teeth, wheel teeth, pitch mm, centre distance mm: the kits' pairs, other pitches, nearly touching, equal, reversed.
CASES = [
    (16, 40, 5, 67.3), (14, 44, 5, 73.6), (20, 36, 5, 68.8), (18, 44, 5, 69.4), (16, 66, 5, 102.1), (15, 72, 5, 92.4),
    (18, 60, 5, 96.7), (8, 120, 5, 102.0), (60, 12, 5, 61.3), (30, 30, 5, 48.0), (22, 55, 3, 60.0), (16, 32, 8, 130.0),
    (20, 28, 14, 300.0), (16, 44, 5, 400.0),
]


def hull(teeth, other, pitch, centre):
    one = Point(0, 0).buffer(teeth * pitch / 2 / pi, quad_segs=20000)
    two = Point(centre, 0).buffer(other * pitch / 2 / pi, quad_segs=20000)
    return union(one, two).convex_hull.length


lines = ["# tests/fit/belt_hull.py, shapely 2.1.2", "motor_teeth,wheel_teeth,pitch_mm,centre_mm,length_mm"]
lines += [f"{a},{b},{p},{c},{hull(a, b, p, c):.6f}" for a, b, p, c in CASES]
text = "\n".join(lines) + "\n"
print(text, end="")
if "--write" in sys.argv:
    OUT.write_text(text)
