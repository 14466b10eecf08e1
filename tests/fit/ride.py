# /// script
# requires-python = ">=3.11"
# dependencies = ["numpy==2.4.6", "scipy==1.17.1"]
# ///
"""An hour of stop and go, integrated by SciPy from the equations of the model, for the core to be held against.

    python tests/fit/ride.py            integrate and print
    python tests/fit/ride.py --write    and write tests/fixture/ride/stop_and_go.csv

Written from the documented equations, not from the Rust: one system of ordinary differential equations,
solve_ivp with DOP853 at rtol 1e-9, restarted wherever the rider does something else, the speed that the push allows
found by an event. The open-circuit voltage is SciPy's PCHIP through all 401 points of the reference table, where the
core has a cubic through 25. The board is tests/fixture/ride/board.csv, which the test reads too; the figures of the
cell class and the assumptions about heat are those of the model.
"""

import csv
import math
import pathlib
import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

FIXTURE = pathlib.Path(__file__).parent.parent / "fixture"
with open(FIXTURE / "ride/board.csv") as file:
    BOARD = {(row["slot"], row["key"]): float(row["value"]) for row in csv.DictReader(file)}


def given(slot, key):
    return BOARD[slot, key]


# The course: legs of 400 m, each with half the way up and half down, a stop and a rest; and an hour.
LEG_M, GRADE, CRUISE, RATE, REST_S, END_S, START = 400.0, 0.02, 18 / 3.6, 3.0, 12.0, 3600.0, 0.97

# The energy class: core/src/physics/chemistry/tables.rs, fitted by fit_chemistry.py.
S0, S1, S2 = 0.745803, 0.249624, 1.0077
TAU1, TAU2, LAG1 = 12.0296, 587.513, 0.177405
ACTIVATION = 23900.0
# Assumptions of the model, common practice.
COPPER_SHARE, COPPER_C, STEEL_C, COOLING = 0.2, 385.0, 480.0, 0.12
PACK_C, PACK_G, CONTROLLER_C = 1000.0, 0.18, 800.0
FADE_LOW, FADE_HIGH, OVER_VOLTAGE = 1.5 / 3.6, 5 / 3.6, 1.012

table = np.loadtxt(FIXTURE / "cells/ocv_Chen2020_fine401.csv", delimiter=",", comments="#", skiprows=2)
ocv = PchipInterpolator(table[:, 0], table[:, 1])

G = 9.80665
n = given("truck", "motor_count")
series, parallel = given("pack", "series"), given("pack", "parallel")
ratio = given("wheel_pulley", "teeth") / given("motor_pulley", "teeth")
radius = (given("wheel", "diameter_mm") / 2 - given("wheel", "deflection_mm")) / 1000
eta = given("belt", "efficiency_percent") / 100
board = (
    given("pack", "mass_kg") + given("controller", "mass_kg") + given("deck", "mass_kg") + given("truck", "mass_kg")
    + 4 * given("wheel", "mass_kg")
    + n * sum(given(part, "mass_kg") for part in ("motor", "motor_pulley", "wheel_pulley", "belt"))
)
mass = board + given("rider", "mass_kg") + given("rider", "gear_mass_kg")
motor_kg = given("motor", "mass_kg")
rotor = 0.45 * motor_kg * (0.03 * (motor_kg / 0.75) ** (1 / 3)) ** 2
felt = mass + 0.5 * 4 * given("wheel", "mass_kg") + n * rotor * (ratio / radius) ** 2

celsius = given("place", "air_c")
pressure = 101325 * (1 - 0.0065 * given("place", "altitude_m") / 288.15) ** (G / (0.0065 * 287.05287))
density = pressure / (287.05287 * (celsius + 273.15))
wind = given("place", "headwind_km_h") / 3.6
cda = given("rider", "drag_area_m2")
crr = given("wheel", "rolling_smooth") * (1 + given("wheel", "roughness_percent") / 100)

kt_direct = 60 / (2 * math.pi * given("motor", "kv_rpm_per_v"))
kt = math.sqrt(3) / 2 * kt_direct  # peak phase amperes
r20 = given("motor", "resistance_ll_mohm") / 1000
switch_ohm = 1.5 * given("controller", "switch_mohm") / 1000
switching = given("controller", "switching_percent") / 100
idle = given("controller", "idle_w")
share = given("motor", "hysteresis_percent") / 100
omega0 = given("motor", "no_load_rpm") * math.pi / 30

diameter = 0.127 * 92 ** ((36 - given("pack", "wire_awg")) / 39)
wire = given("pack", "wire_m") / (58 * math.pi / 4 * diameter**2) * (1 + 0.00393 * (celsius - 20))
lead = given("pack", "joints_mohm") / 1000 + wire
cell_ohm = given("cell", "resistance_10s_mohm") / 1000
capacity_as = 3600 * given("cell", "capacity_ah")


