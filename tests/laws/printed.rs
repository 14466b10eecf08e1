//! What is printed is what is evaluated: the right-hand side of every law, read
//! as a person reads it, gives what its function gives.

mod expression;
mod formula;

use crate::cases;
use expression::Values;
use formula::Formula;
use pitchline_core::{Formula as Words, Law, Unit, physics};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use std::cell::Cell;
use std::collections::BTreeSet;
use std::fs;
use std::ops::RangeInclusive;
use std::path::Path;

/// A law by name, with its words and its function.
struct Printed {
    name: &'static str,
    words: &'static Words,
    eval: fn(&[f64]) -> f64,
}

fn eval<L: Law>(numbers: &[f64]) -> f64 {
    let mut values = L::Values::default();
    values.as_mut().copy_from_slice(numbers);
    (L::definition().eval)(values)
}

macro_rules! laws {
    ($($module:ident: $($name:ident),+;)+) => {
        fn laws() -> Vec<Printed> {
            vec![$($(Printed {
                name: stringify!($name),
                words: &physics::$module::$name::definition().formula,
                eval: eval::<physics::$module::$name>,
            }),+),+]
        }
    };
}

laws! {
    air: AirPressure, AirDensity;
    battery: PackCurrent, GreatestPackPower, BusVoltage, OpenCircuitVoltage, CarriedCurrent, SurfaceLag, SurfaceCharge, TopLag, TopCharge, CellResistance, LeadResistance, PackResistance, PackCapacity, NameplateEnergy, InputPower, ControllerPackLimit, ProtectionLimit, CellLimit, PackPowerLimit, CutOffLimit, CutbackLimit, MeanPackCurrent, RideDistance;
    belt_geometry: SmallPulleyRadius, LargePulleyRadius, PulleyOutside, TouchingCentre, BeltWedge, OpenBeltLength, BeltLength, BeltCentre, BeltCentreInRun, CentreAsMeasured, SlotCentre, TeethInMesh, MeshShare, RatedPull, RatedPullInMesh, BeltSpan, BeltMassPerMetre, UsualBeltMassPerMetre, BrakeTorque, DrivePull, BrakePull, PeakPull, StaticTension, SpanDeflection, SpanFrequency, JumpTorque;
    charging: ChargeCurrent, TaperCurrent, ConstantCurrentTime, ConstantVoltageTime, ChargeTime, ChargeEnergy, WallEnergy, ChargeCost;
    deck: StandingMass, FootDistance, DeckSag, ScaledSag, BumpSag, BoxRoad, BoxRoadBump, BreakOver;
    frame: PulleyRoad, BeltRoad, MotorHeight, MotorRoad, DeckHeight, MotorDeck, MotorBox, PulleyWidth, WheelAcross, WheelAlong, MotorWheel, MotorMotor, HangerRoom, HubWidth, AxleTaken, AxleRoom;
    gear: WheelRadius, GearRatio, MotorSpeed, ElectricalRpm, ShaftTorque, DrivenTorque, PushForce, BeltTorque, GripTorque, UnloadedSpeed, CountedSpeed, CappedSpeed, BeltPull;
    heat: Cooling, ContinuousCurrentSquared, IronHeat, CopperResistance, HeldByWindings, CoolChannel, HeldByController;
    lean: SteerFront, SteerRear, SteerSum, TurnRadius, EdgeHeight, FlankFront, FlankRear, FlankOuter, BiteTread, EdgeReach, BiteFlank, BiteFace, BiteCorner, ClearTread, ClearCorner, EnoughRiser, BushingHardness;
    motion: EffectiveMass, RotorInertia, BrakeGrip, StoppingDistance;
    motor: TorqueConstantDirect, TorqueConstantPeak, WarmResistance, IronTorque, MotorCurrent, CopperLoss, MotorVoltageDirect, MotorVoltagePeak, HeatResistance, ControllerMotorLimit, MotorLimit, SpeedLimit, HeldCurrent, DrawnCurrent, SpareVoltage, GreatestTorque;
    packing: CellsFlankToFlank, CellsEndToEnd, InARow, SideBySide, RoomLeft;
    road_load: TotalMass, RollingCoefficient, RollingForce, SlopeForce, AirForce, RoadLoad, WheelPower, GripForce, NetForce, SteepestGrade, SpareForce;
    wire: WireDiameter, WireResistance;
}

/// Those whose printed text is not a formula alone, and why.
const IN_WORDS: [(&str, &str); 2] = [
    ("BreakOver", "a sum over the two axles, each with a bound of its own"),
    ("MotorWheel", "the larger of two lengths only where one is negative"),
];

/// Every name that the sources declare as a law.
fn declared(folder: &Path, found: &mut BTreeSet<String>) {
    for file in fs::read_dir(folder).expect("the core has a folder") {
        let path = file.expect("a folder can be read").path();
        if path.is_dir() {
            declared(&path, found);
            continue;
        }
        let text = fs::read_to_string(&path).expect("a source is text");
        for block in text.split("\nlaw! {\n").skip(1) {
            let line = block.lines().find(|line| !line.trim_start().starts_with("///"));
            let name = line.and_then(|line| line.trim().split_once(" = "));
            let (name, _) = name.unwrap_or_else(|| panic!("{path:?}: a law without a name"));
            assert!(found.insert(name.to_owned()), "{name} is there twice");
        }
    }
}

