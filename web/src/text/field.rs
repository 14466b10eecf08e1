//! A label for every input, and a line of help where the label is not enough.

use super::{Style, words};
use pitchline_core::{Field, Kind};

/// What an input is called, by its kind and key.
#[must_use]
pub fn label(kind: Kind, key: &str) -> &'static str {
    match key {
        "mass_kg" if kind == Kind::Rider => "Your mass",
        "mass_kg" => "Mass",
        "price" => "Price",
        "chemistry" => "Chemistry",
        "capacity_ah" => "Capacity of one cell",
        "resistance_10s_mohm" => "Resistance of one cell after 10 s",
        "max_discharge_a" => "Discharge rating of one cell",
        "max_charge_a" => "Charge rating of one cell",
        "full_v" => "Voltage when full",
        "nominal_v" => "Nominal voltage",
        "series" => "Cells in series",
        "parallel" => "Cells in parallel",
        "protection_a" => "Protection circuit allows",
        "cut_off_v" => "Disconnects at, per cell",
        "joints_mohm" => "Resistance of joints and fuse",
        "wire_awg" => "Wire gauge",
        "wire_m" => "Wire length, there and back",
        "cycles" => "Cycles behind it",
        "current_a" => "Charging current",
        "kv_rpm_per_v" => "Kv",
        "resistance_ll_mohm" => "Resistance between two wires",
        "inductance_uh" => "Inductance of one phase",
        "pole_pairs" => "Pole pairs",
        "no_load_a" => "No-load current",
        "no_load_rpm" => "No-load current measured at",
        "hysteresis_percent" => "Share of it that stays at low speed",
        "max_current_a" => "Motor current rating",
        "convention" => "Motor current counts as",
        "motor_current_a" => "Motor current limit, each",
        "battery_current_a" => "Battery current limit, each",
        "erpm_limit" => "Electrical speed limit",
        "max_duty_percent" => "Largest duty",
        "max_bus_v" => "Highest voltage it survives",
        "cutback_start_v" => "Holds back from, per cell",
        "cutback_end_v" => "Stops pushing at, per cell",
        "switch_mohm" => "Resistance of one switch",
        "switching_percent" => "Switching loss",
        "idle_w" => "Idle power, each",
        "teeth" => "Teeth",
        "pitch_mm" => "Pitch",
        "width_mm" if kind == Kind::Deck => "Width over the wheels",
        "width_mm" => "Width",
        "rating_n_per_mm" => "Rated pull per mm of width",
        "efficiency_percent" => "Efficiency",
        "current_percent" => "Share of current",
        "speed_cap_km_h" => "Speed cap",
        "diameter_mm" => "Diameter",
        "deflection_mm" => "Tread gives under load",
        "rolling_smooth" => "Rolling resistance on smooth asphalt",
        "roughness_percent" => "Added for each step of roughness",
        "spacer_mm" => "Spacer between its bearings",
        "can_diameter_mm" => "Can diameter",
        "can_length_mm" => "Can length",
        "length_mm" => "Length",
        "height_mm" if kind == Kind::Truck => "Height from axle to deck",
        "height_mm" => "Height",
        "wheelbase_mm" => "Wheelbase",
        "thickness_mm" => "Thickness",
        "stiffness_n_m2" => "Bending stiffness",
        "sag_mm" => "Sag, if you measured it",
        "sag_mass_kg" => "Sag measured under",
        "stance_mm" => "Distance between your feet",
        "riser_mm" => "Riser",
        "box_length_mm" => "Enclosure length, inside",
        "box_width_mm" => "Enclosure width, inside",
        "box_height_mm" => "Enclosure height, inside",
        "box_wall_mm" => "Enclosure wall thickness",
        "box_ahead_mm" => "Enclosure ahead of the middle",
        "hanger_width_mm" => "Rear hanger width",
        "axle_mm" => "Length of one axle end",
        "pivot_front_deg" => "Front pivot angle",
        "pivot_rear_deg" => "Rear pivot angle",
        "max_lean_deg" => "Maximum lean",
        "mount_angle_deg" => "Motor mount angle",
        "motor_count" => "Motors",
        "centre_min_mm" => "Motor shaft to axle, minimum",
        "centre_max_mm" => "Motor shaft to axle, maximum",
        "gear_mass_kg" => "Bag and helmet",
        "posture" => "Posture",
        "drag_area_m2" => "Drag area, if you know it",
        "centre_height_mm" => "Height of centre of mass",
        "air_c" => "Air temperature",
        "altitude_m" => "Altitude",
        "headwind_km_h" => "Headwind",
        "surface" => "Surface",
        "grip_percent" => "Grip",
        "bump_mm" => "Height of kerbs or bumps",
        "cruise_km_h" => "Cruising speed",
        "grade_percent" => "Your hill",
        "start_charge_percent" => "Charge at the start",
        "low_charge_percent" => "Nearly empty means",
        "winding_c" => "Windings when warm",
        "measured_centre_mm" => "Motor shaft to axle, measured",
        "belt_in_hand_teeth" => "Teeth of a belt in hand",
        "winding_limit_c" => "Hottest that the windings may get",
        "winding_k_per_w" => "Heat path, windings to case",
        "case_k_per_w" => "Heat path, case to still air",
        "brake_current_a" => "Motor current limit when braking, each",
        "regen_current_a" => "Battery current limit when braking, each",
        "cutback_start_c" => "Holds back from, hot",
        "cutback_end_c" => "Stops pushing at, hot",
        "motor_cutback_start_c" => "Holds back from, hot windings",
        "motor_cutback_end_c" => "Stops pushing at, hot windings",
        "heat_sink_k_per_w" => "Heat path, switches to air",
        "energy_price_kwh" => "Electricity price per kWh",
        "outing" => "How you ride",
        "stops_per_km" => "Stops",
        "acceleration_m_s2" => "Acceleration and braking",
        "climb_m_per_km" => "Climb",
        "rest_s" => "Rest at each stop",
        "charge_from_percent" => "Charge when you plug in",
        "charge_to_percent" => "Stop charging at",
        "charge_time_h" => "Time available",
        "charge_air_c" => "Temperature where you charge",
        _ => "",
    }
}

