// Types of pitchline.js. Values are in SI, except degrees Celsius, degrees of angle, Wh and Ah, as
// each comment says. In a build file the key carries the unit.

/** Starts the module. Await it before you call anything else. */
export default function start(options?: object): Promise<unknown>;

/**
 * Answers every question for a build. A slot left out gets typical values. Never throws.
 * If a charge is refused, show that: the wrong charger can set a pack on fire.
 */
export function answers(build?: BuildFile, options?: Options): Outcome;

/** Version of this module, by semantic versioning. */
export function version(): string;

/**
 * Every question answered. All values are in SI, except degrees Celsius, degrees of angle, Wh
 * and Ah, as each says; grades and charges are fractions, 0.12 for 12 %.
 */
export type AnswerSet = {
/**
 * What made the figures, and the conditions they hold under.
 */
made_by: MadeBy,
/**
 * What's on it?
 */
totals: Totals,
/**
 * How fast?
 */
speed: Speed,
/**
 * How steep?
 */
climb: Climb,
/**
 * How far at a steady speed?
 */
distance: Distance,
/**
 * Push and road load over speed.
 */
push: PushCurve,
/**
 * How far with stops, hills and heat? Every riding style, until the pack is empty.
 */
rides: Array<OutingAnswer>,
/**
 * How long on the charger?
 */
charge: ChargeAnswer,
/**
 * Does it go together? Without alternatives from a catalogue.
 */
fit: Together,
/**
 * What gives first?
 */
margins: Margins,
/**
 * What do I set?
 */
settings: Array<Recommended>,
/**
 * What doesn't go together, or is near a limit.
 */
notices: Array<Notice>,
/**
 * Which figures rest on weaker ground than the rest.
 */
caveats: Array<Caveat>,
/**
 * How sure? Only if asked for.
 */
bands?: Bands, };

/**
 * An answer as a band.
 */
export type Band = {
/**
 * The answer for exactly what was entered, in the answer's unit.
 */
nominal: number,
/**
 * One in ten is below, in the answer's unit.
 */
p10: number,
/**
 * Half are below, in the answer's unit.
 */
p50: number,
/**
 * One in ten is above, in the answer's unit.
 */
p90: number,
/**
 * Every input that is not known exactly, what moves the answer most first.
 */
movers: Array<Mover>,
/**
 * Samples that gave an answer, a count.
 */
samples: number, };

/**
 * Answers as bands; missing where there is no answer.
 */
export type Bands = {
/**
 * Top speed on the flat with a full pack, m/s.
 */
top_speed?: Band,
/**
 * Steepest hill at 10 km/h with a full pack, as a share.
 */
hill?: Band,
/**
 * Distance at the rider's cruising speed on the flat, m.
 */
steady_distance?: Band,
/**
 * Distance of the rider's own riding style, m.
 */
outing_distance?: Band,
/**
 * Time to charge until the charger ends, s.
 */
charge_time?: Band,
/**
 * Time to charge to the level where the rider stops charging, s.
 */
enough_time?: Band, };

/**
 * What a figure rests on.
 */
export type Basis = "published_model" | "extrapolated" | "common_practice";

/**
 * How to check a tension.
 */
export type BeltCheck = {
/**
 * Deflection at mid span, m, under `TEST_FORCE_N`, 10 N.
 */
deflection_m: number,
/**
 * Note of the plucked span, Hz.
 */
frequency_hz: number, };

/**
 * A belt, and how it would run.
 */
export type BeltChoice = {
/**
 * Place among the belts on offer; none if it is not of them.
 */
offer?: number,
/**
 * Teeth.
 */
teeth: number,
/**
 * Pitch length, m.
 */
length_m: number,
/**
 * How it lies at the centre distance that it wants.
 */
mesh: BeltMesh,
/**
 * Whether the mount slides there.
 */
in_slot: boolean,
/**
 * Where in the slot, as a share: 0 at the near stop, 1 at the far one.
 */
place: number,
/**
 * Travel left to tighten it, m; negative beyond the far stop.
 */
travel_left_m: number,
/**
 * Highest pull, N, with these teeth in mesh.
 */
rated_n: number,
/**
 * Greatest pull of the drive as a share of that.
 */
used: number,
/**
 * Mass of one, kg: as given, or by width and length.
 */
mass_kg: number,
/**
 * Price of one, in the catalogue's currency.
 */
price?: number,
/**
 * How much the wanted centre distance is more than the measured one, m.
 */
off_measured_m?: number, };

/**
 * Which belts fit, and what they must pull.
 */
export type BeltFit = {
/**
 * Motor pulley and wheel pulley.
 */
pulleys: [PulleySize, PulleySize],
/**
 * Centre distance at which they would touch, m.
 */
touching_m: number,
/**
 * The mount's stops, m, the nearer first.
 */
slot_m: [number, number],
/**
 * Which belts were tried.
 */
list: BeltList,
/**
 * Those that fit, shortest first.
 */
fitting: Array<BeltChoice>,
/**
 * The nearest one too short for the near stop.
 */
shorter?: BeltMiss,
/**
 * The nearest one too long for the far stop.
 */
longer?: BeltMiss,
/**
 * The belt on the board.
 */
on_board: BeltOnBoard,
/**
 * What the rider measured, and the belt in hand.
 */
bench: BenchFit,
/**
 * Where the centre distance of `run` was taken from.
 */
run_from: CentreFrom,
/**
 * The centre distance run at; none where the pulleys would overlap.
 */
run?: BeltMesh,
/**
 * What the belt on the board must pull, and how tight it has to be.
 */
load: BeltLoad, };

/**
 * Which belts were tried.
 */
export type BeltList = "offered" | "usual" | "unknown";

/**
 * Pull in each belt, and what it may be.
 */
export type BeltLoad = {
/**
 * At the greatest push of a full pack at a crawl, N, whatever the belt is rated for.
 */
drive_n: number,
/**
 * What sets that push.
 */
drive_limit: Limit,
/**
 * When braking, N: at the controller's motor current limit for braking or
 * the motor's own, up to what the tyres hold. A pack that takes no more back
 * only lessens it.
 */
brake_n: number,
/**
 * What sets that: the controller, the motor, or grip.
 */
brake_limit: Limit,
/**
 * The greater of the two, N.
 */
peak_n: number,
/**
 * Held at cruising speed on the flat, N; 0 where the board rolls by itself.
 */
steady_n: number,
/**
 * Held at 10 km/h up the rider's hill, N; 0 where the board rolls by itself.
 */
hill_n: number,
/**
 * Highest pull, N, as the push takes it: with the teeth in mesh where the
 * centre distance is known from belt or measurement, else in full.
 */
rated_n: number,
/**
 * Greatest pull as a share of that: above 1 it asks too much.
 */
used: number,
/**
 * Static tension: least, aimed at, most. Common practice, no source.
 */
tensions: [BeltTension, BeltTension, BeltTension],
/**
 * Force for the check of the deflection, N.
 */
test_force_n: number,
/**
 * Whether the belt's mass and length are given, or assumed by its width.
 */
belt_weighed: boolean, };

/**
 * How a belt lies at a centre distance.
 */
export type BeltMesh = {
/**
 * Centre distance, m.
 */
centre_m: number,
/**
 * Free span, m.
 */
span_m: number,
/**
 * Wrap of the smaller pulley, rad.
 */
wrap_rad: number,
/**
 * Teeth in mesh there.
 */
teeth: number,
/**
 * Of which whole, teeth.
 */
whole_teeth: number,
/**
 * Share of the belt's rating that they leave.
 */
rating_share: number, };

/**
 * The nearest belt that does not fit.
 */
export type BeltMiss = {
/**
 * The belt.
 */
belt: BeltChoice,
/**
 * How much more the mount would have to slide, m.
 */
miss_m: number, };

/**
 * How the belt on the board fits.
 */
export type BeltOnBoard = "no_teeth" | "too_short" | { "taut": BeltChoice };

/**
 * A static tension, and what comes with it.
 */
