"""How resistance and lag grow with cold, as Arrhenius factors: activation energies in kJ/mol.

Energy class: fitted. LFP: its resistance from a published set, its lag chosen, for what there is disagrees. Share of the
charge at 25 degC that a cell delivers at 0, -10 and -20 degC:

    the LFP set in BPX form as published (80 kJ/mol for diffusion in the iron phosphate), 0.5C    54, 22, 12 %
    the same with 30 kJ/mol, what it has for graphite (BPX_LFP_mild in figures.csv), 0.5C        95, 89, 78 %
    a cell of 10 Ah, measured, rate not told [1]                                                 80, 66, 44 %
    a power cell of 20 Ah, measured, 0.3C [1]                                                            55 %
    an LFP electrode: less than half of 20 degC is left at -20 degC [2]

[1] A trader's summary of three makers' tests, read in excerpt, second-hand. [2] Electrochim. Acta 60:269-273 (2012), abstract; it gives 34 and 41 kJ/mol for the charge transfer.

LFP_LAG puts the model between the measured cells and the milder set.
"""

import numpy as np
from scipy.optimize import least_squares

from cell import simulate
from reference import columns, figures

T_REF, GAS = 298.15, 8.314462618
LFP_LAG = 24.0


def factors(kj_mol, kelvin):
    return np.exp(kj_mol * 1000 / GAS * (1 / np.asarray(kelvin) - 1 / T_REF))


def fit_energy_cold(ocv, energy):
    """Activation energy from the 0.5C runs of ORegan2022 at 0, 10, 25, 40 degC, as ratios to 25 degC; 0.2C and 1C are held out.

    The lag's is twice the resistance's: of the powers 1, 2 and 3 of the factor the second serves both the energy and the
    first minute. A loss of capacity with cold was left free too, never negative: it goes to zero.
    """
    kelvin = np.array([273.15, 283.15, 298.15, 313.15])
    half = [columns(f"ORegan2022_cc_C_2_from4V2_iso_{k:.0f}K.csv") for k in kelvin - 0.15]
    reference = {2.5: [np.array([c[k][-1] for c in half]) for k in ("Q_Ah", "E_Wh")]}
    for amps in (1.0, 5.0):
        rows = [r for r in figures("ORegan2022", "cc") if float(r["value"]) == amps]
        reference[amps] = [np.array([float(r[k]) for r in rows]) for k in ("Q_Ah", "E_Wh")]

    def off(x, amps):
        runs = [{"kind": "cc", "value": amps, "t": 18000 / amps, "f": a, "lag_f": b}
                for a, b in zip(factors(x[0], kelvin), factors(x[1], kelvin))]
        out = simulate(ocv, energy, runs)
        return [100 * (out[k] / out[k][2] / (ref / ref[2]) - 1) for k, ref in zip(("ah", "wh"), reference[amps])]

    def miss(x):
        ah, wh = off(x, 2.5)
        return np.concatenate([wh, 0.5 * ah])

    found = round(float(least_squares(lambda x: miss([x[0], 2 * x[0]]), [24.0], diff_step=1e-2).x[0]), 1)
    free = least_squares(miss, [24.0, 48.0], diff_step=1e-2).x
    print(f"\nTemperature (ORegan2022): {found:.1f} kJ/mol, the lag twice that; each left free {free.round(1)}")
    for amps in (2.5, 1.0, 5.0):
        ah, wh = off((found, 2 * found), amps)
        print(f"  {'fitted  ' if amps == 2.5 else 'held out'} {amps / 5:g}C at 0, 10, 40 degC: ratio of Wh off by {wh[[0, 1, 3]].round(2)} %, of Ah {ah[[0, 1, 3]].round(2)} %")
    drop = np.array([4.2 - c["V_V"][1] for c in half])
    print("  held out drop in the first minute, ratio to 25 degC:", (drop / drop[2]).round(2), "resistance factor", factors(found, kelvin).round(2))
    report(ocv, energy, (found, 2 * found), (2.5, 2.8, 3.0))
    return found, 2 * found


def fit_lfp_cold(ocv, lfp):
    """Resistance: 10 s of 0.5C at half charge, of the set in BPX form. Lag: chosen, see above."""
    rest = {r["T_K"]: float(r["V_V"]) for r in figures("BPX_LFP", "rest")}
    kelvin = np.array([float(k) for k in rest])
    drop = np.array([rest[r["T_K"]] - float(r["V_V"]) for r in figures("BPX_LFP", "pulse")])
    ratio = drop / drop[kelvin == T_REF]
    found = round(float(least_squares(lambda x: np.log(factors(x[0], kelvin) / ratio), [24.0]).x[0]), 1)
    print(f"\nLFP, resistance: {found:.1f} kJ/mol; at", (kelvin - 273.15).round(), "degC the set shows", ratio.round(2), "this gives", factors(found, kelvin).round(2))
    report(ocv, lfp, (found, LFP_LAG), (2.5, 2.8, 3.0))
    return found, LFP_LAG


def report(ocv, cell, activation, ends):
    """What a cell delivers in the cold, at one temperature throughout."""
    celsius = np.array([25.0, 40.0, 10.0, 0.0, -10.0, -20.0])
    for rate in (0.2, 0.3, 0.5, 1.0):
        for end in ends:
            run = {"kind": "cc", "value": rate * cell["q"], "end": end, "t": 3600 / rate}
            out = simulate(ocv, cell, [{**run, "f": a, "lag_f": b} for a, b in zip(*(factors(e, celsius + 273.15) for e in activation))])
            print(f"  {rate:g}C to {end} V: of 25 degC's Wh at", ", ".join(f"{t:g} {100 * w:.0f} %" for t, w in zip(celsius[1:], out["wh"][1:] / out["wh"][0])),
                  " Ah", ", ".join(f"{100 * w:.0f}" for w in out["ah"][1:] / out["ah"][0]))


def report_power_cold(ocv, cell, runs, activation):
    cold = next(r for r in runs if r["kelvin"] < 280)
    warm = next(r for r in runs if r["kelvin"] > 280 and r["value"] == cold["value"])
    both = [{**warm, "f": float(factors(activation[0], r["kelvin"])), "lag_f": float(factors(activation[1], r["kelvin"]))} for r in (cold, warm)]
    out = simulate(ocv, cell, both, steps=2000)
    print("  held out Power 1C at 0 degC: ratio of", ", ".join(
        f"{k} off by {100 * (out[k][0] / out[k][1] / (cold[k] / warm[k]) - 1):+.2f} %" for k in ("wh", "ah")))