/// A line of help for an input; empty where its label says it all.
#[must_use]
pub fn help(key: &str) -> &'static str {
    match key {
        "resistance_10s_mohm" => {
            "As data sheets give it. On a long ride the cell behaves as if it had about twice this; the model adds that."
        }
        "cycles" => "Full charges and discharges. An old pack holds less and sags more.",
        "cut_off_v" => "The protection circuit cuts the power here, without warning.",
        "kv_rpm_per_v" => "Speed for each volt with nothing on the shaft. Labels can be 10 % off.",
        "resistance_ll_mohm" => "Any two of the three motor wires, at 20 °C.",
        "pole_pairs" => "Half the number of magnets.",
        "no_load_a" => "What one motor draws from a bench supply with nothing on the shaft.",
        "convention" => {
            "Field-oriented controllers limit the peak of the sine (peak phase). Six-step ones limit a direct current. The same number gives 13 % less push as peak phase."
        }
        "battery_current_a" => "From the pack, for each motor.",
        "cutback_start_v" => "Below this, measured under load, the controller gives less and less.",
        "rating_n_per_mm" => "Rule of thumb. Ask the belt's maker.",
        "deflection_mm" => "0.5 to 2 mm for urethane, 3 to 6 % of the radius for air tyres.",
        "grip_percent" => "About 70 dry, 40 wet. Common practice, no source.",
        "headwind_km_h" => "From behind is negative.",
        "charge_to_percent" => "A full charge ages cells faster. Rule of thumb.",
        "charge_air_c" => "Left empty, the air temperature outside.",
        "charge_time_h" => "1.5 h is 1 hour 30 minutes.",
        "cruise_km_h" => "The speed you hold on a ride.",
        "grade_percent" => "An 8 % hill rises 8 for every 100 along.",
        "winding_c" => "Warm copper has more resistance, so motors lose more.",
        "stiffness_n_m2" => "Modulus times second moment of area. Easier: measure the sag.",
        "sag_mm" => "In the middle, standing as you ride. Overrides the stiffness.",
        "riser_mm" => "Negative where the deck hangs below the truck plates.",
        "box_ahead_mm" => "Behind the middle between the axles is negative.",
        "axle_mm" => "From the hanger's shoulder to the end of the thread.",
        "mount_angle_deg" => {
            "0 points level at the front axle, 90 straight up; more is behind the rear axle."
        }
        "max_lean_deg" => "Usually 15 to 25. Rule of thumb.",
        "speed_cap_km_h" => "Empty means no cap.",
        "winding_k_per_w" | "case_k_per_w" | "heat_sink_k_per_w" => {
            "Degrees warmer for each watt of heat. Common practice, no source."
        }
        "climb_m_per_km" => "Half the distance uphill, half downhill.",
        _ => "",
    }
}

/// An input with its value, in a few words; the value is in the file's unit.
#[must_use]
pub fn said(kind: Kind, field: &Field, value: f64, style: Style) -> String {
    let label = label(kind, field.key);
    if field.choices.is_empty() {
        let shown = style.units.field(kind, field);
        let figure = style.significant(shown.from_file(value), 3);
        format!("{label} {figure}\u{a0}{}", shown.symbol).trim_end().into()
    } else {
        format!("{label}: {}", words::choice(field.choice_name(value)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_input_has_a_label() {
        for kind in Kind::ALL {
            for field in kind.fields() {
                assert!(!label(*kind, field.key).is_empty(), "{} has no label", field.key);
            }
        }
    }
}