export type BeltTension = {
/**
 * As a share of the greatest pull.
 */
share: number,
/**
 * Pull in each span of the belt at rest, N.
 */
force_n: number,
/**
 * Shaft torque of one motor, N·m, at which the belt may skip teeth.
 */
jump_n_m: number,
/**
 * How to check it; none where the pulleys would overlap.
 */
check?: BeltCheck, };

/**
 * What the workbench says.
 */
export type BenchFit = {
/**
 * What the measured centre distance asks for.
 */
measured: MeasuredCentre,
/**
 * The belts whose wanted centre distance is nearest to it, nearest first,
 * and none farther off than the mount slides or `REACH_M`, 10 mm; the first that
 * lies in the slot is the one to take.
 */
nearest: Array<BeltChoice>,
/**
 * The belt in hand on these pulleys.
 */
in_hand: BeltOnBoard,
/**
 * Pairs on offer with which the belt in hand is taut within the slot,
 * nearest to the measured centre distance first.
 */
pairs: Array<PulleyPair>, };

/**
 * The two parts that a clearance is between.
 */
export type Between = "pulley_road" | "belt_road" | "motor_road" | "motor_wheel" | "motor_deck" | "motor_box" | "motor_motor" | "hanger" | "axle";

/**
 * An arrangement of cells and controller.
 *
 * All places are from one lower corner of the enclosure inside: along the
 * board, across, and up, in m. Where it does not fit it is drawn as if the
 * enclosure were larger.
 */
export type BoxPlan = {
/**
 * Size of the enclosure inside, m.
 */
inside_m: [number, number, number],
/**
 * Size of a cell.
 */
cell: CellSize,
/**
 * How the cells lie.
 */
lie: Lie,
/**
 * Cells in a row along, across and up; the last row may not be full.
 */
counts: [number, number, number],
/**
 * The middle of each cell, m.
 */
cells_m: Array<[number, number, number]>,
/**
 * The controller.
 */
controller: ControllerPlace,
/**
 * Room that cells, cables, controller and padding take along, across and up, m.
 */
used_m: [number, number, number],
/**
 * Room left along, across and up, m; negative is too little.
 */
left_m: [number, number, number],
/**
 * Whether it fits.
 */
fits: boolean,
/**
 * The direction with the least room left, by its place: 0 along, 1 across, 2 up.
 */
tightest: number,
/**
 * Least inside length of an enclosure as wide and as high that takes them, m; none
 * where it is too narrow or too low for any.
 */
length_for_m?: number,
/**
 * The most cells of this size that would go in, with the controller: a count of 0 or more.
 */
room_for: number,
/**
 * The most cells in parallel of which that is enough for those in series: a count of 0 or more.
 */
parallel_for: number,
/**
 * Inputs that were assumed.
 */
assumed: Array<Row>, };

/**
 * Why a figure rests on weaker ground than the rest.
 */
export type Caveat = { "cold_cells": {
/**
 * Their class.
 */
chemistry: Chemistry,
/**
 * The air, °C.
 */
air_c: number,
/**
 * What their figures rest on.
 */
basis: Basis, } };

/**
 * Size of a cell.
 */
export type CellSize = {
/**
 * Diameter, m.
 */
diameter_m: number,
/**
 * Length, m.
 */
length_m: number,
/**
 * Where they come from.
 */
from: SizeFrom, };

/**
 * Where the centre distance that a board runs at was taken from.
 */
export type CentreFrom = "belt" | "measured" | "slot";

/**
 * A charge.
 */
export type Charge = {
/**
 * Charge at the start, as a share.
 */
start_charge: number,
/**
 * Charge at the end, as a share.
 */
end_charge: number,
/**
 * Time, s.
 */
time_s: number,
/**
 * Of which at constant current, s.
 */
constant_current_s: number,
/**
 * Energy into the pack, Wh.
 */
pack_wh: number,
/**
 * Energy from the wall, Wh.
 */
wall_wh: number,
/**
 * What it costs, in the catalogue's currency; none without a price.
 */
cost?: number,
/**
 * Current into the pack until the voltage is held, A.
 */
current_a: number,
/**
 * What ends it.
 */
end: ChargeEnd,
/**
 * What sets the current.
 */
limit: ChargeLimit,
/**
 * Time, charge, current and volts on the way.
 */
curve: Array<ChargePoint>, };

/**
 * How long it charges, or why this pack must not be charged this way.
 */
export type ChargeAnswer = { "found": Charging } | { "refused": ChargeRefusal };

/**
 * What ends a charge.
 */
export type ChargeEnd = "target" | "taper" | "time";

/**
 * What sets the charging current.
 */
export type ChargeLimit = "charger" | "cells";

/**
 * A moment of a charge, for the whole pack.
 */
export type ChargePoint = {
/**
 * Time since the start, s.
 */
time_s: number,
/**
 * Charge, as a share.
 */
charge: number,
/**
 * Current into the pack, A.
 */
current_a: number,
/**
 * Voltage of the pack, V.
 */
volts: number, };

/**
 * Why a pack is not to be charged, gravest first.
 */
export type ChargeRefusal = { "wrong_volts": {
/**
 * Charger, V.
 */
charger_v: number,
/**
 * Full pack, V.
 */
pack_v: number,
/**
 * The lowest and the highest voltage of a charger for this pack, V.
 */
fits_v: [number, number],
/**
 * Whether it would overcharge the cells; else it never fills them.
 */
overcharges: boolean, } } | "wrong_plug" | { "too_cold": {
/**
 * Temperature of the cells, °C.
 */
cell_c: number,
/**
 * Lowest temperature for charging, °C.
 */
least_c: number, } };

/**
 * How long does it charge?
 */
export type Charging = {
/**
 * From where the rider begins until the charger ends by itself.
 */
full: Charge,
/**
 * From there until what the rider takes as enough.
 */
enough: Charge,
/**
 * From there until the rider leaves.
 */
leaving: Charge,
/**
 * Whether the charger is too strong for the cells; the charges are then at the cells' current.
 */
too_strong?: TooStrong, };

/**
 * The class of a lithium cell.
 *
 * How far its figures can be trusted, with the energy's worst error at 25 °C:
 *
 * | class | rates | stop voltages | error | whole discharges | colder than that |
 * |---|---|---|---|---|---|
 * | energy | 0.2C to 2C | 2.5 to 3.0 V | 1.1 % | 0 to 40 °C, to 0.5C | extrapolated |
 * | power | 0.2C and 1C | 2.5 V | 0.1 %, fitted | 0 and 25 °C, at 1C | extrapolated |
 * | LFP | 0.2C to 2C | 2.0 to 3.0 V | 0.8 % | 25 °C | common practice |
 *
 * All of it against runs of published parameter sets, outputs of a model;
 * nothing against a cell. `Chemistry::evidence` has the same as data.
 */
export type Chemistry = "energy" | "power" | "lfp";

/**
 * The room between two parts.
 */
export type Clearance = {
/**
 * Which two.
 */
between: Between,
/**
 * The room, m; negative is by how much they do not go together.
 */
room_m: number,
/**
 * Inputs that were assumed for it.
 */
assumed: Array<Row>,
/**
 * Whether an allowance went in that is common practice, such as a flange's height.
 */
practice: boolean, };

/**
 * How steep?
 */
export type Climb = {
/**
 * At a crawl, 2 km/h.
 */
crawl: Steepest,
/**
 * At 10 km/h.
 */
slow: Steepest,
/**
 * At 20 km/h.
 */
brisk: Steepest,
/**
 * At 10 km/h with a pack nearly empty, after a steady ride.
 */
slow_low: Steepest, };

/**
 * Conditions that figures hold under, as entered or assumed.
 */
export type Conditions = {
/**
 * Temperature of air and pack, °C.
 */
air_c: number,
/**
 * Altitude above sea level, m.
 */
altitude_m: number,
/**
 * Headwind, m/s; negative for a tailwind.
 */
headwind_m_s: number,
/**
 * Surface, by its name in build files.
 */
surface: string,
/**
 * Grip, as a share of the load on the driven wheels.
 */
grip: number,
/**
 * Weight of rider and load, kg.
 */
load_kg: number,
/**
 * Cruising speed, m/s.
 */
cruise_m_s: number,
/**
 * Charge at the start of rides, as a share.
 */
start_charge: number,
/**
 * Charge that counts as nearly empty, as a share.
 */
low_charge: number, };