def iron_torque(omega):
    return kt_direct * given("motor", "no_load_a") * (share + (1 - share) * omega / omega0)


def forces(v, grade):
    cos = 1 / math.sqrt(1 + grade**2)
    air = 0.5 * density * cda * (v + wind) * abs(v + wind)
    return mass * G * crr * cos, mass * G * grade * cos, air


def pack_volts(z, j1, j2, factor):
    """Volts of the pack without the current of the moment, and the resistance that it meets."""
    surface = z - cell_ohm * factor**2 * LAG1 * j1
    behind = float(ocv(min(max(surface, 0.0), 1.0))) - cell_ohm * factor * (S1 * j1 + S2 * j2)
    return series * behind, series / parallel * cell_ohm * factor * S0 + lead


def bus(current, omega, heat, open_v, ohm):
    """Pack current and volts at the controllers: V (I_b) = V I_b with I_b = what the motors draw at V."""
    fixed = n * (kt * omega * current + heat * current**2 + idle)
    steady = n * switching * abs(current)
    # V = open - ohm (fixed / V + steady)
    half = (open_v - ohm * steady) / 2
    volts = half + math.sqrt(half**2 - ohm * fixed)
    return fixed / volts + steady, volts


def brake_current(v, omega, iron, heat, open_v, ohm):
    most = min(given("controller", "brake_current_a"), given("motor", "max_current_a"))
    pull = given("belt", "rating_n_per_mm") * given("belt", "width_mm")
    pitch_radius = given("motor_pulley", "teeth") * given("belt", "pitch_mm") / 1000 / (2 * math.pi)
    most = min(most, (pull * pitch_radius - iron) / kt)
    grip = given("place", "grip_percent") / 100 * n / 2
    height, base = given("rider", "centre_height_mm"), given("deck", "wheelbase_mm")
    # Moments: the rear axle carries half, less what braking shifts forward.
    held = grip * mass * G / (2 + 2 * grip * height / base)
    most = min(most, (held * radius * eta / (ratio * n) - iron) / kt)
    full = min(series * given("cell", "full_v") * OVER_VOLTAGE, given("controller", "max_bus_v"))
    back = max(0.0, min(n * given("controller", "regen_current_a"), (full - open_v) / ohm))
    volts = open_v + back * ohm

    def beyond(current):  # power into the pack beyond what it takes
        return n * (kt * omega * current - heat * current**2 - switching * volts * current - idle) - back * volts

    peak = max(0.0, (kt * omega - switching * volts) / (2 * heat))
    if beyond(peak) > 0:
        most = min(most, brentq(beyond, 0.0, peak, xtol=1e-14))
    return most * min(1.0, max(0.0, (v - FADE_LOW) / (FADE_HIGH - FADE_LOW)))


def push_limit(omega):
    """Push at the motor current limit; the other limits are checked to be wider."""
    torque = kt * min(given("controller", "motor_current_a"), given("motor", "max_current_a")) - iron_torque(omega)
    return torque * ratio * eta * n / radius


X, V, Z, J1, J2, CELL, WINDING, CASE, SWITCH = range(9)
LEDGER = [
    "stored", "pack", "wires", "controller", "winding", "iron", "belt", "rolling", "air", "climb", "brake", "returned",
]


