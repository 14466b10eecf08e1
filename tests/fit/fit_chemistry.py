# /// script
# requires-python = ">=3.11"
# dependencies = ["numpy==2.4.6", "scipy==1.17.1"]
# ///
"""Fits the cell chemistry figures of the core and writes them.

    python tests/fit/fit_chemistry.py           fit, print every figure against its reference
    python tests/fit/fit_chemistry.py --write   the same, then rewrite core/src/physics/chemistry/tables.rs

One cell, I > 0 on discharge, r = its resistance (10 s pulse, mid charge, 25 degC) x temperature x ageing:

    dj1/dt = (I - j1) / tau1        dj2/dt = (I - j2) / tau2           filtered currents, A
    V = OCV(z - r_lag (lag1 j1 + lag2 j2)) - r (r0 I + r1 j1 + r2 j2)

The open-circuit voltage is read at the charge of the particle surface, which runs ahead of the mean charge z under load.
That gives the rise of resistance toward empty by itself. A growth of r2 as exp(-z/b) in its place fits the NMC cell about
as well but cannot fit LFP in time: its 0.2C, 1C and 2C runs end at 3, 16 and 31 % charge, in proportion to the current.

LFP has two surfaces. The rise of its voltage above a knee belongs to the iron phosphate, all below to the graphite, whose
surface runs ahead twenty times as far. So the part of the curve above the knee is read at a surface of its own:

    V = OCV(min(low, knee)) + OCV(max(top, knee)) - OCV(knee) - r (...)     low = z - r_lag (lag1 j1 + lag2 j2), top = z - r_lag top j1

With one surface a charge at 0.5C takes 9 % too long and a full cell sags too late.

Fitted are the runs named in FITTED_ENERGY and FITTED_LFP, the four Ecker2015 totals at 25 degC and the 0.5C runs of
ORegan2022; everything else that is printed is held out of the fit. It was in sight, though, when the form of the model,
the weights and the split itself were chosen (about ten forms were tried), so it is a weaker check than a blind one. In
particular the 1C charge of the energy class was moved into the fit after coming out 5 % short when the 0.5C charge was
fitted in its place. Data and provenance: tests/fixture/cells/SOURCES.md.
"""

import sys

import numpy as np
from scipy.optimize import least_squares

from cell import pulse_v, resistance_10s, simulate
from cold import fit_energy_cold, fit_lfp_cold, report_power_cold
from ocv import KNOTS, Ocv
from reference import ROOT, columns, energy_runs, figures, lfp_runs, pulses

TABLES = ROOT / "core/src/physics/chemistry/tables.rs"
FITTED_ENERGY = {"1C", "2C", "2C to 3.0 V", "10 W", "CC-CV 1C", "pulse 0.2 10 A", "pulse 0.5 10 A",
                 "pulse 0.8 10 A"}
FITTED_LFP = {f"{c} to {v} V" for c in ("0.2C", "1C", "2C") for v in (3.0, 2.8, 2.5, 2.0)} | {"CC-CV 0.5C"} | {
    f"pulse {z:g} {a:g} A" for z in (1, 0.8, 0.5, 0.2) for a in (2.3, 4.6)}
# Charge above which the open-circuit voltage of LFP belongs to the iron phosphate: chosen where its table is flattest.
KNEE = 0.94


def curve_errors(out, k, run, points=20):
    q = np.linspace(0.01, 0.97, points) * run["ah"]
    ah, v = (np.array([s[j][k] for s in out["trace"]]) for j in (0, 1))
    return np.interp(q, ah, v) - np.interp(q, *run["curve"])


def misses(ocv, cell, runs, pulses, weight, ask_wh=0.02):
    """Misses in units of what is asked: 2 % of energy (half as much again at 2C and 30 W), 5 % of charge time, 20 mV on a pulse."""
    out, e = simulate(ocv, cell, runs), []
    for k, run in enumerate(runs):
        if run["kind"] == "cccv":
            e += [(out["t"][k] / run["t"] - 1) / 0.05, 0.5 * (out["t_cc"][k] / run["t_cc"] - 1) / 0.05]
            continue
        ask = ask_wh * (1.5 if run["label"][:2] in ("2C", "30") else 1)
        e += [(out["wh"][k] / run["wh"] - 1) / ask, 0.5 * (out["ah"][k] / run["ah"] - 1) / ask]
        if "curve" in run:
            e += list(weight * curve_errors(out, k, run) / 0.03)
    return np.array(e + [(pulse_v(ocv, cell, z, i, t) - v) / 0.02 for z, i, t, v in pulses])


