//! The symbols of the formulas. In every law each means one thing and has one
//! unit, so that the steps of a working can be followed from one to the next.

use crate::bounds::Unit;

/// A symbol and its unit, if the glossary has them so. A law with another does
/// not compile: this runs only there.
#[allow(clippy::panic, clippy::indexing_slicing)]
pub(crate) const fn known(text: &'static str, unit: Unit) -> (&'static str, Unit) {
    let mut place = 0;
    while place < SYMBOLS.len() {
        if same(SYMBOLS[place].0, text) && SYMBOLS[place].1 as u8 == unit as u8 {
            return (text, unit);
        }
        place += 1;
    }
    panic!("physics/symbol.rs has no such symbol with this unit: add a row to it");
}

#[allow(clippy::indexing_slicing)]
const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    let mut at = 0;
    while at < one.len() && at < other.len() && one[at] == other[at] {
        at += 1;
    }
    at == one.len() && at == other.len()
}

macro_rules! symbols {
    ($($text:literal $unit:ident $meaning:literal;)*) => {
        /// Every symbol with its unit, and what it stands for:
        ///
        $(#[doc = concat!("- `", $text, "`: ", $meaning, ", [`", stringify!($unit), "`](Unit::", stringify!($unit), ")")])*
        pub const SYMBOLS: &[(&str, Unit)] = &[$(($text, Unit::$unit)),*];
    };
}

symbols! {
    "a" Metre "pitch line above the tips of the teeth";
    "b" Millimetre "width of the belt";
    "C" Metre "centre distance of the pulleys";
    "c" Metre "room between two parts; negative where they do not go together";
    "c_across" Metre "room across the axes of motor and wheel";
    "c_along" Metre "room along them";
    "C_max" Metre "the same where the mount stops, far";
    "C_measured" Metre "the same as measured";
    "C_min" Metre "the same where the mount stops, near";
    "C_rr" None "rolling resistance coefficient";
    "C_smooth" None "the same on smooth asphalt";
    "C_touch" Metre "the same where the pulleys touch";
    "CdA" SquareMetre "drag area";
    "l_1" PerVolt "lag of the surface's charge per volt of the quick branch";
    "l_top" PerVolt "lag of the second surface's charge (LFP) per volt of the quick branch";
    "l_2" PerVolt "lag of the surface's charge per volt of the slow branch";
    "c_carried" None "that current as a C-rate: capacities per hour";
    "t_carried" Second "time for which it has flowed; 0 once the cell has settled";
    "I_carried" Ampere "current that each cell has carried";
    "cos α" None "cosine of the slope's angle";
    "D" Metre "distance";
    "d_can" Metre "diameter of the motor's can";
    "d_cell" Metre "diameter of a cell";
    "D_max" None "largest share of the bus voltage that the controller applies";
    "d_out" Metre "outside diameter of a pulley";
    "d_wheel" Metre "diameter of the wheel, unloaded";
    "d_wire" Millimetre "diameter of the wires";
    "E" WattHour "nameplate energy";
    "EI" NewtonSquareMetre "bending stiffness of the deck";
    "erpm" Rpm "electrical revolutions per minute";
    "erpm_max" Rpm "the controller's limit for them";
    "F" Newton "road load";
    "f" Hertz "frequency of the plucked span";
    "F_air" Newton "air resistance";
    "F_belt" Newton "pull in a belt";
    "F_brake" Newton "pull in a belt when braking";
    "f_bump" Metre "sag of the deck after a bump";
    "F_drive" Newton "pull in a belt at full throttle";
    "F_grip" Newton "push the tyres can hold";
    "f_measured" Metre "sag that was measured";
    "F_net" Newton "push minus air resistance";
    "F_peak" Newton "peak pull in a belt";
    "F_push" Newton "maximum push at the road";
    "F_rated" Newton "a belt's rated pull";
    "f_rated" NewtonPerMillimetre "a belt's rated pull per millimetre of width";
    "F_roll" Newton "rolling resistance";
    "f_sag" Metre "sag of the deck in the middle";
    "F_slope" Newton "force to climb the slope";
    "F_spare" Newton "push left over";
    "F_t" Newton "static tension of each span";
    "F_test" Newton "force on the middle of a span";
    "g" MetrePerSecondSquared "standard gravity, 9.80665 m/s²";
    "g_1" None "share of the quick branch that has built up";
    "g_2" None "share of the slow branch that has built up";
    "gauge" Gauge "gauge of the wires";
    "grade" None "rise over run";
    "h" Metre "altitude";
    "h_box" Metre "height of the enclosure inside";
    "h_bump" Metre "height of the bumps";
    "H_bushing" None "hardness of the bushings, Shore A";
    "h_c" Metre "height of the centre of mass";
    "h_clear" Metre "height of the deck above the axles that clears the tyres";
    "h_deck" Metre "height of the deck's underside above the road";
    "h_edge" Metre "height of the deck's underside above the axles";
    "h_enough" Metre "riser that keeps deck and tyres apart";
    "h_motor" Metre "height of the motor shaft above the road";
    "h_reach" Metre "how far the deck's edge reaches from the axles";
    "h_riser" Metre "riser between truck and deck";
    "h_truck" Metre "height of the truck from axle to deck";
    "I" Ampere "current of each motor";
    "i" None "gear ratio";
    "I_0" Ampere "direct current with nothing on the shaft";
    "I_battery" Ampere "battery current limit per motor";
    "I_cell" Ampere "a cell's maximum current";
    "I_lim" Ampere "maximum current of each motor";
    "I_max" Ampere "maximum pack current";
    "I_mean" Ampere "mean pack current of a ride";
    "I_pack" Ampere "pack current";
    "I_protection" Ampere "current limit of the pack's protection";
    "I_rated" Ampere "the motor's current rating";
    "I_set" Ampere "the controller's motor current limit";
    "I_brake" Ampere "the same when braking";
    "k" Count "cells in a row";
    "k_age" None "growth of resistance with age";
    "k_cold" None "growth of resistance in the cold";
    "k_Cu" None "share of the winding resistance that makes heat";
    "k_h" None "share of the iron torque that does not grow with speed";
    "k_mesh" None "share of a belt's rating that the teeth in mesh leave";
    "k_mode" None "share of the current limits that the ride mode leaves";
    "k_on" None "switches that conduct at once, as a factor";
    "k_lag" None "growth of the lag in the cold";
    "k_rough" None "growth of rolling resistance with each step of roughness";
    "k_steer" None "sum of the tangents of both trucks' steer";
    "k_sw" None "switching loss as a share of bus voltage times motor current";
    "k_T" NewtonMetrePerAmpere "torque per ampere";
    "k_t" None "static tension as a share of the peak pull";
    "Kv" RpmPerVolt "velocity constant";
    "L" Henry "inductance of one phase";
    "l_ahead" Metre "enclosure ahead of the middle between the axles";
    "l_axle" Metre "length of one axle end";
    "L_base" Metre "distance between the axles";
    "L_belt" Metre "pitch length of the belt";
    "l_block" Metre "room of the cells, one way";
    "l_box" Metre "length of the enclosure inside";
    "l_can" Metre "length of the motor's can";
    "l_cell" Metre "length of a cell";
    "l_controller" Metre "size of the controller, the same way";
    "l_crest" Metre "crest under the enclosure, from the middle between the axles";
    "l_filled" Metre "room of all in the enclosure, the same way";
    "l_foot" Metre "from an axle to the nearer foot";
    "l_inside" Metre "size of the enclosure inside, the same way";
    "l_spacer" Metre "spacer between a wheel's bearings";
    "L_span" Metre "free span of the belt";
    "l_stance" Metre "distance between the feet";
    "l_taken" Metre "axle taken by what is on it";
    "L_wire" Metre "length of the wires, there and back";
    "m" Kilogram "mass on the road";
    "m_belt" Kilogram "mass of the belt";
    "m_board" Kilogram "mass of the board";
    "m_load" Kilogram "mass of what is carried";
    "m_measured" Kilogram "mass under which the sag was measured";
    "m_rider" Kilogram "mass of the rider";
    "m_stand" Kilogram "mass of the rider and what is carried";
    "n" Count "number of motors";
    "N_p" Cells "cells in parallel";
    "N_s" Cells "cell groups in series";
    "p" Count "pole pairs";
    "p_air" Pascal "air pressure";
    "P_Cu" Watt "copper loss of one motor";
    "P_idle" Watt "power of one idle channel";
    "P_in" Watt "power into the controllers";
    "P_max" Watt "maximum power of the pack";
    "P_wheel" Watt "power at the wheel";
    "pitch" Metre "pitch of the belt";
    "Q" AmpereHour "capacity of the pack";
    "q" Metre "deflection at mid span";
    "q_age" None "capacity left by age";
    "Q_cell" AmpereHour "capacity of a cell";
    "q_cold" None "capacity left by the cold";
    "r" Metre "rolling radius";
    "R_1" Metre "pitch radius of the smaller pulley";
    "R_10s" Ohm "resistance of a cell ten seconds into a pulse";
    "R_2" Metre "pitch radius of the larger pulley";
    "R_20" Ohm "winding resistance between two wires at 20 °C";
    "R_cell" Ohm "resistance of a cell in this ride";
    "R_heat" Ohm "what turns squared motor current into heat";
    "R_joints" Ohm "joints, fuse and protection";
    "R_leads" Ohm "joints and wires";
    "R_pack" Ohm "pack and leads";
    "R_switch" Ohm "one switch";
    "R_turn" Metre "radius of the turn";
    "R_w" Ohm "winding resistance between two wires, warm";
    "R_wire" Ohm "wires";
    "s" None "roughness of the surface";
    "s_0" None "share of a resistance that is there at once";
    "s_1" None "share that builds up quickly";
    "s_2" None "share that builds up slowly";
    "sin α" None "sine of the slope's angle";
    "T" NewtonMetre "torque on the shaft of each motor";
    "t" Celsius "temperature of air and pack";
    "T_0" NewtonMetre "torque lost in iron and bearings";
    "T_brake" NewtonMetre "torque on the shaft of each motor when braking";
    "t_deck" Metre "thickness of the deck";
    "T_hold" NewtonMetre "torque the belt or tyres can hold";
    "T_jump" NewtonMetre "torque at which the belt may skip teeth";
    "T_lim" NewtonMetre "torque at maximum current";
    "t_w" Celsius "temperature of the windings";
    "t_wall" Metre "thickness of the enclosure's walls";
    "v" MetrePerSecond "speed";
    "V_bus" Volt "voltage at the controller";
    "V_bus_lim" Volt "the same at maximum current";
    "v_cap" MetrePerSecond "the ride mode's speed cap";
    "V_cell" Volt "open-circuit voltage of a cell, at the charge of its particles' surface";
    "V_cut" Volt "voltage of a cell group at which the pack disconnects";
    "V_end" Volt "voltage of a cell group at which the cutback leaves nothing";
    "v_end" MetrePerSecond "speed at which a limit ends the push";
    "V_motor" Volt "voltage a motor needs";
    "V_motor_lim" Volt "the same at maximum current";
    "V_nominal" Volt "nominal voltage of a cell";
    "V_pack" Volt "open-circuit voltage of the pack";
    "V_spare" Volt "voltage left over";
    "V_start" Volt "voltage of a cell group at which the cutback begins";
    "v_mean" MetrePerSecond "mean speed of a ride";
    "w" MetrePerSecond "headwind";
    "w_belt" Metre "width of the belt";
    "w_deck" Metre "width of the deck over the wheels";
    "w_hanger" Metre "width of the rear hanger";
    "w_hub" Metre "width of a wheel's hub over its bearings";
    "w_pulley" Metre "width of the wheel pulley with its flanges";
    "w_wheel" Metre "width of a tyre";
    "y_flank" Metre "inner flank of a wheel from the middle of the board";
    "y_outer" Metre "its outer flank";
    "Z" Teeth "teeth of a pulley";
    "z" None "charge";
    "Z_1" Teeth "teeth of the smaller pulley";
    "Z_2" Teeth "teeth of the larger pulley";
    "Z_belt" Teeth "teeth of the belt";
    "z_end" None "charge at the end";
    "Z_mesh" Teeth "teeth in mesh on the smaller pulley";
    "Z_motor" Teeth "teeth of the motor pulley";
    "z_start" None "charge at the start";
    "z_top" None "charge at the second surface of LFP, for the voltage above a knee";
    "z_surface" None "charge at the surface of the particles";
    "Z_wheel" Teeth "teeth of the wheel pulley";
    "β" Radian "angle of the free spans";
    "δ" Metre "tread deflection";
    "η" None "efficiency of the belt";
    "θ_bite" Degree "lean at which deck and tyre meet";
    "θ_front" Degree "steer of the front truck";
    "θ_lean" Degree "lean of the deck";
    "θ_max" Degree "maximum lean";
    "θ_mount" Degree "angle of the motor mount above level";
    "θ_over" Degree "break-over angle";
    "θ_pivot_front" Degree "angle of the front pivot from level";
    "θ_pivot_rear" Degree "angle of the rear pivot from level";
    "θ_rear" Degree "steer of the rear truck";
    "λ" PerAmpere "how far the charge at the surface lags, per ampere";
    "λ_top" PerAmpere "the same at the second surface of LFP";
    "μ" None "grip";
    "μ_belt" KilogramPerMetre "belt mass per metre";
    "ρ" KilogramPerCubicMetre "air density";
    "ρ_belt" KilogramPerCubicMetre "mass of a belt for its length, pitch and width";
    "ω" RadianPerSecond "speed of the motors";
    "ω_0" RadianPerSecond "speed at which the no-load current was measured";
    "I_charge" Ampere "charging current";
    "I_charger" Ampere "current of the charger";
    "I_hold" Ampere "mean current while the charger holds the voltage";
    "I_take" Ampere "a cell's maximum charging current";
    "I_taper" Ampere "current at which the charger ends";
    "t_current" Second "time at constant current";
    "t_voltage" Second "time at constant voltage";
    "t_ride" Second "time of a ride";
    "t_charge" Second "time to charge";
    "z_hold" None "charge at which the charger begins to hold the voltage";
    "V_charge" Volt "mean voltage of the pack while it charges";
    "E_pack" WattHour "energy into the pack";
    "E_wall" WattHour "energy from the wall";
    "η_charger" None "efficiency of the charger";
    "price" Money "price of a kilowatt-hour";
    "cost" Money "cost of a charge";
    "m_eff" Kilogram "effective mass, rotating parts included";
    "n_wheels" Count "number of wheels";
    "m_wheel" Kilogram "mass of a wheel";
    "J_rotor" KilogramSquareMetre "inertia of a rotor";
    "m_motor" Kilogram "mass of a motor";
    "s_stop" Metre "stopping distance";
    "a_stop" MetrePerSecondSquared "deceleration";
    "R_air" KelvinPerWatt "thermal resistance from a motor's case to the air";
    "R_still" KelvinPerWatt "the same in still air";
    "R_inner" KelvinPerWatt "thermal resistance from windings to case";
    "I_held²" SquareAmpere "square of the continuous motor current";
    "t_most" Celsius "maximum winding temperature";
    "P_iron" Watt "heat in iron and bearings of one motor";
    "R_Cu" Ohm "what turns squared motor current into heat in copper";
    "t_hot" Celsius "temperature at which the controller starts limiting";
    "R_sink" KelvinPerWatt "thermal resistance from the controller's switches to the air";
    "P_cool" Watt "heat one controller channel can shed continuously";
}

#[cfg(test)]
mod tests {
    use super::SYMBOLS;

    #[test]
    fn a_symbol_is_there_once() {
        for (place, (text, _)) in SYMBOLS.iter().enumerate() {
            assert!(SYMBOLS.iter().skip(place + 1).all(|(other, _)| other != text), "{text}");
        }
    }
}
