"""Constant current, then constant voltage, into one cell of a pack.

The cell in time as it is documented: charge, two filtered currents, the open-circuit voltage read at the charge of
the surface, LFP's part above the knee at a surface of its own. Three ordinary differential equations, by SciPy's LSODA
at rtol 1e-9 (variable order, implicit where stiff), with events for hold, taper and full; the core has a closed form
and a Rosenbrock method. The open-circuit voltage is SciPy's PCHIP through all 401 rows of the reference table; the core has
a cubic through 25. The class's figures are read from the fitted tables.
"""

import math
import re

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator

from .boards import CLASSES, COUNT, ROOT, Worst, answers, board

SETS = {"energy": "Chen2020", "power": "Ecker2015", "lfp": "Prada2013"}
GAS, ZERO, REFERENCE = 8.314462618, 273.15, 298.15
# Age by full cycles, common practice: capacity and resistance as factors.
FADE = {
    "lfp": ([0, 100, 300, 1000], [1, 0.98, 0.95, 0.87], [1, 1.04, 1.1, 1.3]),
    "other": ([0, 100, 300, 1000], [1, 0.95, 0.89, 0.75], [1, 1.08, 1.2, 1.6]),
}
TAPER_PER_HOUR = 0.05


def fitted(chemistry):
    """The figures of a class as the fit wrote them, by name."""
    text = (ROOT / "core/src/physics/chemistry/tables.rs").read_text()
    found = {}
    for name in ("COLD", "SHAPE"):
        block = re.search(rf"{chemistry.upper()}_{name}[^{{]*=\s*\w+\s*{{([^}}]*)}}", text).group(1)
        found |= {key: float(value) for key, value in re.findall(r"(\w+): ([\d.]+)", block)}
    return found


def open_circuit(chemistry):
    path = ROOT / f"tests/fixture/cells/ocv_{SETS[chemistry]}_fine401.csv"
    table = np.loadtxt(path, delimiter=",", comments="#", skiprows=2)
    curve = PchipInterpolator(table[:, 0], table[:, 1])
    return lambda charge: float(curve(min(max(charge, 0.0), 1.0)))


def time_and_end(build, fit, ocv):
    """Seconds and end charge until the charger ends."""
    cell, pack, charger = build["cell"], build["pack"], build["charger"]
    kelvin = build["place"]["air_c"] + ZERO
    cycles, capacity_left, growth = FADE.get(cell["chemistry"], FADE["other"])
    aged = np.interp(pack["cycles"], cycles, growth)
    ah = cell["capacity_ah"] * np.interp(pack["cycles"], cycles, capacity_left)

    def cold(joule_per_mol):
        return math.exp(joule_per_mol / GAS * (1 / kelvin - 1 / REFERENCE))

    ohm = cell["resistance_10s_mohm"] / 1000 * aged * cold(fit["resistance_j_mol"])
    lag = cell["resistance_10s_mohm"] / 1000 * aged * cold(fit["lag_j_mol"])
    series_ohm = ohm * fit["r0_share"] + pack["joints_mohm"] / 1000 * pack["parallel"] / pack["series"]
    knee = fit["top_from"]
    hold = charger["full_v"] / pack["series"]
    most = min(charger["current_a"] / pack["parallel"], cell["max_charge_a"])
    taper = TAPER_PER_HOUR * ah

    # Currents into the cell are positive here.
    def behind(state):
        charge, quick, slow = state
        low = charge + lag * (fit["lag1_per_v"] * quick + fit["lag2_per_v"] * slow)
        top = charge + lag * fit["top_lag_per_v"] * quick
        volts = ocv(min(low, knee)) + ocv(max(top, knee)) - ocv(knee)
        return volts + ohm * (fit["r1_share"] * quick + fit["r2_share"] * slow)

    def held(state):
        return (hold - behind(state)) / series_ohm

    def change(current):
        def rates(_, state):
            amps = current(state)
            return [amps / 3600 / ah, (amps - state[1]) / fit["tau1_s"], (amps - state[2]) / fit["tau2_s"]]

        return rates

    def run(current, begin, t, *ends):
        for end in ends:
            end.terminal = True
        fine = {"method": "LSODA", "rtol": 1e-9, "atol": 1e-11, "max_step": 600}
        return solve_ivp(change(current), (t, t + 1e6), begin, events=ends, **fine)

    def reached(_, state):
        return held(state) - most

    def full(_, state):
        return state[0] - 1

    def tapered(_, state):
        return held(state) - taper

    state, t = [build["ride"]["charge_from_percent"] / 100, 0.0, 0.0], 0.0
    if held(state) > most:
        part = run(lambda _: most, state, t, reached, full)
        state, t = part.y[:, -1], part.t[-1]
        if part.t_events[1].size:
            return t, 1.0
    if held(state) > taper:
        part = run(held, state, t, tapered, full)
        state, t = part.y[:, -1], part.t[-1]
    return t, state[0]


def compare():
    for seed, chemistry in enumerate(CLASSES):
        random = np.random.default_rng(seed)
        fit, ocv = fitted(chemistry), open_circuit(chemistry)
        builds = [board(random, chemistry) for _ in range(COUNT)]
        time, end = Worst(), Worst()
        for build, told in zip(builds, answers(builds)):
            got = told["charging"]["found"]["full"]
            seconds, charge = time_and_end(build, fit, ocv)
            where = f"{build['place']['air_c']:.0f} degC, {seconds / 3600:.2f} h to {100 * charge:.1f} %"
            time.see(got["time_s"] / seconds - 1, where)
            end.see(got["end_charge"] - charge, where)
        print(f"{chemistry}, {len(builds)} boards, the core's figure less this one's")
        print("  time:", time.told(lambda by: f"{100 * by:+.3f} %"))
        print("  end charge:", end.told(lambda by: f"{100 * by:+.4f} points"))