def fit_cell(ocv, start, free, runs, pulses, weight, ask_wh=0.02):
    x0 = [start[k] for k in free]
    found = least_squares(lambda x: misses(ocv, {**start, **dict(zip(free, x))}, runs, pulses, weight, ask_wh), x0,
                          x_scale=x0, bounds=(0, np.inf), diff_step=1e-3)
    return {**start, **dict(zip(free, map(float, found.x)))}


def effective(ocv, cell, run, ah, wh):
    """(mean open-circuit voltage over the charge delivered - mean voltage) / current, against the reference's own."""
    if run["kind"] != "cc":
        return ""
    ours, theirs = (1000 * (ocv.mean_v(1 - a / cell["q"]) - w / a) / run["value"] for w, a in ((wh, ah), (run["wh"], run["ah"])))
    return f"  effective {ours:.1f} mOhm, reference {theirs:.1f}"


def report(title, ocv, cell, runs, pulses, fitted):
    print(f"\n{title}: R10 {1000 * resistance_10s(ocv, cell):.2f} mOhm; " + ", ".join(f"{k} {v:.5g}" for k, v in cell.items()))
    out = simulate(ocv, cell, runs, steps=4000)
    for k, run in enumerate(runs):
        mark = "fitted  " if run["label"] in fitted else "held out"
        line = f"  {mark} {run['label']:14s} Wh {100 * (abs(out['wh'][k]) / run['wh'] - 1):+6.2f} %  Ah {100 * (abs(out['ah'][k]) / run['ah'] - 1):+6.2f} %"
        if run["kind"] == "cccv":
            line += f"  total {100 * (out['t'][k] / run['t'] - 1):+6.2f} %  CC phase {100 * (out['t_cc'][k] / run['t_cc'] - 1):+6.2f} %"
        if run["kind"] == "cc":
            line += effective(ocv, cell, run, out["ah"][k], out["wh"][k])
        if "curve" in run:
            e = 1000 * curve_errors(out, k, run)
            line += f"  voltage rms {np.sqrt(np.mean(e**2)):.0f}, worst {np.abs(e).max():.0f} mV"
        print(line)
    for z, i, t, v in pulses:
        name = f"pulse {z:g} {i:g} A"
        mark = "fitted  " if name in fitted else "held out"
        print(f"  {mark} {name}, {t:g} s: {1000 * (pulse_v(ocv, cell, z, i, t) - v):+.1f} mV")


def report_after_rest(ocv, cell):
    """Charge after a 1C discharge and one hour of rest: wholly held out. After that hour the filters have all but settled."""
    empty = simulate(ocv, cell, [{"kind": "cc", "value": 5.0, "end": 2.5, "t": 3594.19}], steps=4000)["z"][0]
    for r in figures("Chen2020", "cccv_after_1C_and_1h_rest"):
        run = {"kind": "cccv", "value": float(r["value"]), "end": 4.2, "cut": 0.25, "z0": empty, "t": float(r["t_s"])}
        out = simulate(ocv, cell, [run], steps=4000)
        print(f"  held out CC-CV {run['value'] / 5:g}C after discharge and rest: total {100 * (out['t'][0] / run['t'] - 1):+.2f} %,"
              f" CC phase {100 * (out['t_cc'][0] / float(r['t_cc_s']) - 1):+.2f} %")


def report_steps(ocv, cell):
    c = columns("Chen2020_step_resistance.csv")
    e = []
    for z0, i, t, v, _, r in zip(*c.values()):
        e.append((t, 1000 * (pulse_v(ocv, cell, z0, i, t) - v)))
    for t in sorted({t for t, _ in e}):
        at = [x for s, x in e if s == t]
        print(f"  held out steps at {t:5g} s, 5 and 10 A, 30-90 % charge: {min(at):+.0f} .. {max(at):+.0f} mV")


# ---- the four fits ------------------------------------------------------------------------------------------------


