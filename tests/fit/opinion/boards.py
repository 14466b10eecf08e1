"""Random boards as build files, and what the core answers to them."""

import json
import pathlib
import subprocess

ROOT = pathlib.Path(__file__).parents[3]
CLASSES = ("energy", "power", "lfp")
COUNT = 100


def board(random, chemistry):
    """A board that somebody might build: everything that its subject reads is given, nothing is left to be assumed."""

    def between(low, high):
        return float(random.uniform(low, high))

    def whole(low, high):
        return int(random.integers(low, high + 1))

    capacity = between(1.5, 6.0)
    full = 3.6 if chemistry == "lfp" else 4.2
    series, parallel = whole(6, 16), whole(1, 8)
    ohm = {"energy": 110, "power": 45, "lfp": 60}[chemistry]
    return {
        "cell": {
            "chemistry": chemistry, "capacity_ah": capacity, "resistance_10s_mohm": between(0.5, 1.6) * ohm / capacity,
            "max_discharge_a": between(3, 12) * capacity, "max_charge_a": between(0.4, 1.5) * capacity, "full_v": full,
        },
        "pack": {
            "series": series, "parallel": parallel, "protection_a": between(30, 200), "joints_mohm": between(0, 40),
            "cycles": whole(0, 600), "mass_kg": between(1.5, 6.0), "wire_awg": 12, "wire_m": between(0.2, 2.0),
        },
        "charger": {"full_v": series * full, "current_a": max(0.2, between(0.1, 0.9) * parallel * capacity)},
        "motor": {
            "mass_kg": between(0.4, 1.2), "kv_rpm_per_v": between(120, 270), "resistance_ll_mohm": between(25, 110),
            "inductance_uh": between(8, 40), "pole_pairs": 7, "no_load_a": between(0.5, 2.0), "no_load_rpm": 5000,
            "hysteresis_percent": between(20, 80), "max_current_a": between(40, 100),
        },
        "controller": {
            "convention": str(random.choice(["direct", "peak_phase"])), "motor_current_a": between(30, 90),
            "battery_current_a": between(15, 60), "mass_kg": between(0.2, 0.6), "max_bus_v": 100,
            "max_duty_percent": 95, "switch_mohm": between(0.5, 4), "switching_percent": between(0.2, 1.5), "idle_w": 1,
        },
        "motor_pulley": {"mass_kg": 0.04, "teeth": whole(12, 20)},
        "wheel_pulley": {"mass_kg": between(0.08, 0.2), "teeth": whole(34, 72)},
        "belt": {
            "mass_kg": 0.025, "pitch_mm": 5, "width_mm": between(12, 25), "rating_n_per_mm": between(25, 60),
            "efficiency_percent": between(90, 98),
        },
        "wheel": {
            "mass_kg": between(0.2, 0.8), "diameter_mm": between(83, 175), "deflection_mm": between(0, 3),
            "rolling_smooth": between(0.006, 0.02), "roughness_percent": between(0, 40),
        },
        "truck": {"mass_kg": between(0.7, 2.0), "motor_count": whole(1, 2)},
        "deck": {"mass_kg": between(1.5, 4.0), "wheelbase_mm": between(600, 950)},
        "rider": {
            "mass_kg": between(45, 110), "gear_mass_kg": between(0, 10), "drag_area_m2": between(0.3, 0.7),
            "centre_height_mm": between(750, 1100),
        },
        "place": {
            "air_c": between(0, 40), "altitude_m": between(0, 2500), "headwind_km_h": between(-10, 20),
            "surface": "street_asphalt", "grip_percent": between(20, 110),
        },
        "ride": {"charge_from_percent": between(0, 80)},
    }


def answers(boards):
    """What the core says to each board."""
    lines = "".join(json.dumps(each) + "\n" for each in boards)
    run = "cargo run --quiet --release -p pitchline-core --example answer_lines".split()
    told = subprocess.run(run, cwd=ROOT, input=lines, capture_output=True, text=True)
    if told.returncode:
        raise SystemExit(told.stderr)
    return [json.loads(line) for line in told.stdout.splitlines()]


class Worst:
    """The furthest differences to either side, and where they were met."""

    def __init__(self):
        self.seen = []

    def see(self, by, where):
        self.seen.append((by, where))

    def told(self, form):
        """Both, as `form` writes a difference."""
        if not self.seen:
            return "none compared"
        ends = min(self.seen), max(self.seen)
        return "; ".join(f"{form(by)} ({where})" for by, where in ends)
