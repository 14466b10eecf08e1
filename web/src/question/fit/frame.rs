//! Room around the drive: what is between the parts, drawn from behind.

use super::view::{Drawn, ToScale};
use crate::app::{Fit, use_app};
use crate::chart::{Grid, Table};
use crate::drawing::HangerRear;
use crate::text::{Style, fit as words};
use leptos::prelude::*;
use pitchline_core::Slot;
use pitchline_core::fit::{Between, Clearance};

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
    view! {
        <ToScale of=&REAR />
        {room}
    }
}

pub(super) fn hint(found: &Fit, style: Style) -> String {
    words::rooms(&found.together.clearances, style)
}

fn rooms(found: &Fit, style: Style) -> Table {
    let row = |c: &Clearance| words::rooms_row(c, style);
    Table {
        label: String::new(),
        caption: words::ROOMS_CAPTION.into(),
        heads: words::rooms_heads(),
        rows: found.together.clearances.iter().map(row).collect(),
    }
}

/// The rear hanger from behind.
pub(super) static REAR: Drawn = Drawn {
    label: words::HANGER_TABLE,
    finding: |found, style| words::hanger_finding(&found.together.clearances, style),
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
