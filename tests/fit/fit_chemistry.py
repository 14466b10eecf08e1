# /// script
# requires-python = ">=3.11"
# dependencies = ["numpy==2.4.6", "scipy==1.17.1"]
# ///
"""Fits the cell chemistry figures of the core and writes them.

    python tests/fit/fit_chemistry.py           fit, print every figure against its reference
    python tests/fit/fit_chemistry.py --write   the same, then rewrite core/src/physics/chemistry/tables.rs

One cell, I > 0 on discharge, r = its resistance (10 s pulse, mid charge, 25 degC) x temperature x ageing. In time:

    dj1/dt = (I - j1) / tau1        dj2/dt = (I - j2) / tau2           filtered currents, A
    V = OCV(z - r_lag (lag1 j1 + lag2 j2)) - r (r0 I + r1 j1 + r2 j2)

The open-circuit voltage is read at the charge of the particle surface, which runs ahead of the mean charge z under load.
That gives the rise of resistance toward empty by itself. A growth of r2 as exp(-z/b) in its place fits the NMC cell about
as well but cannot fit LFP in time: its 0.2C, 1C and 2C runs end at 3, 16 and 31 % charge, in proportion to the current.

Settled, for a steady ride without a time axis, the same lag is written as a growth of r2:

    V = OCV(z) - r I (r0 + r1 + r2 (1 + empty_gain lag_factor exp(-z / empty_scale)))

Fitted are the runs named in FITTED_ENERGY and FITTED_LFP, the four Ecker2015 totals at 25 degC and the 0.5C runs of
ORegan2022; everything else that is printed is held out of the fit. It was in sight, though, when the form of the model,
LAG_POWER, the weights and the split itself were chosen (about ten forms were tried), so it is a weaker check than a
blind one. In particular the 1C charge was moved into the fit after coming out 5 % short when the 0.5C charge was
fitted in its place. Data and provenance: tests/fixture/cells/SOURCES.md.
"""

import sys

import numpy as np
from scipy.optimize import least_squares

from cell import LAG_POWER, pulse_v, resistance_10s, settled, simulate
from ocv import KNOTS, Ocv
from reference import ROOT, chen_pulses, columns, energy_runs, figures, lfp_runs

TABLES = ROOT / "core/src/physics/chemistry/tables.rs"
T_REF, GAS = 298.15, 8.314462618
FITTED_ENERGY = {"1C", "2C", "2C to 3.0 V", "10 W", "CC-CV 1C", "pulse 0.2", "pulse 0.5", "pulse 0.8"}
FITTED_LFP = {"0.2C", "1C", "2C"}


def curve_errors(out, k, run, points=20):
    q = np.linspace(0.01, 0.97, points) * run["ah"]
    ah, v = (np.array([s[j][k] for s in out["trace"]]) for j in (0, 1))
    return np.interp(q, ah, v) - np.interp(q, *run["curve"])


def misses(ocv, cell, runs, pulses, weight):
    """Misses in units of what is asked: 2 % of energy (3 % at 2C and 30 W), 5 % of charge time, 20 mV on a pulse."""
    out, e = simulate(ocv, cell, runs), []
    for k, run in enumerate(runs):
        if run["kind"] == "cccv":
            e += [(out["t"][k] / run["t"] - 1) / 0.05, 0.5 * (out["t_cc"][k] / run["t_cc"] - 1) / 0.05]
            continue
        ask = 0.03 if run["label"][:2] in ("2C", "30") else 0.02
        e += [(out["wh"][k] / run["wh"] - 1) / ask, 0.5 * (out["ah"][k] / run["ah"] - 1) / ask]
        if "curve" in run:
            e += list(weight * curve_errors(out, k, run) / 0.03)
    return np.array(e + [(pulse_v(ocv, cell, z, 10.0, 10.0) - v) / 0.02 for z, v in pulses])


def fit_cell(ocv, start, free, runs, pulses, weight):
    x0 = [start[k] for k in free]
    found = least_squares(lambda x: misses(ocv, {**start, **dict(zip(free, x))}, runs, pulses, weight), x0,
                          x_scale=x0, bounds=(0, np.inf), diff_step=1e-3)
    return {**start, **dict(zip(free, map(float, found.x)))}