/**
 * The controller in the enclosure.
 */
export type ControllerPlace = {
/**
 * Its place.
 */
side: Side,
/**
 * Whether it is turned, its length across the board.
 */
turned: boolean,
/**
 * Its corner nearest the enclosure's: along, across and up, m.
 */
corner_m: [number, number, number],
/**
 * Its size along, across and up, m.
 */
size_m: [number, number, number], };

/**
 * What to do about a misfit: change an input, by its slot and its key in files, pick another
 * part for a slot, or use a belt, by its place among those on offer.
 */
export type Cure = { "change": [Slot, string] } | { "pick": Slot } | { "belt": number };

/**
 * Deck and enclosure under the rider.
 */
export type DeckFit = {
/**
 * Sag in the middle, standing still, m.
 */
sag_m: number,
/**
 * What it was worked out from.
 */
sag_from: SagFrom,
/**
 * Enclosure to the road, standing still, m; negative where it would drag.
 */
road_m: number,
/**
 * Sag at the bottom of a bump, m.
 */
bump_sag_m: number,
/**
 * Enclosure to the road at the bottom of a bump, m; negative where it strikes.
 */
bump_road_m: number,
/**
 * Sharpest crest between two slopes that rolls through, degrees; none
 * where the enclosure already drags on level ground.
 */
break_over_deg?: number,
/**
 * Where such a crest would touch, ahead of the middle between the axles, m.
 */
crest_m: number,
/**
 * Inputs that were assumed.
 */
assumed: Array<Row>, };

/**
 * How far?
 */
export type Distance = {
/**
 * At the rider's cruising speed on the flat.
 */
cruise: Reach,
/**
 * Where the energy of that ride went, Wh.
 */
ledger: Ledger,
/**
 * Energy out of the pack's cells for each kilometre, Wh/km.
 */
wh_per_km: number,
/**
 * Distance over speed.
 */
curve: Array<DistancePoint>, };

/**
 * One speed on the distance curve.
 */
export type DistancePoint = {
/**
 * Speed, m/s.
 */
speed_m_s: number,
/**
 * Distance, m.
 */
distance_m: number,
/**
 * What ends it.
 */
limit: Limit,
/**
 * Why, where that is the pack's voltage.
 */
sag?: SagCause,
/**
 * How it ends: at the latest after 24 h.
 */
end: RideEnd, };

/**
 * A faulty value, or something that was ignored.
 */
export type Fault = {
/**
 * Where: a JSON pointer into the build, or the path of an option.
 */
field: string,
/**
 * What is wrong, what is allowed and in which unit, in English.
 */
reason: string, };

/**
 * What a value was taken from.
 */
export type Grounds = { "rating": Rating } | "part" | "cut_off" | "winding_limit" | "usual";

/**
 * Highest temperatures of a ride, °C.
 */
export type Hottest = {
/**
 * Windings, °C.
 */
winding_c: number,
/**
 * Cases of the motors, °C.
 */
case_c: number,
/**
 * Switches of the controller, °C.
 */
controller_c: number,
/**
 * Cells, °C.
 */
cell_c: number, };

/**
 * Places and sizes of what is on the board, with the board upright and level.
 *
 * Heights are above the road. Across, places are from the middle of the board,
 * along it from the rear axle.
 */
export type Layout = {
/**
 * Height of the axles, m.
 */
axle_up_m: number,
/**
 * Height of the motor's shaft, m.
 */
motor_up_m: number,
/**
 * How far the motor's shaft stands ahead of the rear axle, m.
 */
motor_ahead_m: number,
/**
 * Diameter over the teeth: motor pulley, wheel pulley, m.
 */
pulleys_m: [number, number],
/**
 * Height of their teeth, by the belt's pitch alone, m.
 */
tooth_m: number,
/**
 * Diameter over the wheel pulley's flanges, which stand out beyond the belt, m.
 */
flanges_m: number,
/**
 * The wheel pulley across, with its flanges: from and to, m.
 */
pulley_across_m: [number, number],
/**
 * A rear wheel across: inner and outer flank, m.
 */
wheel_across_m: [number, number],
/**
 * Diameter of a wheel's core, a usual share of the wheel's; it never meets the road, m.
 */
core_m: number,
/**
 * An axle end across: from the hanger's shoulder to the tip, m.
 */
axle_across_m: [number, number],
/**
 * A mount's plate across, m.
 */
mount_across_m: [number, number],
/**
 * A motor's can across, m; below 0 beyond the middle.
 */
can_across_m: [number, number],
/**
 * Height of the deck's underside at the axles, m.
 */
deck_up_m: number,
/**
 * How far the deck reaches beyond each axle, a usual share of the wheelbase, m.
 */
deck_end_m: number,
/**
 * Outside of the enclosure: length, width, and depth below the deck, m.
 */
box_m: [number, number, number],
/**
 * How much wider that is than the deck over the wheels, m; negative where it is narrower.
 */
box_beyond_deck_m: number, };

/**
 * How it turns, and what stops it.
 */
export type Lean = {
/**
 * The turn at the furthest lean that the trucks allow.
 */
furthest: Turn,
/**
 * Lean at which the deck meets a front tyre, degrees; none where it never does.
 */
bite_front_deg?: number,
/**
 * Lean at which the deck meets a rear tyre, degrees; none where it never does.
 */
bite_rear_deg?: number,
/**
 * Whether deck and tyres meet before the furthest lean.
 */
bites: boolean,
/**
 * Riser that keeps them apart up to the furthest lean, m; negative where
 * the deck could hang lower.
 */
riser_m: number,
/**
 * Change of the riser, m, up or down, that is left before they meet; none
 * where it is `TIGHT_M`, 2 mm, or more, or where they meet already.
 */
left_m?: number,
/**
 * Hardness of the bushings for the rider, Shore A. Common practice, no source.
 */
bushing_shore_a: number,
/**
 * Inputs that were assumed.
 */
assumed: Array<Row>, };

/**
 * Energy, Wh, by where it went. `stored_wh` is what left the cells' chemistry,
 * less what came back; it equals the sum of every other entry.
 */
export type Ledger = {
/**
 * Out of the cells' chemistry, Wh, less what braking brought back.
 */
stored_wh: number,
/**
 * Heat in the cells, Wh.
 */
pack_wh: number,
/**
 * Heat in joints and wires, Wh.
 */
wires_wh: number,
/**
 * Heat in the controller, Wh.
 */
controller_wh: number,
/**
 * Heat in the windings, Wh.
 */
winding_wh: number,
/**
 * Heat in iron and bearings, Wh.
 */
iron_wh: number,
/**
 * Heat in the belts, Wh.
 */
belt_wh: number,
/**
 * Rolling resistance, Wh.
 */
rolling_wh: number,
/**
 * Air resistance, Wh; negative where the wind pushed more than it held.
 */
air_wh: number,
/**
 * Height gained, Wh; negative where more was lost.
 */
climb_wh: number,
/**
 * Heat in brakes, or the rider's soles, Wh: braking beyond what the motors do.
 */
brake_wh: number,
/**
 * Gained in speed, Wh.
 */
kinetic_wh: number,
/**
 * All that passed the chemistry, out and back, Wh: what the sums are judged by.
 */
passed_wh: number,
/**
 * Of which came back by braking, Wh.
 */
returned_wh: number, };

/**
 * How much is left of a rating.
 */
export type Level = "over" | "close" | "fine";

/**
 * How the cells lie.
 */
export type Lie = "along" | "across" | "standing";

/**
 * The limit that binds the push, or the ride.
 */
export type Limit = "controller_motor_current" | "motor_current" | "controller_battery_current" | "pack_protection" | "cell_rating" | "pack_power" | "cutback" | "cut_off" | "voltage" | "electrical_speed" | "belt" | "grip" | "mode_speed" | "empty" | "controller_hot" | "winding_hot" | "brake_current" | "regen_current" | "over_voltage" | "crawl";

