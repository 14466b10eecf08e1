# /// script
# requires-python = ">=3.11"
# dependencies = ["pybamm==26.10.1.1", "pybammsolvers==0.11.1", "casadi==3.8.1", "bpx==1.1.1", "numpy==2.4.6", "scipy==1.17.1"]
# ///
"""Computes the reference runs of tests/fixture/cells anew, with the versions named above.

    python tests/fit/reference_runs.py            compute, print the largest difference from what is kept
    python tests/fit/reference_runs.py --write    and write the files
    python tests/fit/reference_runs.py NAME ...   only these files

The rows of figures.csv that come from a set in BPX form are kept as they are unless --bpx=FILE names that set.

Doyle-Fuller-Newman model, isothermal, the package's own mesh and solver. The times of each file are kept: what is
computed is all else. A difference of more than LARGEST is an error, since it would mean another model.
"""

import csv
import json
import sys
from pathlib import Path

import numpy as np
import pybamm

CELLS = Path(__file__).resolve().parents[2] / "tests/fixture/cells"
# Of the largest value in a column. Solver tolerances of the package leave 1e-5 or so.
LARGEST = 1e-3

# Files of runs: what the name says of the cell, how it starts, and what is done to it.
TRACES = {
    "Chen2020_cc_C_5_25C": ("Chen2020", 1, ["Discharge at 1 A until 2.5 V"]),
    "Chen2020_cc_C_2_25C": ("Chen2020", 1, ["Discharge at 2.5 A until 2.5 V"]),
    "Chen2020_cc_1C_25C": ("Chen2020", 1, ["Discharge at 5 A until 2.5 V"]),
    "Chen2020_cc_2C_25C": ("Chen2020", 1, ["Discharge at 10 A until 2.5 V"]),
    "Chen2020_cp_5W_25C": ("Chen2020", 1, ["Discharge at 5 W until 2.5 V"]),
    "Chen2020_cp_10W_25C": ("Chen2020", 1, ["Discharge at 10 W until 2.5 V"]),
    "Chen2020_cp_20W_25C": ("Chen2020", 1, ["Discharge at 20 W until 2.5 V"]),
    "Chen2020_cp_30W_25C": ("Chen2020", 1, ["Discharge at 30 W until 2.5 V"]),
    "Chen2020_cccv_C_2_from_soc0_25C": ("Chen2020", 0, ["Charge at 2.5 A until 4.2 V", "Hold at 4.2 V until 0.25 A"]),
    "Chen2020_cccv_1C_from_soc0_25C": ("Chen2020", 0, ["Charge at 5 A until 4.2 V", "Hold at 4.2 V until 0.25 A"]),
    "Prada2013_cc_C_5_25C": ("Prada2013", 1, ["Discharge at 0.46 A until 2.0 V"]),
    "Prada2013_cc_C_2_25C": ("Prada2013", 1, ["Discharge at 1.15 A until 2.0 V"]),
    "Prada2013_cc_1C_25C": ("Prada2013", 1, ["Discharge at 2.3 A until 2.0 V"]),
    "Prada2013_cc_3C_2_25C": ("Prada2013", 1, ["Discharge at 3.45 A until 2.0 V"]),
    "Prada2013_cc_2C_25C": ("Prada2013", 1, ["Discharge at 4.6 A until 2.0 V"]),
    "Prada2013_cccv_C_2_from_soc0_25C": ("Prada2013", 0, ["Charge at 1.15 A until 3.6 V", "Hold at 3.6 V until 0.115 A"]),
} | {
    f"ORegan2022_cc_C_2_from4V2_iso_{k}K": ("ORegan2022", "4.2 V", ["Discharge at 2.5 A until 2.5 V"], k + 0.15)
    for k in (273, 283, 298, 313)
}
NOTE = "# Computed with PyBaMM 26.10.1.1; dense in the first minute and the last tenth. See SOURCES.md."
# Current, A, at which a charge ends: a twentieth of what the set calls its capacity.
TAPER = {"Chen2020": 0.25, "Prada2013": 0.115}
# Cells whose voltage at rest is kept as a table.
OCV_CELLS = ("Chen2020", "Ecker2015", "Prada2013")

# The cold LFP set is a file of the Battery Parameter eXchange standard; SOURCES.md says which.
DIFFUSION = "Diffusivity activation energy [J.mol-1]"
BPX = next((a.split("=")[1] for a in sys.argv if a.startswith("--bpx=")), None)
ONLY = [a for a in sys.argv[1:] if not a.startswith("-")]