def fit_settled(ocv, cell, runs, fitted):
    """Gain and scale of the settled form from the same runs: on energy, and on charge with less weight."""
    steady = [r for r in runs if r["kind"] != "cccv"]

    def miss(x, chosen):
        out = [settled(ocv, cell, *np.exp(x), r) for r in chosen]
        return [100 * (wh / r["wh"] - 1) for (_, wh), r in zip(out, chosen)] + [25 * (ah / r["ah"] - 1) for (ah, _), r in zip(out, chosen)]

    chosen = [r for r in steady if r["label"] in fitted]
    starts = [np.log([g, s]) for g in (3, 30, 100) for s in (0.05, 0.15, 0.3)]
    found = min((least_squares(miss, x, args=(chosen,), diff_step=1e-3) for x in starts), key=lambda f: f.cost).x
    print("  settled: gain {:.4g}, scale {:.4g}".format(*np.exp(found)))
    for r, wh in zip(steady, miss(found, steady)):
        ah = settled(ocv, cell, *np.exp(found), r)[0]
        line = f"  {'fitted  ' if r['label'] in fitted else 'held out'} settled {r['label']:12s} Wh {wh:+6.2f} %  Ah {100 * (ah / r['ah'] - 1):+6.2f} %"
        print(line + effective(ocv, cell, r, ah, r["wh"] * (1 + wh / 100)))
    return tuple(map(float, np.exp(found)))


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
        line = f"  {mark} {run['label']:12s} Wh {100 * (abs(out['wh'][k]) / run['wh'] - 1):+6.2f} %  Ah {100 * (abs(out['ah'][k]) / run['ah'] - 1):+6.2f} %"
        if run["kind"] == "cccv":
            line += f"  total {100 * (out['t'][k] / run['t'] - 1):+6.2f} %  CC phase {100 * (out['t_cc'][k] / run['t_cc'] - 1):+6.2f} %"
        if run["kind"] == "cc":
            line += effective(ocv, cell, run, out["ah"][k], out["wh"][k])
        if "curve" in run:
            e = 1000 * curve_errors(out, k, run)
            line += f"  voltage rms {np.sqrt(np.mean(e**2)):.0f}, worst {np.abs(e).max():.0f} mV"
        print(line)
    for z, v in pulses:
        mark = "fitted  " if f"pulse {z}" in fitted else "held out"
        print(f"  {mark} pulse {z}    10 A, 10 s: {1000 * (pulse_v(ocv, cell, z, 10.0, 10.0) - v):+.1f} mV")


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
    runs, pulses = energy_runs(), chen_pulses()
    cell = fit_cell(ocv, start, ("r0", "r1", "tau1", "r2", "tau2", "lag1"), [r for r in runs if r["label"] in FITTED_ENERGY],
                    [p for p in pulses if f"pulse {p[0]}" in FITTED_ENERGY], 0.1)
    report("Energy (Chen2020)", ocv, cell, runs, pulses, FITTED_ENERGY)
    report_after_rest(ocv, cell)
    report_steps(ocv, cell)
    return cell, fit_settled(ocv, cell, runs, FITTED_ENERGY)


def fit_lfp(ocv, tau1):
    """A resistance, a slow branch and one slow lag. Nothing in three discharges speaks of seconds, so there is no quick branch."""
    start = {"r0": 0.027, "r1": 0.0, "tau1": tau1, "r2": 0.005, "tau2": 450.0, "lag1": 0.0, "lag2": 0.068, "q": 2.303451}
    runs, free = lfp_runs(), ("r0", "r2", "tau2", "lag2")
    cell = fit_cell(ocv, start, free, runs, [], 0.3)
    report("LFP (Prada2013)", ocv, cell, runs, [], FITTED_LFP)
    steady = fit_settled(ocv, cell, runs, FITTED_LFP)
    for left in ("0.2C", "1C", "2C"):
        without = fit_cell(ocv, cell, ("r0", "tau2", "lag2"), [r for r in runs if r["label"] != left], [], 0.3)
        report(f"LFP refitted without {left}", ocv, without, [r for r in runs if r["label"] == left], [], FITTED_LFP - {left})
    return cell, steady


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
    return cell, fit_settled(ocv, cell, warm, {r["label"] for r in warm}), runs


