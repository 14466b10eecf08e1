//! Room around the drive: what is between the parts, drawn from behind.

use super::view::{Drawn, ToScale, room as room_of, sizes, unit};
use crate::app::{Fit, use_app};
use crate::chart::{Grid, Table};
use crate::drawing::HangerRear;
use crate::question::WorkingSteps;
use crate::text::{Style, page};
use leptos::prelude::*;
use pitchline_core::fit::{Between, Clearance, FrameHeadline, frame_working};
use pitchline_core::{Slot, Step};

/// Room around the drive.
#[component]
pub(super) fn Frame() -> impl IntoView {
    let app = use_app();
    let room = move || {
        let style = app.style();
        app.fit().map(|found| {
            let table = rooms(&found, style);
            view! { <div class="chart rooms worded"><Grid table /></div> }
        })
    };
    let steps = move || app.fit().map(|found| workings(&found)).unwrap_or_default();
    view! {
        <h3>"Room around the drive"</h3>
        <ToScale of=&REAR />
        {room}
        <WorkingSteps first=page::STEPPED steps />
    }
}

/// The workings of all of them, one after the other.
fn workings(found: &Fit) -> Vec<Step> {
    let one = |c: &Clearance| {
        let which = FrameHeadline::Clearance(c.between);
        frame_working(&found.draft, &found.build, found.together.centre_m, which)
    };
    found.together.clearances.iter().flat_map(one).collect()
}

/// What the room is between.
pub(super) fn name(between: Between) -> &'static str {
    match between {
        Between::PulleyRoad => "Wheel pulley to road",
        Between::BeltRoad => "Belt to road",
        Between::MotorRoad => "Motor to road",
        Between::MotorWheel => "Motor to wheel",
        Between::MotorDeck => "Motor to deck",
        Between::MotorBox => "Motor to box",
        Between::MotorMotor => "Motor to motor",
        Between::Hanger => "Hanger beside motors",
        Between::Axle => "Axle past its nut",
    }
}

fn rooms(found: &Fit, style: Style) -> Table {
    let row = |c: &Clearance| {
        let note = match (sizes(&c.assumed), c.practice) {
            (sizes, _) if !sizes.is_empty() => sizes,
            (_, true) => "usual gaps only".into(),
            _ => "nothing".into(),
        };
        vec![name(c.between).into(), room(c, style), note]
    };
    Table {
        label: String::new(),
        caption: "Room left, standing upright and level".into(),
        heads: vec!["Between".into(), "Room".into(), "Assumed for it".into()],
        rows: found.together.clearances.iter().map(row).collect(),
    }
}

fn room(c: &Clearance, style: Style) -> String {
    let room = unit(style, &room_of(style, c.room_m));
    if c.room_m < 0.0 { format!("{room} too little") } else { room }
}

/// The rear hanger from behind.
pub(super) static REAR: Drawn = Drawn {
    finding: |found, style| {
        let least = found.together.clearances.iter().min_by(|a, b| a.room_m.total_cmp(&b.room_m));
        least.map_or_else(String::new, |c| {
            format!(
                "Rear hanger from behind. Least room: {}, {}.",
                name(c.between).to_lowercase(),
                room(c, style)
            )
        })
    },
    plan: |found, style| rear(found).plan(style),
    more: |_, _| Vec::new(),
};

fn rear(found: &Fit) -> HangerRear {
    let (build, at) = (&found.build, &found.together.layout);
    let room = |which| found.room(which);
    HangerRear {
        hanger_m: build.truck.hanger_width_m,
        axle_end_m: build.truck.axle_m,
        pulley_across_m: at.pulley_across_m,
        pulley_m: at.pulleys_m[1],
        wheel_across_m: at.wheel_across_m,
        wheel_m: build.wheel.diameter_m,
        axle_m: at.axle_up_m,
        can_m: build.motor.can_diameter_m,
        can_length_m: build.motor.can_length_m,
        can_across_m: at.can_across_m,
        motor_m: at.motor_up_m,
        motors: if build.truck.motor_count > 1.0 { 2 } else { 1 },
        between_m: room(Between::MotorMotor).or(room(Between::Hanger)).unwrap_or(0.0),
        assumed: [
            !found.given(Slot::Truck, "hanger_width_mm") || !found.given(Slot::Truck, "axle_mm"),
            !found.given(Slot::Motor, "can_length_mm"),
        ],
    }
}
