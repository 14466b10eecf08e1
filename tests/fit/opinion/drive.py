"""The push of a board at a speed, and what it draws from the pack: one instant, every limit.

Textbook machine and textbook source, from the documented equations: the current that each limit leaves, the least
of them, then the voltage that the controller can apply. Nothing is smoothed and nothing is linearised.
"""

import math

import numpy as np
from scipy.optimize import brentq

from .charge import FADE, GAS, REFERENCE, ZERO
from .hill import G, ROUGHNESS, air, mass, rolling_radius

COPPER_PER_K = 0.00393  # IEC 60028
COPPER_SIEMENS = 58e6  # IEC 60028, at 20 degC
AIR_GAUGE_M, GAUGE_STEP = 0.127e-3, 92 ** (1 / 39)  # ASTM B258


class Cell:
    """A cell of the pack: what its class, its age and its temperature make of it."""

    def __init__(self, build, fit, ocv):
        cell, self.fit, self.ocv = build["cell"], fit, ocv
        cycles, left, growth = FADE.get(cell["chemistry"], FADE["other"])
        self.ah = cell["capacity_ah"] * np.interp(build["pack"]["cycles"], cycles, left)
        self.rated = cell["resistance_10s_mohm"] / 1000 * np.interp(build["pack"]["cycles"], cycles, growth)

    def cold(self, name, celsius):
        return self.rated * math.exp(self.fit[name] / GAS * (1 / (celsius + ZERO) - 1 / REFERENCE))

    def behind(self, charge, quick, slow, celsius):
        """Volts without the current of the moment, and the resistance that this meets."""
        fit, knee = self.fit, self.fit["top_from"]
        ohm, lag = self.cold("resistance_j_mol", celsius), self.cold("lag_j_mol", celsius)
        low = charge - lag * (fit["lag1_per_v"] * quick + fit["lag2_per_v"] * slow)
        top = charge - lag * fit["top_lag_per_v"] * quick
        volts = self.ocv(min(low, knee))
        if top > knee:
            volts += self.ocv(top) - self.ocv(knee)
        return volts - ohm * (fit["r1_share"] * quick + fit["r2_share"] * slow), ohm * fit["r0_share"]

    def after(self, charge, amps, seconds, celsius):
        """The same as a line in the current, after so many seconds (None: for ever) of `amps` from rest."""
        fit, settled = self.fit, seconds is None
        on1, on2 = (1.0 if settled else 1 - math.exp(-seconds / fit[tau]) for tau in ("tau1_s", "tau2_s"))
        ohm, lag = self.cold("resistance_j_mol", celsius), self.cold("lag_j_mol", celsius)
        spent = 0.0 if settled else amps * seconds / 3600 / self.ah
        low = charge - spent - amps * lag * (fit["lag1_per_v"] * on1 + fit["lag2_per_v"] * on2)
        top, knee = charge - spent - amps * lag * fit["top_lag_per_v"] * on1, fit["top_from"]
        volts = self.ocv(min(low, knee)) + (self.ocv(top) - self.ocv(knee) if top > knee else 0.0)
        return volts, ohm * (fit["r0_share"] + fit["r1_share"] * on1 + fit["r2_share"] * on2)