def factors(kj_mol, kelvin):
    return np.exp(kj_mol * 1000 / GAS * (1 / kelvin - 1 / T_REF))


def fit_temperature(ocv, energy, steady):
    """Activation energy from the 0.5C runs of ORegan2022 at 0, 10, 25, 40 degC, as ratios to 25 degC; 0.2C and 1C are held out.

    A loss of capacity with cold was left free too, per kelvin below and above 25 degC, never negative: both go to zero.
    """
    kelvin = np.array([273.15, 283.15, 298.15, 313.15])
    half = [columns(f"ORegan2022_cc_C_2_from4V2_iso_{k:.0f}K.csv") for k in kelvin - 0.15]
    reference = {2.5: [np.array([c[k][-1] for c in half]) for k in ("Q_Ah", "E_Wh")]}
    for amps in (1.0, 5.0):
        rows = [r for r in figures("ORegan2022", "cc") if float(r["value"]) == amps]
        reference[amps] = [np.array([float(r[k]) for r in rows]) for k in ("Q_Ah", "E_Wh")]

    def ratios(x, amps, steps=400):
        f = factors(x[0], kelvin)
        cap = 1 - x[1] * np.maximum(T_REF - kelvin, 0) + x[2] * np.maximum(kelvin - T_REF, 0)
        out = simulate(ocv, energy, [{"kind": "cc", "value": amps, "t": 18000 / amps, "f": a, "cap": c} for a, c in zip(f, cap)], steps)
        return [out[k] / out[k][2] for k in ("ah", "wh")]

    def off(x, amps):
        return [100 * (got / (ref / ref[2]) - 1) for got, ref in zip(ratios(x, amps), reference[amps])]

    def miss(x):
        ah, wh = off(x, 2.5)
        return np.concatenate([wh, 0.5 * ah])

    found = least_squares(miss, [24.0, 5e-4, 2e-4], x_scale=[10, 1e-3, 1e-3], bounds=(0, np.inf), diff_step=1e-2).x
    print(f"\nTemperature (ORegan2022): {found[0]:.2f} kJ/mol, capacity per kelvin {found[1]:.1e} below and {found[2]:.1e} above 25 degC")
    final = (round(found[0], 1), 0.0, 0.0)
    for amps in (2.5, 1.0, 5.0):
        ah, wh = off(final, amps)
        print(f"  {'fitted  ' if amps == 2.5 else 'held out'} {amps / 5:g}C at 0, 10, 40 degC: ratio of Wh off by {wh[[0, 1, 3]].round(2)} %, of Ah {ah[[0, 1, 3]].round(2)} %")
    drop, f = [4.2 - c["V_V"][1] for c in half], factors(final[0], kelvin)
    for amps in (2.5, 1.0):
        run, (gain, scale), wh = {"kind": "cc", "value": amps, "end": 2.5}, steady, []
        for k in f:
            cold = {**energy, **{name: energy[name] * k for name in ("r0", "r1", "r2")}}
            wh.append(settled(ocv, cold, gain * k**LAG_POWER, scale, run)[1])
        ref = reference[amps][1]
        print(f"  held out settled {amps / 5:g}C: ratio of Wh off by", (100 * (np.array(wh) / wh[2] / (ref / ref[2]) - 1))[[0, 1, 3]].round(2), "%")
    print("  held out drop in the first minute, ratio to 25 degC:", np.round(np.array(drop) / drop[2], 2), "resistance factor", f.round(2))
    return final[0]


def report_power_cold(ocv, cell, runs, kj_mol):
    cold = next(r for r in runs if r["kelvin"] < 280)
    warm = next(r for r in runs if r["kelvin"] > 280 and r["value"] == cold["value"])
    both = [{**warm, "f": float(factors(kj_mol, r["kelvin"]))} for r in (cold, warm)]
    out = simulate(ocv, cell, both, steps=2000)
    print("  held out Power 1C at 0 degC: ratio of", ", ".join(
        f"{k} off by {100 * (out[k][0] / out[k][1] / (cold[k] / warm[k]) - 1):+.2f} %" for k in ("wh", "ah")))


