//! A label for every input, and a line of help where the label is not enough.

use super::{Style, words};
use pitchline_core::{Field, Kind};

/// What an input is called, by its kind and key.
#[must_use]
pub fn label(kind: Kind, key: &str) -> &'static str {
    match key {
        "mass_kg" if kind == Kind::Rider => "Your weight",
        "mass_kg" => "Weight",
        "price" => "Price",
        "chemistry" => "Chemistry",
        "capacity_ah" => "Cell capacity",
        "resistance_10s_mohm" => "Cell resistance, 10 s pulse",
        "max_discharge_a" => "Cell discharge rating",
        "max_charge_a" => "Cell charge rating",
        "full_v" if kind == Kind::Charger => "Output voltage",
        "full_v" => "Voltage when full",
        "nominal_v" => "Nominal voltage",
        "series" => "Cells in series",
        "parallel" => "Cells in parallel",
        "protection_a" => "Protection circuit limit",
        "cut_off_v" => "Cut-off voltage per cell",
        "joints_mohm" => "Joint and fuse resistance",
        "wire_awg" => "Wire gauge",
        "wire_m" => "Wire length, there and back",
        "wire_a" => "Lead rating, continuous",
        "inner_wire_a" => "Inner wiring rating, continuous",
        "connector_a" if kind == Kind::Motor => "Connector rating, RMS",
        "connector_a" => "Connector rating, continuous",
        "fuse_a" => "Main fuse rating",
        "fuse_v" => "Main fuse voltage rating, DC",
        "charge_port_a" => "Charging port rating",
        "cycles" => "Charge cycles so far",
        "current_a" => "Charging current",
        "kv_rpm_per_v" => "Kv",
        "resistance_ll_mohm" => "Line-to-line resistance",
        "inductance_uh" => "Phase inductance",
        "pole_pairs" => "Pole pairs",
        "no_load_a" => "No-load current",
        "no_load_rpm" => "No-load current measured at",
        "hysteresis_percent" => "Hysteresis share of no-load current",
        "max_current_a" => "Motor current rating",
        "continuous_a" => "Motor current rating, continuous",
        "convention" => "Motor current convention",
        "rated_motor_a" => "Rated motor current, per motor",
        "rated_battery_a" => "Rated battery current, per motor",
        "rated_erpm" => "Rated ERPM",
        "motor_current_a" => "Motor current limit, per motor",
        "battery_current_a" => "Battery current limit, per motor",
        "erpm_limit" => "ERPM limit",
        "max_duty_percent" => "Maximum duty cycle",
        "max_bus_v" => "Maximum input voltage",
        "cutback_start_v" => "Cell voltage when limiting starts",
        "cutback_end_v" => "Cell voltage at cut-out",
        "switch_mohm" => "Transistor on-resistance",
        "switching_percent" => "Switching loss",
        "idle_w" => "Idle power, per motor",
        "teeth" => "Teeth",
        "pitch_mm" => "Pitch",
        "width_mm" if kind == Kind::Deck => "Width at the wheels",
        "width_mm" => "Width",
        "rating_n_per_mm" => "Rated pull per mm of width",
        "efficiency_percent" => "Efficiency",
        "current_percent" => "Share of full current",
        "speed_cap_km_h" => "Speed cap",
        "diameter_mm" => "Diameter",
        "deflection_mm" => "Tread deflection under load",
        "rolling_smooth" => "Rolling resistance on smooth asphalt",
        "roughness_percent" => "Extra rolling resistance per roughness step",
        "max_load_kg" if kind == Kind::Wheel => "Maximum load per wheel",
        "max_load_kg" => "Maximum load",
        "pressure_bar" => "Tyre pressure",
        "max_pressure_bar" => "Maximum tyre pressure",
        "bearing_rpm" => "Maximum bearing speed",
        "spacer_mm" => "Bearing spacer",
        "can_diameter_mm" => "Can diameter",
        "can_length_mm" => "Can length",
        "length_mm" => "Length",
        "height_mm" if kind == Kind::Truck => "Axle-to-deck height",
        "height_mm" => "Height",
        "wheelbase_mm" => "Wheelbase",
        "thickness_mm" => "Thickness",
        "stiffness_n_m2" => "Bending stiffness",
        "sag_mm" => "Measured sag",
        "sag_mass_kg" => "Rider weight for that sag",
        "stance_mm" => "Distance between your feet",
        "riser_mm" => "Riser",
        "box_length_mm" => "Enclosure length, inside",
        "box_width_mm" => "Enclosure width, inside",
        "box_height_mm" => "Enclosure height, inside",
        "box_wall_mm" => "Enclosure wall thickness",
        "box_ahead_mm" => "Enclosure centre, ahead of middle",
        "hanger_width_mm" => "Rear hanger width",
        "axle_mm" => "Axle length, each end",
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
        "centre_height_mm" => "Centre of mass height",
        "air_c" => "Air temperature",
        "altitude_m" => "Altitude",
        "headwind_km_h" => "Headwind",
        "surface" => "Surface",
        "grip_percent" => "Grip",
        "bump_mm" => "Height of kerbs or bumps",
        "cruise_km_h" => "Cruising speed",
        "grade_percent" => "Your hill",
        "start_charge_percent" => "Charge at the start",
        "low_charge_percent" => "Nearly empty at",
        "winding_c" => "Motor winding temperature",
        "measured_centre_mm" => "Motor shaft to axle, measured",
        "belt_in_hand_teeth" => "Teeth on a belt you have",
        "winding_limit_c" => "Maximum winding temperature",
        "winding_k_per_w" => "Thermal resistance, windings to case",
        "case_k_per_w" => "Thermal resistance, case to still air",
        "brake_current_a" => "Brake current limit, per motor",
        "regen_current_a" => "Regen current limit, per motor",
        "cutback_start_c" => "Controller temperature when limiting starts",
        "cutback_end_c" => "Controller temperature at cut-out",
        "motor_cutback_start_c" => "Winding temperature when limiting starts",
        "motor_cutback_end_c" => "Winding temperature at cut-out",
        "heat_sink_k_per_w" => "Thermal resistance, transistors to air",
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
            "From the data sheet. The calculation adds more resistance on long rides."
        }
        "cycles" => "Full charges and discharges. Old packs hold less and sag more.",
        "cut_off_v" => "The protection circuit cuts power here, without warning.",
        "kv_rpm_per_v" => "Speed per volt with no load. Labels can be 10 % off.",
        "resistance_ll_mohm" => "Between any two of the three motor wires, at 20 °C.",
        "pole_pairs" => "Half the number of magnets.",
        "hysteresis_percent" => "The part that doesn't change with speed.",
        "no_load_a" => "What one motor with a bare shaft draws from a bench supply.",
        "convention" => "How the controller counts motor amps. See its manual.",
        "battery_current_a" => "Drawn from the pack, for each motor.",
        "erpm_limit" => "Motor rpm times pole pairs.",
        "cutback_start_v" => "Measured under load. Below this the controller reduces power.",
        "rating_n_per_mm" => "The assumed value is a rule of thumb. Ask the belt's maker.",
        "deflection_mm" => "Urethane: 0.5–2 mm. Air-filled tyres: 3–6 % of radius.",
        "roughness_percent" => "Steps: street 1, coarse 2, pavers 3.5, packed gravel 5.",
        "grip_percent" => "About 70 dry, 40 wet. Rule of thumb.",
        "headwind_km_h" => "Negative for a tailwind.",
        "charge_to_percent" => "A full charge ages cells faster. Rule of thumb.",
        "charge_air_c" => "Leave empty to use the air temperature.",
        "charge_time_h" => "1.5 h is 1 hour 30 minutes.",
        "winding_c" => "Used for top speed and hills. Hot copper has more resistance.",
        "stiffness_n_m2" => "E times I. Measuring the sag is easier.",
        "sag_mm" => "In the middle, standing as you ride. Overrides the stiffness.",
        "riser_mm" => "Negative if the deck sits below the truck baseplates.",
        "box_ahead_mm" => "From the middle of the wheelbase. Negative means behind it.",
        "axle_mm" => "From the hanger's shoulder to the end of the thread.",
        "mount_angle_deg" => "0° points forward, 90° straight up. Beyond 90° is behind the axle.",
        "max_lean_deg" => "Usually 15 to 25. Rule of thumb.",
        "speed_cap_km_h" => "Leave empty for no cap.",
        "winding_k_per_w" | "case_k_per_w" | "heat_sink_k_per_w" => {
            "Temperature rise per watt of heat. Assumed values are rules of thumb."
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
