"""The reference runs that the fit reads; provenance in tests/fixture/cells/SOURCES.md."""

import csv
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
CELLS = ROOT / "tests/fixture/cells"


def columns(name):
    with open(CELLS / name) as f:
        rows = list(csv.DictReader(line for line in f if not line.startswith("#")))
    return {k: np.array([float(r[k]) for r in rows]) for k in rows[0]}


def figures(cell_set, kind):
    with open(CELLS / "figures.csv") as f:
        rows = csv.DictReader(line for line in f if not line.startswith("#"))
        return [r for r in rows if r["set"] == cell_set and r["kind"] == kind]


def trace_run(label, kind, value, end, name):
    c = columns(name)
    return {"label": label, "kind": kind, "value": value, "end": end, "t": c["t_s"][-1], "ah": c["Q_Ah"][-1],
            "wh": c["E_Wh"][-1], "curve": (c["Q_Ah"], c["V_V"])}


def energy_runs():
    runs = [trace_run(lab, "cc", i, 2.5, f"Chen2020_cc_{n}_25C.csv") for lab, i, n in
            (("0.2C", 1.0, "C_5"), ("0.5C", 2.5, "C_2"), ("1C", 5.0, "1C"), ("2C", 10.0, "2C"))]
    runs += [trace_run(f"{w} W", "cp", w, 2.5, f"Chen2020_cp_{w}W_25C.csv") for w in (5, 10, 20, 30)]
    for r in figures("Chen2020", "cc"):
        runs.append({"label": f"{float(r['value']) / 5:.0f}C to 3.0 V", "kind": "cc", "value": float(r["value"]), "end": 3.0,
                     "t": float(r["t_s"]), "ah": float(r["Q_Ah"]), "wh": float(r["E_Wh"])})
    for r in figures("Chen2020", "cccv"):
        runs.append({"label": f"CC-CV {float(r['value']) / 5:g}C", "kind": "cccv", "value": float(r["value"]), "end": 4.2,
                     "cut": 0.25, "z0": 0.0, "t": float(r["t_s"]), "ah": float(r["Q_Ah"]), "wh": float(r["E_Wh"]),
                     "t_cc": float(r["t_cc_s"])})
    return runs


LFP_TRACES = {"0.46": "C_5", "1.15": "C_2", "2.3": "1C", "3.45": "3C_2", "4.6": "2C"}


def lfp_runs():
    """Discharges at five currents, each to four stop voltages, three constant powers and two charges."""
    runs = []
    for r in figures("Prada2013", "cc"):
        amps, end = float(r["value"]), float(r["end_V"])
        run = {"label": f"{amps / 2.3:g}C to {end} V", "kind": "cc", "value": amps, "end": end,
               "t": float(r["t_s"]), "ah": float(r["Q_Ah"]), "wh": float(r["E_Wh"])}
        if end == 2.0:
            c = columns(f"Prada2013_cc_{LFP_TRACES[r['value']]}_25C.csv")
            run["curve"] = (c["Q_Ah"], c["V_V"])
        runs.append(run)
    for r in figures("Prada2013", "cp"):
        runs.append({"label": f"{r['value']} W to {r['end_V']} V", "kind": "cp", "value": float(r["value"]), "end": float(r["end_V"]),
                     "t": float(r["t_s"]), "ah": float(r["Q_Ah"]), "wh": float(r["E_Wh"])})
    for r in figures("Prada2013", "cccv"):
        runs.append({"label": f"CC-CV {float(r['value']) / 2.3:g}C", "kind": "cccv", "value": float(r["value"]), "end": 3.6,
                     "cut": 0.115, "z0": 0.0, "t": float(r["t_s"]), "ah": float(r["Q_Ah"]), "wh": float(r["E_Wh"]),
                     "t_cc": float(r["t_cc_s"])})
    return runs


def pulses(cell_set, amps=None):
    """Charge before, current, seconds, volts at the end."""
    rows = [(float(r["soc0"]), float(r["value"]), float(r["t_s"]), float(r["V_V"])) for r in figures(cell_set, "pulse")]
    return [row for row in rows if amps is None or row[1] in amps]