/**
 * What made the figures, and the conditions they hold under. Figures of one board can only be
 * compared if these agree.
 */
export type MadeBy = {
/**
 * Version of the program, by semantic versioning.
 */
pitchline: string,
/**
 * Version of the model, `MODEL`.
 */
model: number,
/**
 * Version of the catalogue that the parts come from, if given.
 */
catalogue?: string,
/**
 * Conditions that the figures hold under.
 */
conditions: Conditions, };

/**
 * A rating against what is asked of it.
 */
export type Margin = {
/**
 * The rating.
 */
rating: Rating,
/**
 * What the part bears, in the unit of the rating; of a fuse what it bears for long.
 */
bears: number,
/**
 * What is asked of it, in the same unit.
 */
asked: number,
/**
 * When.
 */
occasion: Occasion,
/**
 * For seconds at full throttle, in the same unit, where the rating is for continuous use and that
 * is more.
 */
briefly?: number,
/**
 * Share of the rating that is left; negative where too much is asked.
 */
left: number,
/**
 * What that comes to.
 */
level: Level, };

/**
 * What gives first?
 */
export type Margins = {
/**
 * Every rating that is known, the one with the least left first.
 */
list: Array<Margin>,
/**
 * Ratings that nobody has given.
 */
missing: Array<Rating>, };

/**
 * What a measured centre distance asks for.
 */
export type MeasuredCentre = "not_given" | "overlap" | { "length": {
/**
 * Its pitch length, m.
 */
length_m: number,
/**
 * The whole teeth next to that, fewer and more; alike where it is whole.
 */
teeth: [number, number], } };

/**
 * Something that does not fit, or only just.
 */
export type Misfit = {
/**
 * What, with its sizes.
 */
kind: MisfitKind,
/**
 * Whether it does not fit, or is tight.
 */
severity: Severity,
/**
 * What to do about it, the likeliest first. A change cures if it goes far enough; one pick
 * of many may not.
 */
cures: Array<Cure>, };

/**
 * What does not fit, with the sizes of it.
 */
export type MisfitKind = { "belt_too_short": {
/**
 * Centre distance at which the pulleys touch, m.
 */
touching_m: number, } } | { "belt_out_of_slot": {
/**
 * The centre distance that it wants, m.
 */
centre_m: number,
/**
 * The mount's stops, m, the nearer first.
 */
slot_m: [number, number],
/**
 * From there to the nearer of them, m; positive.
 */
miss_m: number, } } | { "belt_overload": {
/**
 * Greatest pull as a share of the rating; above 1.
 */
used: number,
/**
 * Whether braking pulls harder than the push.
 */
braking: boolean, } } | { "clearance": {
/**
 * Which two.
 */
between: Between,
/**
 * The room, m, below `TIGHT_M`, 2 mm; negative is by how much they do not fit.
 */
room_m: number, } } | { "box_drags": {
/**
 * Enclosure to the road, m; negative.
 */
room_m: number, } } | { "box_strikes": {
/**
 * Height of the bump, m.
 */
bump_m: number,
/**
 * Enclosure to the road, m, below `TIGHT_M`, 2 mm; negative where it strikes.
 */
room_m: number, } } | { "pack_in_box": {
/**
 * Room left along, across and up, m; negative is too little.
 */
left_m: [number, number, number],
/**
 * The direction with the least room left, by its place: 0 along, 1 across, 2 up.
 */
tightest: number,
/**
 * Least inside length of an enclosure as wide and as high that takes them, m; none where it is
 * too narrow or too low for any.
 */
length_for_m?: number, } } | { "wheel_bite": {
/**
 * The wheel that the deck meets first.
 */
wheel: WheelAt,
/**
 * The lean at which it does, degrees.
 */
lean_deg: number,
/**
 * The furthest lean, degrees.
 */
most_deg: number,
/**
 * Riser that only just keeps them apart up to there, m.
 */
riser_m: number, } } | { "near_wheel_bite": {
/**
 * Change of the riser, m, up or down, that is left before they meet.
 */
left_m: number, } };

/**
 * An input that moves an answer.
 */
export type Mover = {
/**
 * The input.
 */
input: Uncertain,
/**
 * The answer with this input alone at the tenth of its hundredths, in the answer's unit.
 */
low: number,
/**
 * The answer with it at the ninetieth, in the answer's unit.
 */
high: number, };

/**
 * Something that doesn't go together, or is near a limit.
 */
export type Notice = { "pack_above_controller": {
/**
 * Full pack, V.
 */
pack_v: number,
/**
 * Controller's limit, V.
 */
controller_v: number, } } | { "charger_voltage": {
/**
 * Charger, V.
 */
charger_v: number,
/**
 * Full pack, V.
 */
pack_v: number,
/**
 * The lowest and the highest voltage of a charger for this pack, V.
 */
fits_v: [number, number], } } | { "full_voltage": {
/**
 * As entered, V.
 */
full_v: number,
/**
 * The most that is usual for the chemistry, V, which is used in its place.
 */
highest_v: number, } } | { "pack_too_light": {
/**
 * Pack, kg.
 */
pack_kg: number,
/**
 * Its cells, kg.
 */
cells_kg: number, } } | { "tag_mismatch": {
/**
 * The one part.
 */
one: Slot,
/**
 * Its tag.
 */
one_tag: string,
/**
 * The other part.
 */
other: Slot,
/**
 * Its tag.
 */
other_tag: string, } };

/**
 * The occasion at which a rating is asked for the most.
 */
export type Occasion = "full_throttle" | "hill" | "hot_day" | "top_speed" | "braking" | "full_pack" | "charging" | "standing";

/**
 * What to answer beyond the rest, and where the parts come from.
 */
export type Options = {
/**
 * Whether to work out `answers.bands` too, which takes far longer than everything else.
 */
bands?: boolean,
/**
 * Version of the catalogue that the parts come from. It is returned in `answers.made_by`.
 */
catalogue?: string, };

/**
 * Answers or errors, and what was ignored.
 */
export type Outcome = {
/**
 * The answers; missing if there are errors.
 */
answers?: AnswerSet,
/**
 * Why the build can't be answered: one error for each faulty value.
 */
errors?: Array<Fault>,
/**
 * What was not understood or has no effect here. It changed nothing.
 */
ignored: Array<Fault>, };

/**
 * How far a riding style goes.
 */
export type OutingAnswer = {
/**
 * The riding style, by its name in build files.
 */
outing: string,
/**
 * Distance, m, until the board can no longer hold 80 % of the intended speed on the flat.
 */
distance_m: number,
/**
 * Part of it at the full intended speed, m; 0 if the board never reaches that.
 */
full_wish_m: number,
/**
 * How much farther it goes before it drops to walking pace, m.
 */
limp_m: number,
/**
 * Time for the distance, rests included, s.
 */
time_s: number,
/**
 * Charge at the start, as a share.
 */
start_charge: number,
/**
 * Charge left at the end, as a share.
 */
end_charge: number,
/**
 * What ends it.
 */
end: RideEnd,
/**
 * The limit that ends it; none if a whole day passes first.
 */
limit?: Limit,
/**
 * Why the pack sags, if its voltage is the limit.
 */
sag?: SagCause,
/**
 * Whether the ride falls short of what was intended: the board doesn't move, or it loses the
 * intended speed in the first 80 % of the distance.
 */
falls_short: boolean,
/**
 * Energy out of the cells per kilometre, Wh/km; 0 if the board doesn't move.
 */
wh_per_km: number,
/**
 * How warm it gets.
 */
hottest: Hottest, };

/**
 * A pair of pulleys for the belt in hand.
 */
export type PulleyPair = {
/**
 * Place among the motor pulleys on offer.
 */
motor_pulley: number,
/**
 * Place among the wheel pulleys on offer.
 */
wheel_pulley: number,
/**
 * Centre distance that the belt wants with them, m.
 */
centre_m: number,
/**
 * How much that is more than the measured one, m.
 */
off_measured_m?: number, };