class Drive:
    """From the road to the pack's terminals."""

    def __init__(self, build, fit, ocv):
        motor, controller, belt, pack = (build[part] for part in ("motor", "controller", "belt", "pack"))
        self.build, self.cell = build, Cell(build, fit, ocv)
        self.motor, self.controller, self.pack = motor, controller, pack
        self.n, self.radius, self.weight = build["truck"]["motor_count"], rolling_radius(build), mass(build) * G
        self.ratio = build["wheel_pulley"]["teeth"] / build["motor_pulley"]["teeth"]
        self.direct = 60 / (2 * math.pi * motor["kv_rpm_per_v"])
        self.sinusoidal = controller["convention"] == "peak_phase"
        self.kt = self.direct * (math.sqrt(3) / 2 if self.sinusoidal else 1)
        self.copper = 0.75 if self.sinusoidal else 1.0
        self.switches = (1.5 if self.sinusoidal else 2.0) * controller["switch_mohm"] / 1000
        self.switching = controller["switching_percent"] / 100
        self.efficiency = belt["efficiency_percent"] / 100
        wheel = build["wheel"]
        self.rolling = wheel["rolling_smooth"] * (1 + wheel["roughness_percent"] / 100 * ROUGHNESS)
        diameter = AIR_GAUGE_M * GAUGE_STEP ** (36 - pack["wire_awg"])
        wire = pack["wire_m"] / (COPPER_SIEMENS * math.pi / 4 * diameter**2)
        self.lead = pack["joints_mohm"] / 1000 + wire * (1 + COPPER_PER_K * (build["place"]["air_c"] - 20))
        pitch_radius = build["motor_pulley"]["teeth"] * belt["pitch_mm"] / 1000 / (2 * math.pi)
        self.belt_torque = belt["rating_n_per_mm"] * belt["width_mm"] * pitch_radius

    def source(self, volts, ohm):
        """The pack as a source at the controllers, from one cell."""
        series, parallel = self.pack["series"], self.pack["parallel"]
        return series * volts, series / parallel * ohm + self.lead

    def load(self, speed, grade=0.0):
        angle = math.atan(grade)
        return self.weight * (self.rolling * math.cos(angle) + math.sin(angle)) + air(self.build, speed)

    def omega(self, speed):
        return self.ratio * speed / self.radius

    def iron(self, omega):
        motor = self.motor
        share, omega0 = motor["hysteresis_percent"] / 100, motor["no_load_rpm"] * math.pi / 30
        return self.direct * motor["no_load_a"] * (share + (1 - share) * omega / omega0)

    def winding(self, celsius):
        return self.motor["resistance_ll_mohm"] / 1000 * (1 + COPPER_PER_K * (celsius - 20))

    def asked(self, omega, amps, winding):
        """Line-to-line volts that a motor asks for."""
        if not self.sinusoidal:
            return self.direct * omega + amps * winding
        along = self.direct * omega + math.sqrt(3) / 2 * amps * winding
        across = math.sqrt(3) * self.motor["pole_pairs"] * omega * self.motor["inductance_uh"] * 1e-6 * amps
        return math.hypot(along, across)

    def drawn(self, amps, omega, heat, open_v, ohm):
        """Pack current and volts at the controllers for a motor current; no volts beyond what the pack gives."""
        fixed = self.n * (self.kt * omega * amps + heat * amps**2 + self.controller["idle_w"])
        half = (open_v - ohm * self.n * self.switching * abs(amps)) / 2
        square = half**2 - ohm * fixed
        if half <= 0 or square < 0:
            return None, 0.0
        volts = half + math.sqrt(square)
        return fixed / volts + self.n * self.switching * abs(amps), volts

    def grip(self, grade):
        """Push that the tyres hold: moments about the front contact; the rider leans so that the front stays down."""
        driven, place = self.n / 2, self.build["place"]
        across = self.weight * math.cos(math.atan(grade))
        high = self.build["rider"]["centre_height_mm"] / self.build["deck"]["wheelbase_mm"]
        each = place["grip_percent"] / 100 * driven
        # push = each * rear, rear = across / 2 + push * high, and never more than all of it.
        rear = across / 2 / (1 - each * high) if each * high < 0.5 else across
        return each * rear

    def pack_current(self, open_v, ohm, share=1.0):
        """The most that the pack gives, and what sets it."""
        controller, pack, cell = self.controller, self.pack, self.build["cell"]
        series, limit = pack["series"], share * self.n * controller["battery_current_a"]
        per_volt = limit / series / (controller["cutback_start_v"] - controller["cutback_end_v"])
        above = open_v - series * pack["cut_off_v"]
        # Without resistance there is no sag: the volts are enough or they are not.
        sagging = [(open_v / 2 / ohm, "power"), (above / ohm, "cut-off")] if ohm else [(above * math.inf, "cut-off")]
        return min(
            (limit, "controller"),
            (pack["protection_a"], "protection"),
            (pack["parallel"] * cell["max_discharge_a"], "cells"),
            *sagging,
            # I = per_volt (V - S V_end) on the falling line, V = open - ohm I.
            (per_volt * (open_v - series * controller["cutback_end_v"]) / (1 + per_volt * ohm), "cutback"),
        )

    def push(self, speed, open_v, ohm, winding_c, share=1.0, grade=0.0):
        """The greatest push at the road, and what sets it."""
        omega, winding = self.omega(speed), self.winding(winding_c)
        iron, heat = self.iron(omega), self.copper * winding + self.switches
        gear = self.ratio * self.n / self.radius
        ways = [
            (self.motor["max_current_a"], "motor"),
            (share * self.controller["motor_current_a"], "motor current"),
            ((self.belt_torque + iron) / self.kt, "belt"),
            ((self.grip(grade) / gear / self.efficiency + iron) / self.kt, "grip"),
        ]
        pack_a, by = self.pack_current(open_v, ohm, share)
        volts = open_v - pack_a * ohm
        # heat I^2 + (kt omega + switching V) I + idle = V I_pack / n
        turning, spare = self.kt * omega + self.switching * volts, volts * pack_a / self.n - self.controller["idle_w"]
        by_pack = (-turning + math.sqrt(turning**2 + 4 * heat * spare)) / (2 * heat) if spare > 0 else 0.0
        amps, by = min(*ways, (by_pack, by))

        def left(amps):
            _, bus = self.drawn(amps, omega, heat, open_v, ohm)
            return self.controller["max_duty_percent"] / 100 * bus - self.asked(omega, amps, winding)

        if left(amps) < 0:
            by, amps = "voltage", 0.0 if left(0.0) <= 0 else brentq(left, 0.0, amps, xtol=1e-11)
        torque = self.kt * amps - iron
        return torque * gear * (self.efficiency if torque >= 0 else 1 / self.efficiency), by

    def burst(self, charge):
        """The pack after ten seconds of full throttle, 4C from rest."""
        return self.source(*self.cell.after(charge, 4 * self.cell.ah, 10.0, self.build["place"]["air_c"]))

    def leisure(self, charge):
        """The pack after so much of 0.5C that the cells have settled."""
        return self.source(*self.cell.after(charge, 0.5 * self.cell.ah, None, self.build["place"]["air_c"]))

    def reached(self, wish):
        """A speed, or what the board reaches on the flat with a full pack, fresh or at leisure."""
        best = 0.0
        for source in (self.burst(1.0), self.leisure(1.0)):

            def spare(speed):
                return self.push(speed, *source, self.build["ride"]["winding_c"])[0] - self.load(speed)

            if spare(wish) >= 0:
                return wish
            # Push falls and load grows with speed: one root.
            best = max(best, brentq(spare, 0.05, wish, xtol=1e-9) if spare(0.05) > 0 else 0.0)
        return best