def fit_energy(ocv):
    start = {"r0": 0.018, "r1": 0.006, "tau1": 12.0, "r2": 0.025, "tau2": 600.0, "lag1": 0.0043, "lag2": 0.0, "q": 5.153198}
    runs, steps = energy_runs(), pulses("Chen2020")
    cell = fit_cell(ocv, start, ("r0", "r1", "tau1", "r2", "tau2", "lag1"), [r for r in runs if r["label"] in FITTED_ENERGY],
                    [p for p in steps if f"pulse {p[0]:g} {p[1]:g} A" in FITTED_ENERGY], 0.1)
    report("Energy (Chen2020)", ocv, cell, runs, steps, FITTED_ENERGY)
    report_after_rest(ocv, cell)
    report_steps(ocv, cell)
    return cell


def fit_lfp(ocv):
    """A resistance, a slow branch, two lags for the one surface, a quick one for the other. Left free, a quick branch goes to nothing."""
    start = {"r0": 0.02, "r1": 0.0, "tau1": 11.0, "r2": 0.01, "tau2": 540.0, "lag1": 0.02, "lag2": 0.05, "top": 0.007, "q": 2.303451, "knee": KNEE}
    runs, steps = lfp_runs(), pulses("Prada2013")
    cell = fit_cell(ocv, start, ("r0", "r2", "tau1", "tau2", "lag1", "lag2", "top"),
                    [r for r in runs if r["label"] in FITTED_LFP],
                    [p for p in steps if f"pulse {p[0]:g} {p[1]:g} A" in FITTED_LFP], 0.3, 0.01)
    report("LFP (Prada2013)", ocv, cell, runs, steps, FITTED_LFP)
    return cell


def fit_power(ocv, energy):
    """No discharge trace exists: the make-up of the energy class is assumed. Size and resistance come from four totals (0.2C, 1C; Ah, Wh)."""
    runs = [{"label": f"{float(r['value']) / 0.15625:g}C", "kind": "cc", "value": float(r["value"]), "end": 2.5,
             "t": float(r["Q_Ah"]) / float(r["value"]) * 3600, "ah": float(r["Q_Ah"]), "wh": float(r["E_Wh"]),
             "kelvin": float(r["T_K"])} for r in figures("Ecker2015", "cc")]
    warm = [r for r in runs if r["kelvin"] == 298.15]

    def cell_of(x):
        return {**{k: energy[k] * x[0] for k in ("r0", "r1", "r2", "lag1", "lag2")}, "tau1": energy["tau1"], "tau2": energy["tau2"], "q": x[1]}

    def miss(x):
        out = simulate(ocv, cell_of(x), warm, steps=1000)
        return 100 * np.concatenate([out[k] / np.array([r[k] for r in warm]) - 1 for k in ("ah", "wh")])

    cell = cell_of(list(map(float, least_squares(miss, [9.0, 0.171], x_scale=[1.0, 0.01], diff_step=1e-3).x)))
    report("Power (Ecker2015)", ocv, cell, warm, [], {r["label"] for r in warm})
    return cell, runs


# ---- writing ------------------------------------------------------------------------------------------------------


def rust(x):
    text = f"{x:.6g}"
    return text if "." in text or "e" in text else text + ".0"


def write(ocvs, shapes, references, cold):
    out = ["//! Fitted figures of the chemistry classes.", "//!",
           "//! Written by `tests/fit/fit_chemistry.py --write`: change the fit, not this file.", "",
           "use super::{Activation, Knot, ReferenceCell, Shape};"]
    for name, (resistance, lag, doc) in cold.items():
        out += ["", *(f"/// {line}" for line in doc), f"pub(super) const {name}_COLD: Activation =",
                f"    Activation {{ resistance_j_mol: {1000 * resistance:.1f}, lag_j_mol: {1000 * lag:.1f} }};"]
    for name, shape in shapes.items():
        out += ["", *(f"/// {line}" for line in shape["doc"]), f"pub(super) const {name}_SHAPE: Shape = Shape {{",
                *(f"    {k}: {rust(v)}," for k, v in shape.items() if k != "doc"), "};"]
    for name, (r, q, doc) in references.items():
        out += ["", f"/// {doc}", f"pub(super) const {name}_CELL: ReferenceCell =",
                f"    ReferenceCell {{ capacity_ah: {rust(q)}, resistance_ohm: {rust(r)} }};"]
    for name, (ocv, doc) in ocvs.items():
        out += ["", *(f"/// {line}" for line in doc), f"pub(super) const {name}_OCV: [Knot; {KNOTS}] = ["]
        out += [f"    Knot::new({z:.4f}, {v:.6f}, {m:.3f})," for z, v, m in zip(ocv.z, ocv.v, ocv.m)]
        out += ["];"]
    TABLES.parent.mkdir(parents=True, exist_ok=True)
    TABLES.write_text("\n".join(out) + "\n")
    print(f"\nwrote {TABLES.relative_to(ROOT)}")


