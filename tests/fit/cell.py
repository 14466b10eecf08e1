"""The cell model in time, and its settled form without a time axis. See fit_chemistry.py for the equations."""

import numpy as np

# Solid diffusion is more strongly activated than the ohmic and kinetic part: the lag goes with the square of the
# resistance factor. Powers 1, 2 and 3 were tried: all reach the energies, 1 triples the 10 s resistance at 0 degC
# where the runs' own first minute shows 1.8, 3 empties a cell at -20 degC beyond all practice.
LAG_POWER = 2


def simulate(ocv, cell, runs, steps=400):
    """All runs side by side, explicit in the current, exact in the filters. `cell`: ohm, s, and lag in 1/A; `q` in Ah."""
    def of(key, default):
        return np.array([r.get(key, default) for r in runs], float)

    kind = np.array([r["kind"] for r in runs])
    power, charge = kind == "cp", kind == "cccv"
    value, end, z, f, cap = of("value", 0), of("end", 2.5), of("z0", 1.0), of("f", 1.0), cell["q"] * of("cap", 1.0)
    dt, cut, lag_f = of("t", 1) / steps, of("cut", 0), of("f", 1.0) ** LAG_POWER
    e1, e2 = np.exp(-dt / cell["tau1"]), np.exp(-dt / cell["tau2"])
    j1, j2, t, ah, wh = (np.zeros(len(runs)) for _ in range(5))
    r0, done, t_cc = cell["r0"] * f, np.zeros(len(runs), bool), np.full(len(runs), np.nan)
    final, trace = np.full((4, len(runs)), np.nan), []

    def open_v(z, j1, j2):
        surface = z - lag_f * (cell["lag1"] * j1 + cell["lag2"] * j2)
        return ocv(surface) - f * (cell["r1"] * j1 + cell["r2"] * j2)

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


def pulse_v(ocv, cell, z0, amps, seconds):
    j1, j2 = (amps * (1 - np.exp(-seconds / cell[k])) for k in ("tau1", "tau2"))
    surface = z0 - amps * seconds / 3600 / cell["q"] - cell["lag1"] * j1 - cell["lag2"] * j2
    return float(ocv(surface)) - cell["r0"] * amps - cell["r1"] * j1 - cell["r2"] * j2


def resistance_10s(ocv, cell):
    g1, g2 = (1 - np.exp(-10 / cell[k]) for k in ("tau1", "tau2"))
    lag = cell["lag1"] * g1 + cell["lag2"] * g2
    return cell["r0"] + cell["r1"] * g1 + cell["r2"] * g2 + lag * ocv.slope(0.5)


def settled(ocv, cell, gain, scale, run, points=4001):
    """Ah and Wh of a steady discharge in the settled form."""
    z = np.linspace(1, 0, points)
    r = cell["r0"] + cell["r1"] + cell["r2"] * (1 + gain * np.exp(-z / scale))
    u, i = ocv(z), np.full(points, float(run["value"]))
    if run["kind"] == "cp":
        root = u * u - 4 * r * run["value"]
        i = np.where(root > 0, 2 * run["value"] / (u + np.sqrt(np.maximum(root, 0))), np.inf)
    v = u - r * i
    n = max(int(np.argmax(v < run["end"])), 2)
    return cell["q"] * (1 - z[n - 1]), cell["q"] * np.trapezoid(v[:n], -z[:n])
