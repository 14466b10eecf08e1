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


def lfp_runs():
    two = figures("Prada2013", "cc")[0]
    return [trace_run("0.2C", "cc", 0.46, 2.0, "Prada2013_cc_C_5_25C.csv"), trace_run("1C", "cc", 2.3, 2.0, "Prada2013_cc_1C_25C.csv"),
            {"label": "2C", "kind": "cc", "value": 4.6, "end": 2.0, "t": float(two["Q_Ah"]) / 4.6 * 3600,
             "ah": float(two["Q_Ah"]), "wh": float(two["E_Wh"])}]


def chen_pulses():
    return [(float(r["soc0"]), float(r["V_V"])) for r in figures("Chen2020", "pulse")]