# ---- writing ------------------------------------------------------------------------------------------------------


def rust(x):
    text = f"{x:.6g}"
    return text if "." in text or "e" in text else text + ".0"


def write(ocvs, shapes, references, kj_mol):
    out = ["//! Fitted figures of the chemistry classes.", "//!",
           "//! Written by `tests/fit/fit_chemistry.py --write`: change the fit, not this file.", "",
           "use super::{Knot, ReferenceCell, Shape};", "",
           "/// Activation energy of the resistance, J/mol. Source: fitted to ORegan2022 (O'Regan et al.,",
           "/// Electrochim. Acta 425:140700, 2022), 0.5C at 0, 10, 25 and 40 degC.",
           f"pub(super) const ACTIVATION_J_MOL: f64 = {kj_mol * 1000:.1f};"]
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


def shape_of(ocv, cell, steady, doc):
    r = resistance_10s(ocv, cell)
    return {"r0_share": cell["r0"] / r, "r1_share": cell["r1"] / r, "r2_share": cell["r2"] / r, "tau1_s": cell["tau1"],
            "tau2_s": cell["tau2"], "lag1_per_v": cell["lag1"] / r, "lag2_per_v": cell["lag2"] / r,
            "empty_gain": steady[0], "empty_scale": steady[1], "doc": doc}


def main():
    chen, ecker, prada = (Ocv(f"ocv_{s}_fine401.csv") for s in ("Chen2020", "Ecker2015", "Prada2013"))
    for ocv in (chen, ecker, prada):
        print("{}: {} points, worst error {:.2f} mV above 3 % charge, {:.2f} mV below".format(ocv.name, KNOTS, *ocv.errors()))
    energy, energy_steady = fit_energy(chen)
    lfp, lfp_steady = fit_lfp(prada, energy["tau1"])
    power, power_steady, power_runs = fit_power(ecker, energy)
    kj_mol = fit_temperature(chen, energy, energy_steady)
    report_power_cold(ecker, power, power_runs, kj_mol)
    if "--write" in sys.argv:
        citations = {"ENERGY": ("Chen2020", "Chen et al., J. Electrochem. Soc. 167(8):080534, 2020"),
                     "POWER": ("Ecker2015", "Ecker et al., J. Electrochem. Soc. 162(9):A1836, 2015"),
                     "LFP": ("Prada2013", "Prada et al., J. Electrochem. Soc. 160(4):A616, 2013")}
        docs = {k: [f"Source: {s} ({c}), computed;", "worst error against its 401 points {:.2f} mV above 3 % charge, {:.2f} mV below.".format(*o.errors())]
                for (k, (s, c)), o in zip(citations.items(), (chen, ecker, prada))}
        write({k: (o, docs[k]) for k, o in zip(citations, (chen, ecker, prada))},
              {"ENERGY": shape_of(chen, energy, energy_steady, ["Source: fitted to Chen2020 discharge, charge and pulse runs at 25 degC."]),
               "POWER": shape_of(ecker, power, power_steady, [
                   "Source: the make-up of the energy class, assumed; its scale from the Ecker2015 totals at 0.2C and 1C."]),
               "LFP": shape_of(prada, lfp, lfp_steady, ["Source: fitted to Prada2013 discharge runs at 0.2C, 1C and 2C, 25 degC; its 10 s figure",
                                                        "is the model's own: no pulse was there to fit, hence no quick branch."])},
              {"ENERGY": (resistance_10s(chen, energy), energy["q"], "Source: Chen2020."),
               "POWER": (resistance_10s(ecker, power), power["q"], "Source: Ecker2015 totals at 0.2C and 1C, with the make-up of the energy class."),
               "LFP": (resistance_10s(prada, lfp), lfp["q"], "Source: Prada2013.")}, kj_mol)


main()
