//! Whatever the board, its rides are said in numbers, and what stops one is said with its place.

use super::rides::Ridings;
use super::{Told, all, distance, facts, said, spent, told, trace};
use crate::app::Sure;
use crate::chart::Mark;
use crate::text::{Style, Units};
use pitchline_core::ride::{Steps, Trip, Until};
use pitchline_core::{Build, Draft, Drive, Outing, Slot};
use proptest::prelude::*;
use std::sync::Arc;

fn ridings(draft: &Draft) -> Ridings {
    let build = Build::check(draft).expect("in range");
    let drive = Drive::new(&build);
    let until = Until { distance_m: 3000.0, time_s: 1200.0 };
    let whole = Outing::ALL.map(|outing| Arc::new(drive.ride_out(outing, until)));
    let start =
        Arc::new(Trip::out(&drive, build.ride.outing, Until::time(0.0), Steps::USUAL).finish());
    Ridings { build, whole: whole.into(), start }
}

fn own(changes: &[(Slot, &str, f64)]) -> Ridings {
    let mut draft = Draft::typical();
    draft.set(Slot::Ride, "outing", 5.0);
    for (slot, key, value) in changes {
        draft.set(*slot, key, *value);
    }
    ridings(&draft)
}

#[test]
fn an_impossible_hill_says_what_stopped_it_and_where() {
    // 150 m up for each kilometre, half of the way down: 30 %.
    let found = own(&[(Slot::Ride, "climb_m_per_km", 150.0)]);
    let ride = found.chosen();
    assert!(ride.falls_short(Outing::Own));
    let end = said::end(ride, Style::default());
    assert!(end.contains("on the 30\u{a0}% climb: "), "{end}");
    let limit = ride.stopped.expect("it stopped").limit;
    assert!(end.contains(crate::text::words::limit(limit)), "{end} {limit:?}");
}

#[test]
fn a_speed_that_cannot_be_held_says_what_is_left_of_it() {
    let found = own(&[(Slot::Ride, "cruise_km_h", 90.0), (Slot::Ride, "stops_per_km", 0.0)]);
    let ride = found.chosen();
    assert!(ride.falls_short(Outing::Own));
    let met = said::met(&found.build, ride, Outing::Own, Style::default());
    let first = met.first().expect("something was met");
    assert!(first.starts_with("It can't hold 90\u{a0}km/h: down to "), "{first}");
    // At full speed nothing is wished for that could be missed.
    let fast = &found.whole[4];
    assert!(!fast.falls_short(Outing::Flatout));
}

/// Over a ride of stops the means make up its whole way, and none hides a stop behind full speed.
#[test]
fn means_pass_over_no_stop() {
    let build = Build::check(&Draft::typical()).expect("in range");
    let town = &Drive::new(&build).ride_out(Outing::Town, Until::EMPTY);
    let means = trace::kept(town, false);
    let way: f64 = means.windows(2).map(|m| m[1].speed_m_s * (m[1].time_s - m[0].time_s)).sum();
    assert!((way / town.distance_m - 1.0).abs() < 1e-9, "{way} {}", town.distance_m);
    assert!(means.iter().all(|m| m.speed_m_s < 0.95 * town.top_m_s), "{means:?}");
    // Nor any current: what the pack gave makes up the charge spent.
    let ampere_s: f64 = means.windows(2).map(|m| m[1].pack_a * (m[1].time_s - m[0].time_s)).sum();
    let spent = (1.0 - town.end_charge) * build.cell.capacity_ah * build.pack.parallel * 3600.0;
    assert!((ampere_s / spent - 1.0).abs() < 1e-6, "{ampere_s} {spent}");
}

#[test]
fn the_cycle_says_what_it_leaves_out() {
    let build = Build::check(&Draft::typical()).expect("in range");
    let say = |outing| said::course(&build, outing, Style::default());
    let asked = Style::default().speed_unit(Drive::new(&build).urban_m_s());
    assert!(say(Outing::CycleCut).contains(&format!("everything above {asked} is cut off")));
    assert!(say(Outing::CycleSlowed).contains("every speed is scaled to "));
    assert!(say(Outing::Town).starts_with("20\u{a0}km/h, a stop of 12\u{a0}s every 330\u{a0}m, "));
}

proptest! {
    // A failure is told by its smallest case; no file is left in the tree.
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 40, ..ProptestConfig::default() })]

    #[test]
    fn every_ride_is_said_in_numbers(
        values in prop::collection::vec(0.0..1.0_f64, 8),
        outing in 0..8_usize,
        imperial in any::<bool>(),
        width in 200.0..900.0_f64,
    ) {
        let mut draft = Draft::typical();
        let rows = [
            (Slot::Ride, "cruise_km_h", 3.0, 100.0),
            (Slot::Ride, "stops_per_km", 0.0, 20.0),
            (Slot::Ride, "climb_m_per_km", 0.0, 150.0),
            (Slot::Ride, "rest_s", 0.0, 600.0),
            (Slot::Ride, "start_charge_percent", 5.0, 100.0),
            (Slot::Place, "air_c", -25.0, 50.0),
            (Slot::Rider, "mass_kg", 20.0, 180.0),
            (Slot::Controller, "motor_current_a", 20.0, 60.0),
        ];
        for ((slot, key, least, most), share) in rows.into_iter().zip(&values) {
            draft.set(slot, key, least + share * (most - least));
        }
        draft.set(Slot::Ride, "outing", outing as f64);
        let found = ridings(&draft);
        let units = if imperial { Units::Imperial } else { Units::Metric };
        let style = Style { units, comma: false };
        let ride = found.chosen();
        let outing = found.build.ride.outing;
        let mut words = said::met(&found.build, ride, outing, style);
        words.extend(said::burnt(&found.build, ride, style));
        words.extend([said::end(ride, style), facts(&found, style), distance(&found, Sure::default(), style).figure]);
        words.push(said::course(&found.build, outing, style));
        let Told { warnings, plain } = told(&found, style);
        words.extend(warnings.into_iter().chain(plain));
        let mut drawings = vec![spent::draw(ride, style, width)];
        let mut tables = vec![spent::table(ride, style), all(&found, style)];
        for close in [false, true] {
            let moments = trace::kept(ride, close);
            let caption = trace::finding(ride, close, style);
            tables.push(trace::table(&moments, caption, style));
            drawings.push(trace::draw(ride, close, style, width));
        }
        words.extend(tables.into_iter().flat_map(|t| t.rows).flatten());
        for drawing in drawings {
            words.extend(drawing.points.iter().map(|p| p.text.clone()));
            for mark in &drawing.marks {
                words.push(mark.outline());
                if let Mark::Text { text, .. } = mark {
                    words.push(text.clone());
                }
            }
        }
        for text in words {
            prop_assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
        }
    }
}