pybamm.set_logging_level("ERROR")


def read(name):
    """Notes and rows of a file; none of both while it is not yet there."""
    if not (CELLS / name).exists():
        return [NOTE], []
    lines = (CELLS / name).read_text().splitlines()
    notes = [line for line in lines if line.startswith("#")]
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    return notes, rows


def parameters(cell, kelvin=None, start=1):
    if cell.startswith("BPX"):
        # A set in BPX form is read at the charge that it starts from.
        given = json.loads(Path(BPX).read_text())
        if cell == "BPX_LFP_mild":
            electrodes = [given["Parameterisation"][f"{side} electrode"] for side in ("Negative", "Positive")]
            electrodes[1][DIFFUSION] = electrodes[0][DIFFUSION]
        values = pybamm.ParameterValues.create_from_bpx_obj(given, target_soc=start)
    else:
        values = pybamm.ParameterValues(cell)
    if kelvin is not None:
        values.update({"Ambient temperature [K]": kelvin, "Initial temperature [K]": kelvin})
    return values


def solve(cell, start, steps, kelvin=None, period="1 s"):
    experiment = pybamm.Experiment(steps, period=period)
    model = pybamm.lithium_ion.DFN()
    simulation = pybamm.Simulation(model, parameter_values=parameters(cell, kelvin, start), experiment=experiment)
    return simulation.solve(calc_esoh=False) if cell.startswith("BPX") else simulation.solve(initial_soc=start)


def trace(solution):
    """Time, current, voltage, and charge and energy given since the start, at every second."""
    t = solution["Time [s]"].entries
    current = solution["Current [A]"].entries
    volts = solution["Voltage [V]"].entries

    def total(rate):
        return np.concatenate([[0], np.cumsum(np.diff(t) * (rate[1:] + rate[:-1]) / 2)]) / 3600

    return t, current, volts, total(current), total(current * volts)


def rest(cell):
    """Voltage at rest over charge, and the capacity in Ah."""
    values = parameters(cell)
    solver = pybamm.lithium_ion.ElectrodeSOHSolver(values)
    x0, x1, y1, y0 = solver.get_min_max_stoichiometries()
    names = ("Negative electrode OCP [V]", "Positive electrode OCP [V]")
    anode, cathode = (values.process_symbol(values[n](pybamm.InputParameter(v))) for n, v in zip(names, "xy"))

    def volts(z):
        at = {"x": x0 + z * (x1 - x0), "y": y0 + z * (y1 - y0)}
        return float(np.squeeze(cathode.evaluate(inputs=at))) - float(np.squeeze(anode.evaluate(inputs=at)))

    return volts, parameters(cell).evaluate(pybamm.LithiumIonParameters().n.prim.Q_init) * (x1 - x0)


def new_times(end):
    """For a run that is not kept yet: whole seconds, the last one the run's own end."""
    early = [0, 1, 2, 5, 10, 20, 30, 45, 60]
    return early + sorted({round(end * k / 80) for k in range(2, 72)} | {round(end * (0.9 + k / 400)) for k in range(41)})


def a_trace(name):
    cell, start, steps, *kelvin = TRACES[name]
    solution = solve(cell, start, steps, *kelvin)
    t, current, volts, charge, energy = trace(solution)
    _, rows = read(name + ".csv")
    times = [float(row["t_s"]) for row in rows] or new_times(t[-1])
    times[-1] = t[-1]
    columns = [np.interp(times, t, y) for y in (current, volts, charge, energy)]
    kelvin = kelvin[0] if kelvin else parameters(cell)["Ambient temperature [K]"]
    return [
        dict(t_s=f"{s:.3f}" if s != t[-1] else f"{s:.2f}", I_A=f"{i:.6f}", V_V=f"{v:.6f}", Q_Ah=f"{q:.6f}", E_Wh=f"{e:.6f}",
             T_K=f"{kelvin:.3f}")
        for s, i, v, q, e in zip(times, *columns)
    ]


def an_ocv(name):
    volts, _ = rest(name.split("_")[1])
    return [dict(soc=row["soc"], OCV_V=f"{volts(float(row['soc'])):.6f}") for row in read(name + ".csv")[1]]


