"""The cell model in time. See fit_chemistry.py for the equations."""

import numpy as np


def split(ocv, cell, low, top):
    """The open-circuit voltage, its part above the knee read at a surface of its own."""
    knee = cell.get("knee", 1.0)
    return ocv(np.minimum(low, knee)) + ocv(np.maximum(top, knee)) - ocv(knee)


def behind(ocv, cell, z, j1, j2, f=1.0, lag_f=1.0):
    """Volts behind the part of the resistance that is there at once."""
    low = z - lag_f * (cell["lag1"] * j1 + cell["lag2"] * j2)
    top = z - lag_f * cell.get("top", 0.0) * j1
    return split(ocv, cell, low, top) - f * (cell["r1"] * j1 + cell["r2"] * j2)


def simulate(ocv, cell, runs, steps=400):
    """All runs side by side, explicit in the current, exact in the filters. `cell`: ohm, s, and lag in 1/A; `q` in Ah."""
    def of(key, default):
        return np.array([r.get(key, default) for r in runs], float)

    kind = np.array([r["kind"] for r in runs])
    power, charge = kind == "cp", kind == "cccv"
    value, end, z, f, cap = of("value", 0), of("end", 2.5), of("z0", 1.0), of("f", 1.0), cell["q"] * of("cap", 1.0)
    dt, cut, lag_f = of("t", 1) / steps, of("cut", 0), of("lag_f", 1.0)
    e1, e2 = np.exp(-dt / cell["tau1"]), np.exp(-dt / cell["tau2"])
    j1, j2, t, ah, wh = (np.zeros(len(runs)) for _ in range(5))
    r0, done, t_cc = cell["r0"] * f, np.zeros(len(runs), bool), np.full(len(runs), np.nan)
    final, trace = np.full((4, len(runs)), np.nan), []

    def open_v(z, j1, j2):
        return behind(ocv, cell, z, j1, j2, f, lag_f)

    u = open_v(z, j1, j2)
    for _ in range(int(1.7 * steps)):
        root = np.sqrt(np.maximum(u * u - 4 * r0 * value, 0))
        i = np.where(power, (u - root) / (2 * r0), value)
        i = np.where(charge, np.maximum(-value, (u - end) / r0), i)
        t_cc = np.where(charge & np.isnan(t_cc) & (i > -value), t, t_cc)
        v = u - i * r0
        trace.append((ah.copy(), v.copy()))
        z2 = z - i * dt / 3600 / cap
        j1, j2 = j1 * e1 + i * (1 - e1), j2 * e2 + i * (1 - e2)
        u = open_v(z2, j1, j2)
        v2 = u - i * r0
        hit = np.where(charge, -i <= cut, v2 <= end) & ~done
        part = np.where(charge, 0, np.clip((v - end) / np.maximum(v - v2, 1e-12), 0, 1))
        mean = 0.5 * (v + np.where(charge, v2, np.maximum(v2, end)))
        now = np.array([t + dt * part, ah + i * part * dt / 3600, wh + i * part * dt / 3600 * mean, z + (z2 - z) * part])
        final, done = np.where(hit, now, final), done | hit
        if done.all():
            break
        t, ah, wh, z = t + dt, ah + i * dt / 3600, wh + i * np.where(charge, v, 0.5 * (v + v2)) * dt / 3600, z2
    final = np.where(np.isnan(final), np.array([t, ah, wh, z]), final)
    return {"t": final[0], "ah": final[1], "wh": final[2], "z": final[3], "t_cc": t_cc, "trace": trace}


def pulse_v(ocv, cell, z0, amps, seconds, f=1.0, lag_f=1.0):
    j1, j2 = (amps * (1 - np.exp(-seconds / cell[k])) for k in ("tau1", "tau2"))
    z = z0 - amps * seconds / 3600 / cell["q"]
    return float(behind(ocv, cell, z, j1, j2, f, lag_f)) - f * cell["r0"] * amps


def resistance_10s(ocv, cell):
    g1, g2 = (1 - np.exp(-10 / cell[k]) for k in ("tau1", "tau2"))
    lag = cell["lag1"] * g1 + cell["lag2"] * g2
    return cell["r0"] + cell["r1"] * g1 + cell["r2"] * g2 + lag * ocv.slope(0.5)
