//! Room around the drive: what is between the parts, drawn from behind.

use super::found::{Asked, Found};
use super::view::{Drawn, drawn, faults, rough};
use crate::chart::{Table, table};
use crate::component::fold;
use crate::dom::{Node, el, live};
use crate::drawing::HangerRear;
use crate::text::{Style, page};
use pitchline_core::Slot;
use pitchline_core::fit::{Between, Clearance, FrameHeadline, frame_working};
use pitchline_core::physics::frame::{MOUNT_M, PULLEY_WIDTH, WASHER_M};

pub(super) fn frame(asked: &Asked) -> Node {
    let app = asked.app;
    let now = asked.clone();
    let room = move || {
        let rows = now.found().map(|found| rooms(&found, app.style()));
        rows.map(|rows| el("div").class("chart").with(table(rows))).into()
    };
    Node::from(vec![
        el("h3").with("Room around the drive").into(),
        faults(asked, amiss),
        drawn(asked, REAR),
        live(move || app.key(), room),
        workings(asked),
    ])
}

/// The workings of all of them, one after the other.
fn workings(asked: &Asked) -> Node {
    let asked = asked.clone();
    let inside = move || {
        let (asked, app) = (asked.clone(), asked.app);
        let steps = move || {
            let Some(found) = asked.found() else { return Vec::new() };
            let one = |c: &Clearance| {
                let which = FrameHeadline::Clearance(c.between);
                frame_working(&found.draft, &found.build, found.centre_m, which)
            };
            found.clearances.iter().flat_map(one).collect()
        };
        crate::later::working::list(app, page::STEPPED, steps)
    };
    fold("working", "Working", inside).into()
}

/// What the room is between.
fn name(between: Between) -> &'static str {
    match between {
        Between::PulleyRoad => "Wheel pulley to the road",
        Between::BeltRoad => "Belt to the road",
        Between::MotorRoad => "Motor to the road",
        Between::MotorWheel => "Motor to the wheel beside it",
        Between::MotorDeck => "Motor to the deck above",
        Between::MotorBox => "Motor to the box ahead",
        Between::MotorMotor => "Motor to motor",
        Between::Hanger => "Hanger left over",
        Between::Axle => "Axle left over",
    }
}

fn amiss(found: &Found, style: Style) -> Vec<String> {
    let short = |c: &&Clearance| c.room_m < 0.0;
    let say = |c: &Clearance| {
        let by = rough(style, -c.room_m);
        match c.between {
            Between::Hanger => format!("The hanger is {by} too narrow for mounts and motors."),
            Between::Axle => format!("The axle is {by} too short for pulley, wheel and nut."),
            other => format!("{}: {by} too little.", name(other)),
        }
    };
    found.clearances.iter().filter(short).map(say).collect()
}

fn rooms(found: &Found, style: Style) -> Table {
    let row = |c: &Clearance| {
        let note = match (c.assumed.is_empty(), c.practice) {
            (true, false) => "",
            (true, true) => "with usual allowances",
            (false, _) => "some sizes assumed",
        };
        vec![name(c.between).into(), rough(style, c.room_m), note.into()]
    };
    Table {
        label: String::new(),
        caption: "Room left, standing upright and level".into(),
        heads: vec!["Between".into(), "Room".into(), "Rests on".into()],
        rows: found.clearances.iter().map(row).collect(),
    }
}

pub(super) const REAR: Drawn = Drawn {
    finding: |found, style| {
        let least = found.clearances.iter().min_by(|a, b| a.room_m.total_cmp(&b.room_m));
        least.map_or_else(String::new, |c| {
            format!(
                "Rear hanger from behind. Least room: {}, {}.",
                name(c.between).to_lowercase(),
                rough(style, c.room_m)
            )
        })
    },
    plan: |found, style| rear(found).plan(style),
    more: |_, _| Vec::new(),
};

fn rear(found: &Found) -> HangerRear {
    let (build, draft) = (&found.build, &found.draft);
    let given = |slot: Slot, key: &str| draft.value(slot, key).is_some();
    let pulley_width_m = PULLEY_WIDTH.of([build.belt.width_m]);
    let [_, wheel_pulley] = found.belt.pulleys;
    let room =
        |which: Between| found.clearances.iter().find(|c| c.between == which).map(|c| c.room_m);
    let sin = build.truck.mount_angle_deg.to_radians().sin();
    let axle_m = build.wheel.radius_m();
    HangerRear {
        hanger_m: build.truck.hanger_width_m,
        axle_end_m: build.truck.axle_m,
        inside_m: WASHER_M + pulley_width_m,
        pulley_width_m,
        pulley_m: wheel_pulley.outside_diameter_m.unwrap_or(wheel_pulley.pitch_diameter_m),
        wheel_width_m: build.wheel.width_m,
        wheel_m: build.wheel.diameter_m,
        axle_m,
        can_m: build.motor.can_diameter_m,
        can_length_m: build.motor.can_length_m,
        motor_m: axle_m + found.centre_m * sin,
        motors: if build.truck.motor_count > 1.0 { 2 } else { 1 },
        mount_m: MOUNT_M,
        between_m: room(Between::MotorMotor).or(room(Between::Hanger)).unwrap_or(0.0),
        assumed: [
            !given(Slot::Truck, "hanger_width_mm") || !given(Slot::Truck, "axle_mm"),
            !given(Slot::Motor, "can_length_mm"),
        ],
    }
}