def steps_of_current(name):
    volts, capacity = rest("Chen2020")
    runs, made = {}, []
    for row in read(name + ".csv")[1]:
        start, amps, time = float(row["soc0"]), float(row["I_A"]), float(row["t_s"])
        if (start, amps) not in runs:
            # As long as the cell lasts, since one that is empty ends its run.
            step = f"Discharge at {amps} A for 600 s or until 2.5 V"
            runs[start, amps] = trace(solve("Chen2020", start, [step], period="0.1 s"))
        t, _, v, *_ = runs[start, amps]
        now, at_rest = np.interp(time, t, v), volts(start - amps * time / 3600 / capacity)
        made.append(row | dict(V_V=f"{now:.5f}", OCV_at_avg_soc_V=f"{at_rest:.5f}",
                               R_apparent_mOhm=f"{(at_rest - now) / amps * 1e3:.3f}"))
    return made


def totals(name):
    made = []
    for row in read(name + ".csv")[1]:
        cell, kind, value, end = row["set"], row["kind"], row["value"], row["end_V"]
        if cell.startswith("BPX") and BPX is None:
            made.append(row)
            continue
        kelvin = float(row["T_K"])
        start = {"1": 1, "4.2V": "4.2 V"}.get(row["soc0"]) or (float(row["soc0"]) if row["soc0"] else 1)
        charge = [f"Charge at {value} A until {end} V", f"Hold at {end} V until {TAPER.get(cell)} A"]
        if kind in ("cc", "cp"):
            unit = "A" if kind == "cc" else "W"
            t, _, _, ah, wh = trace(solve(cell, start, [f"Discharge at {value} {unit} until {end} V"], kelvin))
            found = dict(t_s=t[-1], Q_Ah=ah[-1], E_Wh=wh[-1])
        elif kind == "rest":
            found = dict(V_V=trace(solve(cell, start, ["Rest for 10 s"], kelvin))[2][-1])
        elif kind == "pulse":
            _, _, volts, *_ = trace(solve(cell, start, [f"Discharge at {value} A for {row['t_s']} s"], kelvin, "0.1 s"))
            found = dict(V_V=volts[-1])
        else:
            before = ["Discharge at 5 A until 2.5 V", "Rest for 1 hour"] if "after" in kind else []
            start = 1 if before else 0
            solution = solve(cell, start, before + charge, kelvin)
            spans = [trace(cycle) for cycle in solution.cycles[len(before):]]
            cc, cv = spans
            found = dict(t_s=cc[0][-1] - cc[0][0] + cv[0][-1] - cv[0][0], Q_Ah=-cc[3][-1] - cv[3][-1],
                         E_Wh=-cc[4][-1] - cv[4][-1], t_cc_s=cc[0][-1] - cc[0][0])
        digits = lambda text: len(text.split(".")[1]) if "." in text else 0
        made.append(row | {k: f"{v:.{digits(row[k])}f}" for k, v in found.items() if row[k]})
    return made


def compared(name, rows):
    """The largest difference from the file that is kept, as a share of the largest value of its column."""
    worst = 0.0
    for key in rows[0]:
        pairs = [(old[key], new[key]) for old, new in zip(read(name + ".csv")[1], rows)]
        try:
            pairs = np.array([(float(a), float(b)) for a, b in pairs if a])
        except ValueError:
            continue
        if len(pairs):
            worst = max(worst, float(np.max(np.abs(pairs[:, 0] - pairs[:, 1])) / np.max(np.abs(pairs))))
    return worst


def main():
    makers = {name: a_trace for name in TRACES} | {f"ocv_{cell}_fine401": an_ocv for cell in OCV_CELLS}
    makers |= {"Chen2020_step_resistance": steps_of_current, "figures": totals}
    others = {path.stem for path in CELLS.glob("*.csv")} - set(makers)
    assert not others, f"nothing computes {others}"
    off = []
    for name, make in makers.items():
        if ONLY and name not in ONLY:
            continue
        rows = make(name)
        worst = compared(name, rows)
        print(f"{worst:9.1e}  {name}", flush=True)
        if worst > LARGEST:
            off.append(name)
        if "--write" in sys.argv:
            notes, _ = read(name + ".csv")
            lines = [",".join(rows[0])] + [",".join(row.values()) for row in rows]
            (CELLS / (name + ".csv")).write_text("\n".join(notes + lines) + "\n")
    sys.exit(f"not what is kept: {off}" if off else 0)


main()