def motion(state, rate, grade):
    """Derivatives, with the acceleration that the rider wishes for; the push may allow less."""
    x, v, z, j1, j2, cell_c, winding_c, case_c, switch_c = state[:9]
    roll, climb, air = forces(v, grade)
    if rate is None:  # at rest
        acceleration, asked, roll, climb, air, v = 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
    else:
        asked = felt * rate + roll + climb + air
        asked = min(asked, push_limit(ratio * v / radius))
        acceleration = (asked - roll - climb - air) / felt
    omega = ratio * v / radius
    iron = iron_torque(omega) if v > 0 else 0.0
    winding = r20 * (1 + 0.00393 * (winding_c - 20))
    heat = 0.75 * winding + switch_ohm
    factor = math.exp(ACTIVATION / 8.314462618 * (1 / (cell_c + 273.15) - 1 / 298.15))
    open_v, ohm = pack_volts(z, j1, j2, factor)
    through = asked / eta if asked >= 0 else asked * eta
    current = (through * radius / (ratio * n) + iron) / kt if rate is not None else 0.0
    brake = 0.0
    motor_n = asked
    if current < 0:
        current = max(current, -brake_current(v, omega, iron, heat, open_v, ohm))
        torque = kt * current - iron
        motor_n = torque * n * ratio / radius * (eta if torque >= 0 else 1 / eta)
        brake = motor_n - asked
    pack_a, volts = bus(current, omega, heat, open_v, ohm)
    if current > 0:  # nothing but the motor current may hold the push back
        assert pack_a < min(n * given("controller", "battery_current_a"), parallel * given("cell", "max_discharge_a"))
        back = math.hypot(
            kt_direct * omega + math.sqrt(3) / 2 * current * winding,
            math.sqrt(3) * given("motor", "pole_pairs") * omega * given("motor", "inductance_uh") * 1e-6 * current,
        )
        assert back < 0.95 * volts
    copper = n * 0.75 * winding * current**2
    shaft = n * (kt * current - iron) * omega
    wires = lead * pack_a**2
    chemical = series * float(ocv(z)) * pack_a
    controller = volts * pack_a - n * kt * current * omega - copper
    pack = chemical - volts * pack_a - wires
    amps = pack_a / parallel
    copper_each, iron_each = copper / n, iron * omega
    to_case = (winding_c - case_c) / given("motor", "winding_k_per_w")
    to_air = (case_c - celsius) * (1 + COOLING * v) / given("motor", "case_k_per_w")
    pack_kg, controller_kg = given("pack", "mass_kg"), given("controller", "mass_kg")
    return [
        v,
        acceleration,
        -amps / capacity_as,
        (amps - j1) / TAU1,
        (amps - j2) / TAU2,
        (pack - PACK_G * pack_kg * (cell_c - celsius)) / (PACK_C * pack_kg),
        (copper_each - to_case) / (COPPER_SHARE * COPPER_C * motor_kg),
        (iron_each + to_case - to_air) / ((1 - COPPER_SHARE) * STEEL_C * motor_kg),
        (controller - (switch_c - celsius) / given("controller", "heat_sink_k_per_w")) / (CONTROLLER_C * controller_kg),
        chemical, pack, wires, controller, copper, iron_each * n, shaft - motor_n * v,
        roll * v, air * v, climb * v, brake * v, max(0.0, -chemical),
    ]


hottest = -1e9


def go(state, t, span, rate, grade, until=None):
    """Integrates for a time, or until an event; returns the state and the time."""
    global hottest
    span = min(span, END_S - t)
    if span <= 0:
        return state, t, False
    events = None
    if until is not None:
        events = lambda _, y: until(y)  # noqa: E731
        events.terminal = True
    run = solve_ivp(
        lambda _, y: motion(y, rate, grade), (t, t + span), state, "DOP853",
        rtol=1e-9, atol=1e-10, events=events, max_step=20.0,
    )
    assert run.success, run.message
    hottest = max(hottest, run.y[WINDING].max())
    return run.y[:, -1], run.t[-1], run.status == 1


def fade_stops(state, t, rate, grade, end_v):
    """Braking, restarted where the fade begins and ends, so that no step crosses a kink."""
    for v in (FADE_HIGH, FADE_LOW, end_v):
        if state[V] > v and t < END_S:
            state, t, _ = go(state, t, (state[V] - v) / -rate, rate, grade)
            state[V] = v if t < END_S else state[V]
    return state, t


def ride():
    state = np.zeros(9 + len(LEDGER))
    state[Z] = START
    state[[CELL, WINDING, CASE, SWITCH]] = celsius
    t = 0.0
    while t < END_S:
        begun = state[X]
        state[V] = 0.0
        state, t, _ = go(state, t, 1e3, RATE, GRADE, lambda y: y[V] - CRUISE)
        if t < END_S:
            state[V] = CRUISE
        for end, grade in ((begun + LEG_M / 2, GRADE), (begun + LEG_M - CRUISE**2 / (2 * RATE), -GRADE)):
            state, t, _ = go(state, t, (end - state[X]) / CRUISE, 0.0, grade)
        state, t = fade_stops(state, t, -RATE, -GRADE, 0.0)
        state, t, _ = go(state, t, REST_S, None, 0.0)
    return state, t


def main():
    state, t = ride()
    rows = [
        ("time_s", t), ("distance_m", state[X]), ("charge", state[Z]), ("winding_c", state[WINDING]),
        ("hottest_winding_c", hottest), ("case_c", state[CASE]), ("controller_c", state[SWITCH]),
        ("cell_c", state[CELL]),
    ]
    rows += [(f"{name}_wh", state[9 + k] / 3600) for k, name in enumerate(LEDGER)]
    text = "# Integrated with SciPy 1.17.1 by tests/fit/ride.py --write.\nname,value\n"
    text += "".join(f"{name},{value:.6f}\n" for name, value in rows)
    print(text, end="")
    sums = dict(rows)
    sinks = sum(sums[f"{name}_wh"] for name in LEDGER[1:-1])
    print(f"# open: {sums['stored_wh'] - sinks:.2e} Wh, of which in speed {0.5 * felt * state[V] ** 2 / 3600:.2e}")
    if "--write" in sys.argv:
        (FIXTURE / "ride/stop_and_go.csv").write_text(text)


if __name__ == "__main__":
    main()