/**
 * Sizes of a pulley.
 */
export type PulleySize = {
/**
 * Teeth.
 */
teeth: number,
/**
 * Diameter of the pitch circle, m.
 */
pitch_diameter_m: number,
/**
 * Diameter over the tips of the teeth, m, where the pitch line is known.
 */
outside_diameter_m?: number, };

/**
 * Push and road load over speed.
 */
export type PushCurve = {
/**
 * From a crawl to beyond the top speed.
 */
points: Array<PushPoint>,
/**
 * Grades, as shares, for which `loads` stand beside the flat.
 */
grades: Array<number>,
/**
 * For each grade the road load, N, at each point.
 */
loads: Array<Array<number>>, };

/**
 * Push and road load at one speed.
 */
export type PushPoint = {
/**
 * Speed, m/s.
 */
speed_m_s: number,
/**
 * Greatest push of a full pack, N.
 */
push_n: number,
/**
 * What binds there.
 */
limit: Limit,
/**
 * Road load on the flat, N.
 */
flat_n: number,
/**
 * Steepest hill that it can hold at this speed, as a share.
 */
grade: number,
/**
 * What binds on that hill: grip may there, though not on the flat.
 */
hill_limit: Limit, };

/**
 * A rating of a part, as its maker gives it or as it is assumed.
 */
export type Rating = "cell_discharge" | "cell_charge" | "cell_regen" | "full_pack_regen" | "protection" | "fuse" | "fuse_voltage" | "leads" | "inner_wires" | "pack_connector" | "charge_port" | "controller_voltage" | "controller_motor_current" | "controller_battery_current" | "controller_speed" | "controller_heat" | "motor_current" | "motor_continuous" | "winding_heat" | "motor_connector" | "belt" | "bearings" | "wheel_load" | "tyre_pressure" | "deck_load";

/**
 * How far one steady speed on the flat reaches.
 */
export type Reach = {
/**
 * Speed wished for, m/s.
 */
speed_m_s: number,
/**
 * The speed that the distance is judged by, m/s: the one wished for, or what the board reaches
 * with a full pack where that is less.
 */
wish_m_s: number,
/**
 * Distance, m, until the board no longer holds 80 % of that.
 */
distance_m: number,
/**
 * Of which at the full wish, m; 0 where the board never reaches it.
 */
full_wish_m: number,
/**
 * How much farther it limps to walking pace, m; 0 where that was not asked for.
 */
limp_m: number,
/**
 * Time that the distance takes, s.
 */
time_s: number,
/**
 * Charge at the start, as a share.
 */
start_charge: number,
/**
 * Charge left at the end, as a share.
 */
end_charge: number,
/**
 * What ends it.
 */
limit: Limit,
/**
 * Why, where that is the pack's voltage.
 */
sag?: SagCause,
/**
 * How it ends: at the latest after 24 h.
 */
end: RideEnd, };

/**
 * A value to set, or why there is none.
 */
export type Recommended = {
/**
 * Of what.
 */
setting: Setting,
/**
 * The value, in the setting's unit; none while a figure is missing, or where not even the lowest that can be
 * set is low enough for the rating named by `basis`.
 */
value?: number,
/**
 * The highest that the ratings allow, in the same unit; none for what is no limit, and with
 * `value`.
 */
most?: number,
/**
 * What it was taken from; none while a figure is missing.
 */
basis?: Grounds,
/**
 * Inputs that nobody gave and without which there is no value.
 */
missing: Array<[Slot, string]>,
/**
 * Ratings that nobody gave and that were left out of account.
 */
uncounted: Array<Rating>, };

/**
 * What ends a ride.
 */
export type RideEnd = "distance" | "time" | "slow" | "empty" | "stalled";

/**
 * An input, by its slot and its key in files.
 */
export type Row = {
/**
 * The slot.
 */
slot: Slot,
/**
 * The key, such as `hanger_width_mm`.
 */
key: string, };

/**
 * Why the pack's voltage holds the push back.
 */
export type SagCause = "low_charge" | "cold_cells" | "weak_cells";

/**
 * What a sag was worked out from.
 */
export type SagFrom = "measured" | "stiffness";

/**
 * What a field-oriented controller asks to be told.
 */
export type Setting = "motor_drive" | "motor_brake" | "battery_draw" | "battery_regen" | "erpm" | "voltage_start" | "voltage_end" | "controller_hot_start" | "controller_hot_end" | "motor_hot_start" | "motor_hot_end" | "max_duty" | "pole_pairs" | "gear_ratio" | "wheel_diameter" | "series";

/**
 * How bad a misfit is.
 */
export type Severity = "does_not_fit" | "tight";

/**
 * Where the controller is, seen from the cells.
 */
export type Side = "behind" | "beside";

/**
 * Where the size of a cell comes from.
 */
export type SizeFrom = "entered" | "format" | "assumed";

/**
 * A place in a build that one part fills.
 */
export type Slot = "pack" | "cell" | "motor" | "controller" | "motor_pulley" | "wheel_pulley" | "belt" | "wheel" | "truck" | "deck" | "charger" | "mode_low" | "mode_mid" | "mode_high" | "rider" | "place" | "ride" | "bench";

/**
 * How fast?
 */
export type Speed = {
/**
 * On the flat with a full pack.
 */
flat_full: TopSpeed,
/**
 * On the flat with a pack nearly empty, after a steady ride.
 */
flat_low: TopSpeed,
/**
 * On the rider's own slope with a full pack.
 */
on_grade: TopSpeed,
/**
 * In each ride mode, on the flat with a full pack.
 */
modes: [TopSpeed, TopSpeed, TopSpeed],
/**
 * Grade, rise over run, from 0.02 to 0.2, and the top speed there with a full pack.
 */
by_grade: Array<[number, TopSpeed]>, };

/**
 * The steepest hill that can be held at a speed, and what sets it.
 */
export type Steepest = {
/**
 * Rise over run, from -1 to 1; negative where the speed cannot be held on the flat.
 */
grade: number,
/**
 * The speed, m/s.
 */
speed_m_s: number,
/**
 * What binds there.
 */
limit: Limit, };

/**
 * Does it go together? All of that question.
 */
export type Together = {
/**
 * From the motor's shaft to the wheel's axle, m: as the belt on the board wants it, else as
 * the board runs, else the middle of the mount's slot.
 */
centre_m: number,
/**
 * Which belts fit, and what they must pull.
 */
belt: BeltFit,
/**
 * Where everything is.
 */
layout: Layout,
/**
 * The room between two parts.
 */
clearances: Array<Clearance>,
/**
 * Deck and enclosure under the rider.
 */
deck: DeckFit,
/**
 * How it turns, and what stops it.
 */
lean: Lean,
/**
 * Cells and controller in the enclosure.
 */
cells: BoxPlan,
/**
 * What does not fit, or only just: of the belt, then of the clearances in their order, of
 * the enclosure over the road, of the pack in the enclosure, of the deck over the tyres.
 */
misfits: Array<Misfit>, };

/**
 * A charger that gives more current than the cells are rated for: to be used only where the pack
 * itself holds the current down.
 */
export type TooStrong = {
/**
 * Current of the charger, A.
 */
charger_a: number,
/**
 * What the cells are rated for together, A.
 */
cells_a: number, };

/**
 * A top speed and what sets it.
 */
export type TopSpeed = {
/**
 * Speed, m/s; 0 where the board cannot move.
 */
speed_m_s: number,
/**
 * What binds there.
 */
limit: Limit, };

/**
 * What the parts add up to.
 */
export type Totals = {
/**
 * Board without rider, kg.
 */
board_mass_kg: number,
/**
 * Board, rider and what is carried, kg.
 */
total_mass_kg: number,
/**
 * Nameplate energy of the pack, Wh.
 */
nameplate_wh: number,
/**
 * Wheel pulley teeth over motor pulley teeth.
 */
gear_ratio: number,
/**
 * Sum of the prices given, in the catalogue's currency.
 */
price: number,
/**
 * Slots without a price, a count.
 */
unpriced: number, };