/// Values that a symbol may have: of its own where a formula asks for it, or of its unit.
fn range(symbol: &str, unit: Unit) -> RangeInclusive<f64> {
    match symbol {
        // Pulleys that a belt goes around, and a belt long enough for them.
        "R_1" => 0.01..=0.02,
        "R_2" => 0.02..=0.06,
        "C" => 0.07..=0.3,
        "C_min" => 0.09..=0.12,
        "C_max" => 0.12..=0.15,
        "L_belt" => 0.45..=0.7,
        "Z_mesh" => 1.0..=9.0,
        "Z_1" | "Z_motor" => 10.0..=30.0,
        "β" => 0.0..=0.8,
        // Of either sign.
        "T_lim" | "P_cool" | "I_held²" | "h_edge" | "w" | "sin α" => -0.3..=0.9,
        "cos α" => 0.7..=1.0,
        "F_drive" | "F_brake" | "F" => -900.0..=900.0,
        "F_net" => -300.0..=900.0,
        "C_rr" => 0.005..=0.06,
        "μ" => 0.1..=1.2,
        "m" | "m_stand" => 40.0..=180.0,
        "m_motor" => 0.2..=3.0,
        "h" => -100.0..=5000.0,
        "l_stance" => 0.3..=1.2,
        "L_base" => 0.5..=1.0,
        "w_deck" => 0.1..=0.3,
        "d_wheel" => 0.07..=0.2,
        "y_flank" | "y_outer" => 0.05..=0.2,
        "θ_max" => 5.0..=75.0,
        "T_hold" | "T_0" => 0.05..=3.0,
        "t_most" | "t_hot" => 60.0..=150.0,
        "V_pack" => 20.0..=60.0,
        "V_cut" | "V_end" => 2.0..=3.2,
        "V_start" => 3.3..=3.6,
        "P_idle" => 0.1..=40.0,
        _ => of_unit(unit),
    }
}

fn of_unit(unit: Unit) -> RangeInclusive<f64> {
    match unit {
        Unit::None => 0.05..=1.0,
        Unit::Count | Unit::Cells => 1.0..=14.0,
        Unit::Teeth => 10.0..=80.0,
        Unit::Metre => 0.01..=0.9,
        Unit::Millimetre => 0.5..=25.0,
        Unit::Ohm => 0.005..=0.2,
        Unit::Henry => 1e-5..=1e-4,
        Unit::Celsius => -20.0..=50.0,
        Unit::Degree => 2.0..=60.0,
        Unit::RadianPerSecond => 50.0..=3000.0,
        Unit::RpmPerVolt => 50.0..=400.0,
        Unit::Rpm => 1e3..=1e5,
        Unit::KilogramSquareMetre => 1e-5..=1e-3,
        Unit::Pascal => 5e4..=1.1e5,
        Unit::PerAmpere => 0.05..=2.0,
        Unit::NewtonMetrePerAmpere => 0.01..=0.1,
        _ => 0.5..=50.0,
    }
}

/// Angles are entered and printed in degrees, and a formula's are in radians.
fn scale(unit: Unit) -> f64 {
    if unit == Unit::Degree { std::f64::consts::PI / 180.0 } else { 1.0 }
}

/// Random inputs; those to which the text gives no number are drawn anew.
fn check(law: &Printed, formula: &Formula) -> Result<(), String> {
    let words = law.words;
    let (free, bound) = (Cell::new(0), Cell::new(0));
    let draws = vec(0.0..=1.0_f64, words.inputs.len());
    let tried = TestRunner::new(cases(300)).run(&draws, |draws| {
        let numbers: Vec<f64> = words
            .inputs
            .iter()
            .zip(draws)
            .map(|(&(symbol, unit), draw)| {
                let range = range(symbol, unit);
                range.start() + draw * (range.end() - range.start())
            })
            .collect();
        let named = words.inputs.iter().zip(&numbers);
        let values: Values =
            named.map(|((symbol, unit), x)| ((*symbol).to_owned(), x * scale(*unit))).collect();
        let got = (law.eval)(&numbers);
        let want = formula.value(&values, (words.symbol, got));
        prop_assume!(!want.value.is_nan());
        let count = if want.bound { &bound } else { &free };
        count.set(count.get() + 1);
        let want = want.value / scale(words.unit);
        let close = got == want || (got - want).abs() <= 1e-9 * want.abs();
        prop_assert!(close, "{got}, but \"{}\" is {want} of {values:?}", words.text);
        Ok(())
    });
    tried.map_err(|fault| format!("{}: {fault}", law.name))?;
    // What is said about a bound is tried on both sides of it.
    let (free, bound) = (free.get(), bound.get());
    if formula.is_conditional() && (free < 5 || bound < 5) {
        return Err(format!("{}: a bound that binds {bound} times and {free} not", law.name));
    }
    Ok(())
}

#[test]
fn every_law_is_tried() {
    let tried: BTreeSet<_> = laws().iter().map(|law| law.name.to_owned()).collect();
    let mut all = BTreeSet::new();
    declared(&pitchline_tests::root().join("core/src"), &mut all);
    assert_eq!(tried, all);
}

#[test]
fn what_is_printed_is_what_is_evaluated() {
    let (mut in_words, mut faults) = (Vec::new(), Vec::new());
    for law in laws() {
        let inputs: Vec<&str> = law.words.inputs.iter().map(|(symbol, _)| *symbol).collect();
        match Formula::read(law.words.text, &inputs, law.words.symbol) {
            Ok(formula) => faults.extend(check(&law, &formula).err()),
            Err(why) => in_words.push((law.name, why)),
        }
    }
    let names: Vec<_> = in_words.iter().map(|(name, _)| *name).collect();
    let wanted = IN_WORDS.map(|(name, _)| name);
    assert_eq!(names, wanted, "{in_words:#?}");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
