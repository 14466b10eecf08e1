"""The steepest hill that the tyres, the motors and the belt hold at a speed.

Statics of the whole board and rider on a slope at a steady speed: forces along the slope, forces across it, and moments
about the front wheels' contact. The rider stands in the middle of the axles, at some height; rolling resistance is each
wheel's load standing ahead of its axle (Wong, Theory of Ground Vehicles, from memory); the air pushes at the height of
the centre of mass. The slope is found by SciPy's brentq. The pack is made too strong to bind.
"""

import math

import numpy as np
from scipy.optimize import brentq

from .boards import CLASSES, COUNT, Worst, answers, board

G = 9.80665
ROUGHNESS = 1.0  # street asphalt, by definition
STEEPEST = 1.0  # the core tells no steeper hills than 100 %


def strong(build):
    """The same board with a pack that never binds, and motors strong enough that grip often does."""
    build["cell"] |= {"max_discharge_a": 1000, "resistance_10s_mohm": 0.1}
    build["pack"] |= {"series": 20, "parallel": 20, "protection_a": 1000, "joints_mohm": 0, "wire_m": 0, "mass_kg": 6}
    build["controller"] |= {"battery_current_a": 500, "max_bus_v": 150}
    build["controller"]["motor_current_a"] *= 2
    build["motor"]["max_current_a"] *= 2
    build["belt"]["rating_n_per_mm"] *= 2
    return build


def mass(build):
    n = build["truck"]["motor_count"]
    once = ("pack", "controller", "deck", "truck", "rider")
    each = ("motor", "motor_pulley", "wheel_pulley", "belt")
    return (
        sum(build[part]["mass_kg"] for part in once) + build["rider"]["gear_mass_kg"] + 4 * build["wheel"]["mass_kg"]
        + n * sum(build[part]["mass_kg"] for part in each)
    )


def air(build, speed):
    place = build["place"]
    pressure = 101325 * (1 - 0.0065 * place["altitude_m"] / 288.15) ** (G / (0.0065 * 287.05287))
    density = pressure / (287.05287 * (place["air_c"] + 273.15))
    against = speed + place["headwind_km_h"] / 3.6
    return 0.5 * density * build["rider"]["drag_area_m2"] * against * abs(against)


def motor_push(build, speed):
    """Push at the least of the motors', the controllers' and the belts' limits."""
    motor, controller, belt = build["motor"], build["controller"], build["belt"]
    n, radius = build["truck"]["motor_count"], rolling_radius(build)
    ratio = build["wheel_pulley"]["teeth"] / build["motor_pulley"]["teeth"]
    direct = 60 / (2 * math.pi * motor["kv_rpm_per_v"])
    kt = direct if controller["convention"] == "direct" else math.sqrt(3) / 2 * direct
    omega, omega0 = ratio * speed / radius, motor["no_load_rpm"] * math.pi / 30
    share = motor["hysteresis_percent"] / 100
    iron = direct * motor["no_load_a"] * (share + (1 - share) * omega / omega0)
    shaft = kt * min(motor["max_current_a"], controller["motor_current_a"]) - iron
    pitch_radius = build["motor_pulley"]["teeth"] * belt["pitch_mm"] / 1000 / (2 * math.pi)
    shaft = min(shaft, belt["rating_n_per_mm"] * belt["width_mm"] * pitch_radius)
    return shaft * ratio * belt["efficiency_percent"] / 100 * n / radius


def rolling_radius(build):
    return (build["wheel"]["diameter_mm"] / 2 - build["wheel"]["deflection_mm"]) / 1000


def steepest(build, speed, in_full):
    """Grade, and whether grip sets it. Without `in_full` rolling resistance takes push alone, as in the core: it shifts
    no load between the axles, and the tyres hold all of the push."""
    weight, drag = mass(build) * G, air(build, speed)
    wheel, rider = build["wheel"], build["rider"]
    rolling = wheel["rolling_smooth"] * (1 + wheel["roughness_percent"] / 100 * ROUGHNESS)
    height, base = rider["centre_height_mm"] / 1000, build["deck"]["wheelbase_mm"] / 1000
    driven = build["truck"]["motor_count"] / 2
    grip = build["place"]["grip_percent"] / 100
    motors = motor_push(build, speed)

    def needed(grade):
        """Load across the slope and along it, and the push that holds the speed."""
        angle = math.atan(grade)
        across, along = weight * math.cos(angle), weight * math.sin(angle)
        return across, along, along + drag + rolling * across

    def spare(grade):
        """Push that is left over at the motors and at the tyres."""
        across, along, push = needed(grade)
        # Moments about the front contact: the hill and the air at their height, loads ahead of their axles.
        if in_full:
            rear = (across * base / 2 + (along + drag) * height - rolling * rolling_radius(build) * across) / base
        else:
            rear = (across * base / 2 + push * height) / base
        # The rider leans so that the front stays down.
        rear = min(rear, across)
        on_road = push - (rolling * driven * rear if in_full else 0.0)
        return motors - push, grip * driven * rear - on_road

    # From the slope that needs no push at all, which anything holds.
    coasting = brentq(lambda grade: needed(grade)[2], -STEEPEST, STEEPEST, xtol=1e-13)

    def root(which):
        if spare(STEEPEST)[which] >= 0:
            return STEEPEST
        return brentq(lambda grade: spare(grade)[which], coasting, STEEPEST, xtol=1e-13)

    by_motors, by_grip = root(0), root(1)
    return min(by_motors, by_grip), by_grip < by_motors


def told_hills(found):
    """The headlines, and of the curve over speed what is slow enough for the voltage not to bind."""
    headlines = [found["climb"][name] for name in ("crawl", "slow", "brisk")]
    fastest = max(each["speed_m_s"] for each in headlines)
    curve = [point | {"limit": point["hill_limit"]} for point in found["push"]["points"][::4]]
    return headlines + [point for point in curve if point["speed_m_s"] <= fastest]


def compare():
    for seed, chemistry in enumerate(CLASSES):
        random = np.random.default_rng(100 + seed)
        builds = [strong(board(random, chemistry)) for _ in range(COUNT)]
        as_core, in_full, gripped, other = Worst(), Worst(), 0, set()
        for build, told in zip(builds, answers(builds)):
            for got in told_hills(told["answers"]):
                grade, grips = steepest(build, got["speed_m_s"], False)
                where = f"{100 * grade:.1f} % at {3.6 * got['speed_m_s']:.0f} km/h, {got['limit']}"
                as_core.see(got["grade"] - grade, where)
                if grips != (got["limit"] == "grip") and abs(got["grade"]) < STEEPEST:
                    other.add(where)
                if grips:
                    gripped += 1
                    in_full.see(got["grade"] - steepest(build, got["speed_m_s"], True)[0], where)
        hills = f"{len(as_core.seen)} hills, {gripped} by grip"
        print(f"{chemistry}, {len(builds)} boards, {hills}, the core's figure less this one's")
        print("  as the core counts:", as_core.told(lambda by: f"{100 * by:+.1e} points"))
        print("  rolling resistance in full, by grip:", in_full.told(lambda by: f"{100 * by:+.2f} points"))
        print("  another limit named:", ", ".join(sorted(other)) or "never")