/**
 * A turn at one lean.
 */
export type Turn = {
/**
 * Lean of the deck, degrees.
 */
lean_deg: number,
/**
 * Steer of the front truck, degrees.
 */
steer_front_deg: number,
/**
 * Steer of the rear truck, degrees, the other way.
 */
steer_rear_deg: number,
/**
 * Radius, m; none where the trucks do not steer.
 */
radius_m?: number, };

/**
 * An input that is not known exactly.
 */
export type Uncertain = "mass" | "rolling" | "drag_area" | "wind" | "temperature" | "capacity" | "resistance" | "belt" | "kv";

/**
 * Which wheel.
 */
export type WheelAt = "front" | "rear";

/** A build: one object per slot, in full. */
export interface BuildFile {
    /** What kind of file this is. */
    format?: "pitchline-build";
    /** Version of the file format, a count. */
    version?: 1;
    /** Program that wrote this file. */
    app?: string;
    /** When this file was written. */
    created?: string;
    /** Your name for the build. */
    name?: string;
    /** Id of the kit that the build started from. */
    kit?: string;
    /** If left out, typical values are used. */
    pack?: PackInput;
    /** If left out, typical values are used. */
    cell?: CellInput;
    /** If left out, typical values are used. */
    motor?: MotorInput;
    /** If left out, typical values are used. */
    controller?: ControllerInput;
    /** If left out, typical values are used. */
    motor_pulley?: MotorPulleyInput;
    /** If left out, typical values are used. */
    wheel_pulley?: WheelPulleyInput;
    /** If left out, typical values are used. */
    belt?: BeltInput;
    /** If left out, typical values are used. */
    wheel?: WheelInput;
    /** If left out, typical values are used. */
    truck?: TruckInput;
    /** If left out, typical values are used. */
    deck?: DeckInput;
    /** If left out, typical values are used. */
    charger?: ChargerInput;
    /** If left out, typical values are used. */
    mode_low?: ModeInput;
    /** If left out, typical values are used. */
    mode_mid?: ModeInput;
    /** If left out, typical values are used. */
    mode_high?: ModeInput;
    /** If left out, typical values are used. */
    rider?: RiderInput;
    /** If left out, typical values are used. */
    place?: PlaceInput;
    /** If left out, typical values are used. */
    ride?: RideInput;
    /** If left out, typical values are used. */
    bench?: BenchInput;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `cell` of a build. */
export interface CellInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    format?: string;
    /** Mass of one cell. The assumed mass depends on size and chemistry. If left out, 0.07 for a typical cell (0.06 with lfp cells) is assumed. From 0.005 to 2 kg. */
    mass_kg?: number;
    /** Price of one cell, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Chemistry class: energy (NMC or NCA built for capacity), power (NMC or NCA built for current), or LFP. */
    chemistry: "energy" | "power" | "lfp";
    /** Rated capacity when new, at 25 °C and a low rate. From 0.1 to 200 Ah. */
    capacity_ah: number;
    /** Resistance after a 10 s pulse at half charge and 25 °C, as on data sheets. From 0.1 to 300 mΩ. */
    resistance_10s_mohm: number;
    /** Maximum continuous discharge current of one cell. From 0.1 to 1000 A. */
    max_discharge_a: number;
    /** Maximum charge current of one cell. 1C is assumed, as many amps as its capacity in Ah. Common practice, no source. If left out, 3 for a typical cell is assumed. From 0.05 to 500 A. */
    max_charge_a?: number;
    /** Voltage of a full cell. Charger and controller are matched to it. If left out, 4.2 (3.6 with lfp cells) is assumed. From 3.3 to 4.4 V. */
    full_v?: number;
    /** Nominal voltage of the cell, from which its rated energy is worked out. If left out, 3.6 (3.2 with lfp cells) is assumed. From 2.8 to 3.9 V. */
    nominal_v?: number;
    /** Diameter. If not given, taken from the cell format, such as 21700. From 8 to 70 mm. */
    diameter_mm?: number;
    /** Length. If not given, taken from the cell format. From 15 to 250 mm. */
    length_mm?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `pack` of a build. */
export interface PackInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    connector?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    charge_port?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    cell?: string;
    /** Mass of the whole pack. If not given, the mass of the cells plus a quarter. From 0.1 to 60 kg. */
    mass_kg?: number;
    /** Price of the whole pack, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Cell groups in series. From 3 to 24 cells. */
    series: number;
    /** Cells in parallel in each series group. From 1 to 40 cells. */
    parallel: number;
    /** Maximum continuous discharge current that the protection circuit allows. From 1 to 1000 A. */
    protection_a: number;
    /** Cut-off voltage per cell: the protection circuit disconnects when the weakest series group drops to it. If left out, 3 (2.5 with lfp cells) is assumed. From 2 to 3.6 V. */
    cut_off_v?: number;
    /** Total resistance of joints, fuse and protection circuit. If left out, 8 is assumed. From 0 to 200 mΩ. */
    joints_mohm?: number;
    /** Wire gauge of the leads between pack and controller. If left out, 12 is assumed. From 4 to 24 AWG. */
    wire_awg?: number;
    /** Length of those leads, both wires added. If left out, 0.8 is assumed. From 0 to 6 m. */
    wire_m?: number;
    /** Continuous current rating of those leads, as their maker gives it. From 1 to 1000 A. */
    wire_a?: number;
    /** Continuous current rating of the wires and strips inside the pack that carry all of its current. From 1 to 1000 A. */
    inner_wire_a?: number;
    /** Continuous current rating of the connector to the controller. From 1 to 1000 A. */
    connector_a?: number;
    /** Rated current of the main fuse. From 1 to 1000 A. */
    fuse_a?: number;
    /** DC voltage rating of the main fuse. From 5 to 1500 V. */
    fuse_v?: number;
    /** Continuous current rating of the charging port. From 0.2 to 100 A. */
    charge_port_a?: number;
    /** Charge cycles so far: full charges and discharges. If left out, 0 is assumed. From 0 to 1000 cycles. */
    cycles?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `motor` of a build. */
export interface MotorInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    shaft?: string;
    /** Mass of one motor. If left out, 0.75 is assumed. From 0.05 to 10 kg. */
    mass_kg?: number;
    /** Price of one motor, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Kv, the velocity constant: speed per volt of peak line-to-line back-EMF. From 20 to 2000 rpm/V. */
    kv_rpm_per_v: number;
    /** Resistance between any two of the three motor wires, at 20 °C. From 1 to 2000 mΩ. */
    resistance_ll_mohm: number;
    /** Inductance of one phase. If left out, 22 is assumed. From 0 to 1000 µH. */
    inductance_uh?: number;
    /** Pole pairs: half the number of magnets. If left out, 7 is assumed. From 1 to 40 (a count). */
    pole_pairs?: number;
    /** No-load current: direct current that one motor draws with nothing on the shaft. If left out, 1.2 is assumed. From 0 to 20 A. */
    no_load_a?: number;
    /** Speed at which the no-load current was measured. If left out, 5000 is assumed. From 100 to 60000 rpm. */
    no_load_rpm?: number;
    /** Share of the no-load current that doesn't depend on speed: hysteresis and bearings. If left out, 50 is assumed. From 0 to 100 %. */
    hysteresis_percent?: number;
    /** Maximum motor current, in the controller's current convention. From 1 to 1000 A. */
    max_current_a: number;
    /** Motor current that the motor's maker rates for continuous use, in the controller's current convention. From 0.5 to 1000 A. */
    continuous_a?: number;
    /** Continuous current rating of the connectors between motor and controller, RMS. From 0.5 to 1000 A. */
    connector_a?: number;
    /** Can diameter. If left out, 63 is assumed. From 20 to 150 mm. */
    can_diameter_mm?: number;
    /** Can length, from the face of the motor mount. If left out, 74 is assumed. From 20 to 250 mm. */
    can_length_mm?: number;
    /** Maximum winding temperature. Common practice, no source. If left out, 120 is assumed. From 60 to 220 °C. */
    winding_limit_c?: number;
    /** Thermal resistance, windings to case. Common practice, no source. If left out, 0.5 is assumed. From 0.01 to 10 K/W. */
    winding_k_per_w?: number;
    /** Thermal resistance, case to still air. Common practice, no source. If left out, 1.6 is assumed. From 0.05 to 20 K/W. */
    case_k_per_w?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `controller` of a build. */
export interface ControllerInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    connector?: string;
    /** Mass of the whole controller, all channels together. If left out, 0.35 is assumed. From 0.02 to 10 kg. */
    mass_kg?: number;
    /** Price, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Current convention: how the controller counts motor current, as peak phase current (field-oriented control) or as direct current (six-step). At the same number of amps, peak phase gives 13 % less torque. */
    convention?: "peak_phase" | "direct";
    /** Motor current limit per motor, in that convention. From 1 to 1000 A. */
    motor_current_a: number;
    /** Battery current limit per motor. From 0.5 to 500 A. */
    battery_current_a: number;
    /** Motor current that the controller's maker rates one channel for, in that convention. From 1 to 1000 A. */
    rated_motor_a?: number;
    /** Battery current that the controller's maker rates one channel for. From 0.5 to 500 A. */
    rated_battery_a?: number;
    /** ERPM that the controller's maker rates it for. From 1000 to 1000000 rpm. */
    rated_erpm?: number;
    /** ERPM limit (motor rpm times pole pairs): above it the controller gives no power. If left out, 100000 is assumed. From 1000 to 1000000 rpm. */
    erpm_limit?: number;
    /** Maximum duty cycle. If left out, 95 is assumed. From 50 to 100 %. */
    max_duty_percent?: number;
    /** Maximum input voltage. Higher voltages destroy the controller. If left out, 60 is assumed. From 10 to 150 V. */
    max_bus_v?: number;
    /** Voltage per cell below which the controller starts limiting battery current. If left out, 3.3 (2.8 with lfp cells) is assumed. From 2 to 4 V. */
    cutback_start_v?: number;
    /** Voltage per cell at which the controller cuts out. If left out, 3 (2.5 with lfp cells) is assumed. From 2 to 4 V. */
    cutback_end_v?: number;
    /** On-resistance of one switching transistor. If left out, 2 is assumed. From 0 to 50 mΩ. */
    switch_mohm?: number;
    /** Switching loss, as a share of input voltage times motor current. If left out, 0.8 is assumed. From 0 to 10 %. */
    switching_percent?: number;
    /** Idle power per motor. If left out, 1 is assumed. From 0.1 to 20 W. */
    idle_w?: number;
    /** Length of the controller's case. If left out, 120 is assumed. From 20 to 300 mm. */
    length_mm?: number;
    /** Width of the controller's case. If left out, 75 is assumed. From 15 to 200 mm. */
    width_mm?: number;
    /** Height of the controller's case. If left out, 25 is assumed. From 5 to 100 mm. */
    height_mm?: number;
    /** Motor current limit when braking, per motor, in the controller's current convention. If left out, 40 is assumed. From 0 to 1000 A. */
    brake_current_a?: number;
    /** Battery current limit when braking (regen), per motor. If left out, 8 is assumed. From 0 to 500 A. */
    regen_current_a?: number;
    /** Controller temperature at which thermal limiting starts. Common practice, no source. If left out, 80 is assumed. From 40 to 130 °C. */
    cutback_start_c?: number;
    /** Controller temperature at which it cuts out. Common practice, no source. If left out, 100 is assumed. From 50 to 150 °C. */
    cutback_end_c?: number;
    /** Winding temperature at which thermal limiting of the motor starts, if the controller reads the motor's sensor. Common practice, no source. From 40 to 200 °C. */
    motor_cutback_start_c?: number;
    /** Winding temperature at which the controller cuts out. If not given, the motor's maximum winding temperature. Common practice, no source. From 50 to 220 °C. */
    motor_cutback_end_c?: number;
    /** Thermal resistance, switching transistors to air. Common practice, no source. If left out, 1.5 is assumed. From 0.05 to 20 K/W. */
    heat_sink_k_per_w?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `motor_pulley` of a build. */
export interface MotorPulleyInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    bore?: string;
    /** Mass of one pulley. If left out, 0.04 is assumed. From 0 to 2 kg. */
    mass_kg?: number;
    /** Price of one, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Number of teeth. From 8 to 60 teeth. */
    teeth: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `wheel_pulley` of a build. */
export interface WheelPulleyInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    core?: string;
    /** Mass of one pulley. If left out, 0.12 is assumed. From 0 to 2 kg. */
    mass_kg?: number;
    /** Price of one, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Number of teeth. From 12 to 120 teeth. */
    teeth: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `belt` of a build. */
export interface BeltInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    profile?: string;
    /** Mass of one. If not given, worked out from width and length. From 0 to 1 kg. */
    mass_kg?: number;
    /** Price of one, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Teeth: pitch length divided by pitch. From 20 to 400 teeth. */
    teeth?: number;
    /** Tooth pitch. If left out, 5 is assumed. From 2 to 14 mm. */
    pitch_mm?: number;
    /** Belt width. From 5 to 50 mm. */
    width_mm: number;
    /** Rated pull per mm of width. Common practice, no source. If left out, 30 is assumed. From 2 to 200 N/mm. */
    rating_n_per_mm?: number;
    /** Efficiency: share of the motor's work that reaches the wheel. If left out, 95 is assumed. From 50 to 100 %. */
    efficiency_percent?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `wheel` of a build. */
export interface WheelInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    core?: string;
    /** Mass of one wheel. If left out, 0.28 is assumed. From 0.05 to 5 kg. */
    mass_kg?: number;
    /** Price of one, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Diameter, unloaded. From 50 to 400 mm. */
    diameter_mm: number;
    /** Tread deflection under the rider. If left out, 1 is assumed. From 0 to 15 mm. */
    deflection_mm?: number;
    /** Rolling resistance coefficient on smooth asphalt. From 0.002 to 0.1 (a ratio). */
    rolling_smooth: number;
    /** Share added to the rolling resistance for each step of surface roughness. If left out, 15 is assumed. From 0 to 100 %. */
    roughness_percent?: number;
    /** Width of the tyre. If left out, 52 is assumed. From 15 to 200 mm. */
    width_mm?: number;
    /** Maximum load on one wheel. From 5 to 500 kg. */
    max_load_kg?: number;
    /** Tyre pressure. From 0.2 to 10 bar. */
    pressure_bar?: number;
    /** Maximum tyre pressure. From 0.2 to 10 bar. */
    max_pressure_bar?: number;
    /** Maximum speed of the wheel bearings. From 500 to 100000 rpm. */
    bearing_rpm?: number;
    /** Bearing spacer: distance between the two bearings, which sit symmetrically about the middle of the wheel. If left out, 10 is assumed. From 0 to 100 mm. */
    spacer_mm?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `charger` of a build. */
export interface ChargerInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    charge_port?: string;
    /** Mass. The charger isn't carried on the board. If left out, 0.6 is assumed. From 0.05 to 10 kg. */
    mass_kg?: number;
    /** Price, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Output voltage, at which charging ends. From 9 to 110 V. */
    full_v: number;
    /** Charging current. From 0.2 to 50 A. */
    current_a: number;
    /** Share of the wall power that reaches the pack. Common practice, no source. If left out, 88 is assumed. From 50 to 100 %. */
    efficiency_percent?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `deck` of a build. */
export interface DeckInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Mass, enclosure included. If left out, 2.6 is assumed. From 0.3 to 30 kg. */
    mass_kg?: number;
    /** Price, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Maximum load on the deck: the rider and what the rider carries. From 20 to 400 kg. */
    max_load_kg?: number;
    /** Wheelbase: distance between the axles. If left out, 720 is assumed. From 250 to 1500 mm. */
    wheelbase_mm?: number;
    /** Deck width at the wheels, inside any cut-outs. If left out, 150 is assumed. From 50 to 500 mm. */
    width_mm?: number;
    /** Deck thickness at the wheels. If left out, 13 is assumed. From 3 to 80 mm. */
    thickness_mm?: number;
    /** Bending stiffness of the deck lengthwise, E times I. If left out, 400 is assumed. From 20 to 50000 N·m². */
    stiffness_n_m2?: number;
    /** Measured sag in the middle, under a rider. Overrides the stiffness. From 0 to 100 mm. */
    sag_mm?: number;
    /** Mass of the rider who stood on the deck when the sag was measured. If left out, 80 is assumed. From 20 to 200 kg. */
    sag_mass_kg?: number;
    /** Distance between the rider's feet, assumed centred between the axles. If left out, 450 is assumed. From 50 to 1500 mm. */
    stance_mm?: number;
    /** Riser height between truck and deck. Negative if the deck sits below the truck baseplates. If left out, 15 is assumed. From -60 to 60 mm. */
    riser_mm?: number;
    /** Inside length of the enclosure, along the board. If left out, 340 is assumed. From 50 to 1400 mm. */
    box_length_mm?: number;
    /** Inside width of the enclosure. If left out, 160 is assumed. From 30 to 450 mm. */
    box_width_mm?: number;
    /** Inside height of the enclosure, from its floor to the deck. If left out, 52 is assumed. From 8 to 200 mm. */
    box_height_mm?: number;
    /** Thickness of the enclosure's walls and floor. If left out, 3 is assumed. From 0 to 20 mm. */
    box_wall_mm?: number;
    /** How far the enclosure's centre is ahead of the middle of the wheelbase. Negative if behind. If left out, 0 is assumed. From -400 to 400 mm. */
    box_ahead_mm?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `truck` of a build. */
export interface TruckInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    hanger?: string;
    /** Compatibility tag. Parts that connect must have the same tag, or none. */
    mount?: string;
    /** Mass of the pair, mounts included. If left out, 1.5 is assumed. From 0.3 to 20 kg. */
    mass_kg?: number;
    /** Price, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    price?: number;
    /** Number of motors, all on the rear axle. From 1 to 2 (a count). */
    motor_count: number;
    /** Minimum distance from motor shaft to axle that the mount adjusts to. If left out, 66 is assumed. From 20 to 400 mm. */
    centre_min_mm?: number;
    /** Maximum distance from motor shaft to axle that the mount adjusts to. If left out, 78 is assumed. From 20 to 400 mm. */
    centre_max_mm?: number;
    /** Rear hanger width, between the axle shoulders. If left out, 184 is assumed. From 80 to 500 mm. */
    hanger_width_mm?: number;
    /** Length of one axle end, from the hanger's shoulder to the end of the thread. If left out, 70 is assumed. From 20 to 200 mm. */
    axle_mm?: number;
    /** Height from axle to the underside of the deck, without riser. If left out, 66 is assumed. From 10 to 200 mm. */
    height_mm?: number;
    /** Front pivot angle, from horizontal. If left out, 50 is assumed. From 0 to 70 °. */
    pivot_front_deg?: number;
    /** Rear pivot angle, from horizontal. If left out, 50 is assumed. From 0 to 70 °. */
    pivot_rear_deg?: number;
    /** Maximum lean that bushings and pivots allow. If left out, 18 is assumed. From 1 to 45 °. */
    max_lean_deg?: number;
    /** Motor mount angle at the rear axle: 0° points forward, 90° straight up. Beyond 90° is behind the axle. If left out, 20 is assumed. From -90 to 270 °. */
    mount_angle_deg?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `mode` of a build. */
export interface ModeInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Share of the motor and battery current limits available in this mode. From 5 to 100 %. */
    current_percent: number;
    /** Speed cap. If not given, the mode has none. From 3 to 120 km/h. */
    speed_cap_km_h?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `rider` of a build. */
export interface RiderInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Weight of the rider, dressed. If left out, 78 is assumed. From 20 to 180 kg. */
    mass_kg?: number;
    /** Weight of what the rider carries, such as bag and helmet. If left out, 4 is assumed. From 0 to 60 kg. */
    gear_mass_kg?: number;
    /** Riding posture, which sets the drag area. */
    posture?: "upright" | "relaxed" | "crouched";
    /** Drag area, if known. Overrides the posture. From 0.1 to 1.5 m². */
    drag_area_m2?: number;
    /** Height of the centre of mass of rider and board above the road. If left out, 950 is assumed. From 200 to 1500 mm. */
    centre_height_mm?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `place` of a build. */
export interface PlaceInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Temperature of the air, and of the pack at the start. If left out, 20 is assumed. From -25 to 50 °C. */
    air_c?: number;
    /** Altitude above sea level. If left out, 10 is assumed. From -430 to 5000 m. */
    altitude_m?: number;
    /** Headwind. Negative for a tailwind. If left out, 0 is assumed. From -60 to 60 km/h. */
    headwind_km_h?: number;
    /** Road surface. */
    surface?: "smooth_asphalt" | "street_asphalt" | "coarse_asphalt" | "pavers" | "packed_gravel";
    /** Grip: the share of their load that the driven wheels can push with. If left out, 70 is assumed. From 5 to 120 %. */
    grip_percent?: number;
    /** Height of the kerbs or bumps that the board rolls off. If left out, 15 is assumed. From 0 to 200 mm. */
    bump_mm?: number;
    /** Temperature where you charge, and of the pack there. If not given, the air temperature. From -25 to 50 °C. */
    charge_air_c?: number;
    /** Electricity price per kilowatt-hour, in the catalogue's currency. From 0 to 1000000 (in that currency). */
    energy_price_kwh?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `ride` of a build. */
export interface RideInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Cruising speed. If left out, 22 is assumed. From 3 to 100 km/h. */
    cruise_km_h?: number;
    /** Grade of the rider's own hill. If left out, 8 is assumed. From 0 to 60 %. */
    grade_percent?: number;
    /** Charge at the start. If left out, 100 is assumed. From 5 to 100 %. */
    start_charge_percent?: number;
    /** Charge that counts as nearly empty. If left out, 10 is assumed. From 2 to 50 %. */
    low_charge_percent?: number;
    /** Winding temperature when warm. If left out, 60 is assumed. From -25 to 180 °C. */
    winding_c?: number;
    /** Riding style: stops, hills and speed. */
    outing?: "steady_cruise" | "relaxed_loop" | "stop_and_go_town" | "hill_session" | "full_send" | "my_own" | "city_cycle_cut" | "city_cycle_slowed";
    /** Stops per kilometre, for the style my_own. If left out, 1 is assumed. From 0 to 20 1/km. */
    stops_per_km?: number;
    /** Acceleration and braking, for the style my_own. If left out, 1.5 is assumed. From 0.2 to 6 m/s². */
    acceleration_m_s2?: number;
    /** Climb per kilometre, with the same descent, for the style my_own. If left out, 5 is assumed. From 0 to 150 m/km. */
    climb_m_per_km?: number;
    /** Rest at each stop, for the style my_own. If left out, 10 is assumed. From 0 to 600 s. */
    rest_s?: number;
    /** Charge when the charger is plugged in. If left out, 20 is assumed. From 0 to 100 %. */
    charge_from_percent?: number;
    /** Charge at which to stop charging. If left out, 80 is assumed. From 1 to 100 %. */
    charge_to_percent?: number;
    /** Time available for charging. If left out, 2 is assumed. From 0 to 48 h. */
    charge_time_h?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}

/** A `bench` of a build. */
export interface BenchInput {
    /** Stable id, unique within its list. Links and kits refer to it. */
    id?: string;
    /** Name shown to riders. */
    name?: string;
    /** Where the figures come from. */
    source?: string;
    /** Anything a rider should know. */
    notes?: string;
    /** Distance from motor shaft to axle, measured. From 20 to 400 mm. */
    measured_centre_mm?: number;
    /** Number of teeth of a belt in hand. From 20 to 400 teeth. */
    belt_in_hand_teeth?: number;
    /** A comment. */
    [comment: `$${string}`]: unknown;
}
