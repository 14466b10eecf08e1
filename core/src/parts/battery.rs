//! Cells, the pack made of them, and its charger.

use crate::physics::Chemistry;

part! {
    /// One lithium cell.
    Cell, tags ["format"];
    /// Mass of one cell. The assumed mass depends on size and chemistry.
    mass_kg: f64 = "mass_kg" Kilogram, 0.005..2.0, 0.070, Assumed => mass_kg;
    /// Price of one cell, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 5.0, Optional;
    /// Chemistry class: energy (NMC or NCA built for capacity), power (NMC or NCA built for
    /// current), or LFP.
    chemistry: Chemistry = "chemistry" None, 0.0..2.0, 0.0, Required Self::CLASSES;
    /// Rated capacity when new, at 25 °C and a low rate.
    capacity_ah: f64 = "capacity_ah" AmpereHour, 0.1..200.0, 3.0, Required;
    /// Resistance after a 10 s pulse at half charge and 25 °C, as on data sheets.
    resistance_10s_ohm: f64 = "resistance_10s_mohm" MilliOhm, 0.1..300.0, 25.0, Required;
    /// Maximum continuous discharge current of one cell.
    max_discharge_a: f64 = "max_discharge_a" Ampere, 0.1..1000.0, 15.0, Required;
    /// Maximum charge current of one cell. 1C is assumed, as many amps as its capacity in Ah.
    /// Common practice, no source.
    max_charge_a: f64 = "max_charge_a" Ampere, 0.05..500.0, 3.0, Assumed => max_charge_a;
    /// Voltage of a full cell. Charger and controller are matched to it.
    full_v: f64 = "full_v" Volt, 3.3..4.4, 4.2, Assumed => full_v;
    /// Nominal voltage of the cell, from which its rated energy is worked out.
    nominal_v: f64 = "nominal_v" Volt, 2.8..3.9, 3.6, Assumed => nominal_v;
    /// Diameter. If not given, taken from the cell format, such as 21700.
    diameter_m: Option<f64> = "diameter_mm" Millimetre, 8.0..70.0, 21.0, Optional;
    /// Length. If not given, taken from the cell format.
    length_m: Option<f64> = "length_mm" Millimetre, 15.0..250.0, 70.0, Optional;
}

impl Cell {
    /// Names of the classes in files, in the order of their numbers.
    pub(crate) const CLASSES: &'static [&'static str] = &["energy", "power", "lfp"];
}

part! {
    /// Battery pack: cells in series and parallel, with protection circuit and wiring.
    Pack, tags ["connector", "charge_port", "cell"];
    /// Mass of the whole pack. If not given, the mass of the cells plus a quarter.
    mass_kg: Option<f64> = "mass_kg" Kilogram, 0.1..60.0, 2.8, Optional;
    /// Price of the whole pack, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 400.0, Optional;
    /// Cell groups in series.
    series: f64 = "series" Cells, 3.0..24.0, 10.0, Required;
    /// Cells in parallel in each series group.
    parallel: f64 = "parallel" Cells, 1.0..40.0, 3.0, Required;
    /// Maximum continuous discharge current that the protection circuit allows.
    protection_a: f64 = "protection_a" Ampere, 1.0..1000.0, 60.0, Required;
    /// Cut-off voltage per cell: the protection circuit disconnects when the weakest series group
    /// drops to it.
    cut_off_v: f64 = "cut_off_v" Volt, 2.0..3.6, 3.0, Assumed => cut_off_v;
    /// Total resistance of joints, fuse and protection circuit.
    joints_ohm: f64 = "joints_mohm" MilliOhm, 0.0..200.0, 8.0, Assumed;
    /// Wire gauge of the leads between pack and controller.
    wire_awg: f64 = "wire_awg" Gauge, 4.0..24.0, 12.0, Assumed;
    /// Length of those leads, both wires added.
    wire_m: f64 = "wire_m" Metre, 0.0..6.0, 0.8, Assumed;
    /// Continuous current rating of those leads, as their maker gives it.
    wire_a: Option<f64> = "wire_a" Ampere, 1.0..1000.0, 50.0, Optional;
    /// Continuous current rating of the wires and strips inside the pack that carry all of its
    /// current.
    inner_wire_a: Option<f64> = "inner_wire_a" Ampere, 1.0..1000.0, 50.0, Optional;
    /// Continuous current rating of the connector to the controller.
    connector_a: Option<f64> = "connector_a" Ampere, 1.0..1000.0, 60.0, Optional;
    /// Rated current of the main fuse.
    fuse_a: Option<f64> = "fuse_a" Ampere, 1.0..1000.0, 60.0, Optional;
    /// DC voltage rating of the main fuse.
    fuse_v: Option<f64> = "fuse_v" Volt, 5.0..1500.0, 80.0, Optional;
    /// Continuous current rating of the charging port.
    charge_port_a: Option<f64> = "charge_port_a" Ampere, 0.2..100.0, 5.0, Optional;
    /// Charge cycles so far: full charges and discharges.
    cycles: f64 = "cycles" Cycles, 0.0..1000.0, 0.0, Assumed;
}

part! {
    /// Mains charger: constant current, then constant voltage.
    Charger, tags ["charge_port"];
    /// Mass. The charger isn't carried on the board.
    mass_kg: f64 = "mass_kg" Kilogram, 0.05..10.0, 0.6, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 40.0, Optional;
    /// Output voltage, at which charging ends.
    full_v: f64 = "full_v" Volt, 9.0..110.0, 42.0, Required;
    /// Charging current.
    current_a: f64 = "current_a" Ampere, 0.2..50.0, 3.0, Required;
    /// Share of the wall power that reaches the pack. Common practice, no source.
    efficiency: f64 = "efficiency_percent" Percent, 50.0..100.0, 88.0, Assumed;
}
