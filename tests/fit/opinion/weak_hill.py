"""The steepest hill at a speed where the pack or the voltage may set it: `hill` has packs that never do.

The boards of `ride`, full and after ten seconds of full throttle, and nearly empty and at leisure; the push of `drive`,
and the slope by SciPy's brentq.
"""

from collections import Counter

import numpy as np
from scipy.optimize import brentq

from .boards import CLASSES, COUNT, answers
from .charge import fitted, open_circuit
from .drive import Drive
from .hill import STEEPEST
from .ride import rider_board, told

LOW = 0.1


def steepest(drive, source, speed):
    """Grade, and what sets it there."""
    warm = drive.build["ride"]["winding_c"]

    def spare(grade):
        return drive.push(speed, *source, warm, grade=grade)[0] - drive.load(speed, grade)

    grade = STEEPEST if spare(STEEPEST) > 0 else brentq(spare, -STEEPEST, STEEPEST, xtol=1e-13)
    return grade, drive.push(speed, *source, warm, grade=grade)[1]


def compare():
    for seed, chemistry in enumerate(CLASSES):
        random = np.random.default_rng(300 + seed)
        fit, ocv = fitted(chemistry), open_circuit(chemistry)
        builds = [rider_board(random, chemistry) for _ in range(COUNT)]
        for build in builds:
            build["ride"]["low_charge_percent"] = 100 * LOW
        rows, limits = [], Counter()
        for at, (build, answer) in enumerate(zip(builds, answers(builds))):
            drive = Drive(build, fit, ocv)
            full, low = drive.burst(1.0), drive.leisure(LOW)
            for name, source in (("crawl", full), ("slow", full), ("brisk", full), ("slow_low", low)):
                got = answer["answers"]["climb"][name]
                grade, by = steepest(drive, source, got["speed_m_s"])
                limits[by] += 1
                where = f"{name}: {100 * grade:.2f} %, {by} here, {got['limit']} there"
                rows.append({"at": at, "where": where, "off": got["grade"] - grade})
        by = ", ".join(f"{count} by {limit}" for limit, count in limits.most_common())
        print(f"{chemistry}, {len(rows)} hills, {by}; the core's figure less this one's")
        told("grade, points", rows, "off")
        for row in rows:
            if abs(row["off"]) > 1e-3:
                print(f"  beyond 1e-3: board {row['at']}, {100 * row['off']:+.3f} points: {row['where']}")