def shape_of(ocv, cell, doc):
    r = resistance_10s(ocv, cell)
    return {"r0_share": cell["r0"] / r, "r1_share": cell["r1"] / r, "r2_share": cell["r2"] / r, "tau1_s": cell["tau1"],
            "tau2_s": cell["tau2"], "lag1_per_v": cell["lag1"] / r, "lag2_per_v": cell["lag2"] / r,
            "top_from": cell.get("knee", 1.0), "top_lag_per_v": cell.get("top", 0.0) / r, "doc": doc}


SETS = {"ENERGY": ("Chen2020", "Chen et al., J. Electrochem. Soc. 167(8):080534, 2020"),
        "POWER": ("Ecker2015", "Ecker et al., J. Electrochem. Soc. 162(9):A1836, 2015"),
        "LFP": ("Prada2013", "Prada et al., J. Electrochem. Soc. 160(4):A616, 2013")}
SHAPES = {"ENERGY": ["Source: fitted to Chen2020 discharge, charge and pulse runs at 25 degC."],
          "POWER": ["Source: the make-up of the energy class, assumed; its scale from the Ecker2015 totals at 0.2C and 1C."],
          "LFP": ["Source: fitted to Prada2013 at 25 degC: discharges at 0.2C, 1C and 2C to 3.0, 2.8, 2.5 and 2.0 V,",
                  "a charge at 0.5C, pulses of 10 and 60 s at 1C and 2C."]}
CELLS = {"ENERGY": "Source: Chen2020.",
         "POWER": "Source: Ecker2015 totals at 0.2C and 1C, with the make-up of the energy class.",
         "LFP": "Source: Prada2013. Its own ten seconds show 31 mohm at 1C, 24 at 2C and 18 at 4C."}
COLD = {"ENERGY": ["Source: fitted to ORegan2022 (O'Regan et al., Electrochim. Acta 425:140700, 2022), 0.5C at 0, 10, 25",
                   "and 40 degC; the lag's is twice the resistance's."],
        "POWER": ["Source: that of the energy class, assumed; Ecker2015 at 0 degC and 1C agrees within 2 %."],
        "LFP": ["Source: the resistance is fitted to pulses of the LFP set in BPX form (`tests/fixture/cells/SOURCES.md`), -20 to",
                "25 degC. The lag is chosen, between figures that disagree: see `tests/fit/cold.py`."]}


def main():
    ocvs = {name: Ocv(f"ocv_{s}_fine401.csv") for name, (s, _) in SETS.items()}
    for ocv in ocvs.values():
        print("{}: {} points, worst error {:.2f} mV above 3 % charge, {:.2f} mV below".format(ocv.name, KNOTS, *ocv.errors()))
    energy, lfp = fit_energy(ocvs["ENERGY"]), fit_lfp(ocvs["LFP"])
    power, power_runs = fit_power(ocvs["POWER"], energy)
    cells = {"ENERGY": energy, "POWER": power, "LFP": lfp}
    warm = fit_energy_cold(ocvs["ENERGY"], energy)
    report_power_cold(ocvs["POWER"], power, power_runs, warm)
    cold = {"ENERGY": warm, "POWER": warm, "LFP": fit_lfp_cold(ocvs["LFP"], lfp)}
    if "--write" in sys.argv:
        docs = {k: [f"Source: {s} ({c}), computed;", "worst error against its 401 points {:.2f} mV above 3 % charge, {:.2f} mV below.".format(*ocvs[k].errors())]
                for k, (s, c) in SETS.items()}
        write({k: (ocvs[k], docs[k]) for k in SETS}, {k: shape_of(ocvs[k], cells[k], SHAPES[k]) for k in SETS},
              {k: (resistance_10s(ocvs[k], cells[k]), cells[k]["q"], CELLS[k]) for k in SETS},
              {k: (*cold[k], COLD[k]) for k in SETS})


main()
