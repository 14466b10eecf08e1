//! Builds, files and acts that together bring out everything that the page can show.

use std::fs;

use pitchline_core::{Kind, Slot};
use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Browser, Fault, Outcome, Size};
use pitchline_tests::dist;
use serde_json::{Value, json};

use super::entries::Entries;
use super::tour::{Tour, fixture};
use crate::visit::{Site, Visit, see, unfold, wait_begun, wait_living};

const FAST: &str = "How fast?";
const STEEP: &str = "How steep?";
const FAR: &str = "How far?";
const CHARGE: &str = "How long on the charger?";
const FIT: &str = "Does it go together?";
const GIVES: &str = "What gives first?";
const SET: &str = "What do I set?";
const OVERVIEW: &str = "Overview";
const BUILD: &str = "Build";
const SHARE: &str = "Share";
const MORE: &str = "More";
const CHECK: &str = "Catalogue check";

/// Links, the views that each is for, and words of the first of them. The overview comes with all.
const LINKS: [(&str, &[&str], &[&str]); 17] = [
    // Thin wires, small cells, tall gear, a heavy rider and a steep hill.
    (
        "kit=kittiwake&pack.wire_a=12&cell.max_discharge_a=8&motor_pulley=m8-19&wheel_pulley=w38\
         &rider.mass_kg=110&ride.grade_percent=15",
        &[GIVES, SET, STEEP],
        &["What to change"],
    ),
    // Another kit with weak cells and a charger that never fills its pack.
    (
        "kit=gannet&charger=neap-50&cell.max_discharge_a=10",
        &[CHARGE, FIT, STEEP],
        &["never fill this pack"],
    ),
    // What does not fit by size, together with what must not be charged.
    (
        "kit=kittiwake&wheel_pulley=w38&wheel.diameter_mm=140&deck.box_length_mm=280&charger=neap-54",
        &[FIT, CHARGE, FAST],
        &["This belt needs", "Wheel bite:", "mm too long", "wrong charger can set"],
    ),
    (
        "kit=kittiwake&belt.teeth=22&deck.box_height_mm=150&charger=spring-50&cell.max_charge_a=1\
         &pack.parallel=3&ride.charge_to_percent=100",
        &[FIT, CHARGE, FAST, STEEP, BUILD],
        &["The belt is too short", "The enclosure drags"],
    ),
    (
        "kit=kittiwake&belt.rating_n_per_mm=5&deck.box_height_mm=115&place.air_c=-5",
        &[FIT, CHARGE, FAST, STEEP, FAR],
        &["may break or skip teeth", "hits the road"],
    ),
    (
        "kit=kittiwake&truck.hanger_width_mm=150&truck.axle_mm=50&motor.can_diameter_mm=130\
         &truck.mount_angle_deg=60",
        &[FIT],
        &["too narrow for mounts and motors", "too short for pulley", "Motor to deck:"],
    ),
    (
        "kit=kittiwake&motor.can_diameter_mm=130&truck.mount_angle_deg=-60&wheel_pulley.teeth=72\
         &deck.box_length_mm=640",
        &[FIT],
        &["Motor to road:", "Motor to enclosure:"],
    ),
    // What is tight, and what does not agree.
    (
        "kit=kittiwake&deck.box_length_mm=297&deck.riser_mm=8&motor_pulley=m10-17\
         &controller.max_bus_v=40&pack.mass_kg=0.5",
        &[FIT, FAST, BUILD],
        &["to spare", "don't match: motor \"", "Don't connect them", "its cells alone weigh"],
    ),
    // Cold cells of each class.
    (
        "kit=kittiwake&cell.chemistry=lfp&cell.full_v=4.2&place.air_c=-15",
        &[FAR, FAST, STEEP, CHARGE, FIT],
        &["Figures for LFP cells"],
    ),
    (
        "kit=kittiwake&cell.chemistry=power&place.air_c=-25",
        &[FAR, FAST, STEEP],
        &["Figures for power cells"],
    ),
    (
        "kit=kittiwake&cell.chemistry=energy&place.air_c=-20",
        &[FAR, FAST, STEEP],
        &["Figures for energy cells"],
    ),
    // Wishes that cannot be had, heat, and a board that does not move.
    (
        "kit=kittiwake&ride.outing=my_own&ride.climb_m_per_km=150&bench.measured_centre_mm=200",
        &[FAR, FIT],
        &["% climb"],
    ),
    (
        "kit=kittiwake&ride.outing=my_own&ride.stops_per_km=0&ride.cruise_km_h=90\
         &bench.measured_centre_mm=76.4&bench.belt_in_hand_teeth=59&wheel_pulley=w38",
        &[FAR, FIT, FAST, STEEP, BUILD],
        &["It can't hold"],
    ),
    (
        "kit=kittiwake&ride.outing=full_send&motor.winding_limit_c=60&controller.cutback_start_c=40",
        &[FAR, STEEP],
        &["That burns motors out"],
    ),
    (
        "kit=kittiwake&controller.motor_current_a=1",
        &[FAR, FAST, STEEP, CHARGE, FIT],
        &["It can't get moving"],
    ),
    // Every part altered, and a speed that is certain.
    (
        "kit=kittiwake&motor.kv_rpm_per_v=140&motor_pulley.mass_kg=0.04&wheel_pulley.mass_kg=0.1\
         &belt.mass_kg=0.02&wheel.mass_kg=0.2&truck.mass_kg=0.8&pack.mass_kg=3\
         &cell.mass_kg=0.05&charger.mass_kg=0.5&deck.mass_kg=2&controller.mass_kg=0.3\
         &controller.erpm_limit=20000&mode_low.current_percent=30&mode_mid.current_percent=60&mode_high.speed_cap_km_h=10",
        &[FAST, BUILD],
        &["ERPM limit"],
    ),
    // A part that is not there.
    (
        "kit=kittiwake&wheel=unknown-1",
        &[OVERVIEW, FAST, STEEP, FAR, CHARGE, FIT, BUILD],
        &["to see figures"],
    ),
];

/// A part of the way through the page.
type Part = fn(&mut Tour) -> Outcome;

/// All that the page shows, by name. Two browsers share the work.
pub(super) fn everything() -> Outcome<Entries> {
    let ways: [&[Part]; 2] =
        [&[first, edits, files], &[links, online, keeping, framed, spoilt, broken]];
    let mut found = Entries::default();
    let parts: Vec<Outcome<Entries>> = std::thread::scope(|scope| {
        let begun: Vec<_> = ways.map(|way| scope.spawn(move || went(way))).into();
        let gone = |way: std::thread::ScopedJoinHandle<'_, Outcome<Entries>>| {
            way.join().unwrap_or_else(|_| Err(Fault::new("a part of the way panicked")))
        };
        begun.into_iter().map(gone).collect()
    });
    for part in parts {
        found.add(&part?);
    }
    Ok(found)
}

fn went(way: &[Part]) -> Outcome<Entries> {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    visit.page.goto(&visit.server.url())?;
    wait_begun(&visit.page)?;
    let mut tour = Tour { visit, found: Entries::default() };
    // What a first visit is asked.
    tour.glance()?;
    wait_living(tour.page())?;
    tour.kept()?;
    for part in way {
        part(&mut tour)?;
    }
    Ok(tour.found)
}

/// The first kit, every way to ride, every view of the gear map, on a desktop and on a phone.
fn first(tour: &mut Tour) -> Outcome {
    tour.see_all()?;
    see(tour.page(), FAST)?;
    unfold(tour.page(), "Which pulleys and wheels?")?;
    tour.pick_all("Show")?;
    see(tour.page(), FAR)?;
    unfold(tour.page(), "With stops and hills")?;
    tour.press("The first ten minutes")?;
    tour.rest()?;
    tour.pick_all("How you ride")?;
    tour.page().set_size(Size::Phone)?;
    for view in [OVERVIEW, BUILD] {
        see(tour.page(), view)?;
        tour.glance()?;
    }
    tour.page().set_size(Size::Desktop)?;
    tour.page().wait_until("return document.querySelector('aside')")
}

/// Another kit, other units, own figures and own parts, and slips.
fn edits(tour: &mut Tour) -> Outcome {
    tour.open_build()?;
    tour.press("Gannet")?;
    tour.page().by_text("Switched to the standard Gannet.")?;
    // The answers are read out a second after they have settled.
    tour.hear("Top speed ")?;
    tour.see_all()?;
    see(tour.page(), MORE)?;
    tour.press("mi, lb")?;
    tour.see_all()?;
    see(tour.page(), MORE)?;
    tour.press("km, kg")?;
    tour.open_build()?;
    tour.page().by_label("Kv")?.fill("140")?;
    tour.see(&[BUILD, OVERVIEW, FAR])?;
    for (label, typed, said) in [
        ("Your weight", "1999", "enter a value from"),
        ("Your weight", "x", "enter a number from"),
        ("Pole pairs", "7.5", "enter a whole number"),
        ("Altitude", "1,500", "Type the one you mean"),
    ] {
        tour.open_build()?;
        tour.page().by_label(label)?.fill(typed)?;
        tour.page().by_text(said)?;
        tour.see(&[BUILD, OVERVIEW])?;
    }
    own(tour)
}

/// A part of the reader's own in place of each.
fn own(tour: &mut Tour) -> Outcome {
    tour.visit.open("#v=1&kit=kittiwake")?;
    tour.open_build()?;
    let parts = Slot::ALL.iter().filter(|slot| slot.holds_part() && slot.kind() != Kind::Mode);
    for slot in parts {
        tour.page().by_css(&format!("#pick-{}", slot.key()))?.choose("Use my own…")?;
    }
    tour.see(&[BUILD, OVERVIEW])
}

/// Names, links and files.
fn keeping(tour: &mut Tour) -> Outcome {
    tour.visit.open("#v=1&model=1&kit=kittiwake&see=share")?;
    tour.press("Save on this device")?;
    tour.page().by_text("Give the build a name first.")?;
    tour.glance()?;
    tour.page().by_label("Name")?.fill("Mine")?;
    tour.press("Save on this device")?;
    tour.page().by_text("Saved on this device.")?;
    tour.glance()?;
    tour.press("Open Mine")?;
    tour.see_said(SHARE, &["Mine opened."])?;
    tour.press("Delete Mine")?;
    tour.see_said(SHARE, &["Mine deleted."])?;
    tour.page().by_css(".message button")?.click()?;
    tour.page().by_text("restored.")?;
    tour.glance()?;
    tour.page().permit("clipboard-write", true)?;
    tour.press("Copy link")?;
    tour.page().by_text("Link copied")?;
    tour.glance()?;
    tour.page().permit("clipboard-write", false)?;
    tour.press("Copy link")?;
    tour.page().by_label("Copy this link")?;
    tour.glance()?;
    // As the page's side of offline use tells it.
    tour.page().eval(
        "document.documentElement.dataset.update = 'waiting';
         dispatchEvent(new CustomEvent('pitchline:update-waiting'))",
        &[],
    )?;
    tour.see_said(SHARE, &["A new version is ready."])
}

/// Builds by link, among them one of another version and one that is too long.
fn links(tour: &mut Tour) -> Outcome {
    for (link, views, words) in LINKS {
        tour.link(link)?;
        tour.see(&[OVERVIEW])?;
        tour.see_said(views[0], words)?;
        tour.see(&views[1..])?;
    }
    // A riser that is a little more than what only just does.
    let bite = "kit=kittiwake&wheel.diameter_mm=140";
    tour.link(bite)?;
    tour.see_said(FIT, &["A riser of "])?;
    let text = tour.page().text()?;
    let riser = text.split("A riser of ").nth(1).and_then(|rest| rest.split('\u{a0}').next());
    let riser: f64 = riser.and_then(|riser| riser.parse().ok()).unwrap_or(f64::NAN);
    tour.link(&format!("{bite}&deck.riser_mm={:.0}", riser + 1.0))?;
    tour.see_said(FIT, &["Deck to wheel, at full lean: "])?;
    tour.page().eval(
        "location.hash = 'v=2&kit=cormorant&hat=red&rider.mass_kg=900&place.surface=ice&ride.grade=5'",
        &[],
    )?;
    tour.see_said(OVERVIEW, &["version 1"])?;
    tour.see(&[BUILD])?;
    tour.link(&"x=y&".repeat(2500))?;
    tour.see_said(OVERVIEW, &["characters"])
}

/// Catalogues: faulty, no JSON, without a pack, with another plug or mount, and of no kit.
fn files(tour: &mut Tour) -> Outcome {
    let demo = fs::read_to_string(dist().join("demo.json"))?;
    let faulty = fixture("three-faults.json")?;
    tour.catalogue(&faulty, &[OVERVIEW, CHECK, BUILD], "3 entries in this catalogue")?;
    tour.catalogue(&fixture("broken.json")?, &[OVERVIEW, MORE], "couldn't be read")?;
    let other = fixture("other-maker.json")?;
    let all = [MORE, OVERVIEW, FIT, FAST, CHARGE, BUILD];
    tour.catalogue(&other, &all, "Saltmarsh Lane Workshop")?;
    let plug = "\"charge_port\": \"round 3-pin\", \"mass_kg\": 1.1";
    assert!(demo.contains(plug), "the demo's stronger charger");
    let text = demo.replace(plug, "\"charge_port\": \"round 5-pin\", \"mass_kg\": 1.1");
    tour.catalogue(&text, &[CHARGE, FIT], "no: different plug")?;
    let mut file: Value = serde_json::from_str(&demo)
        .map_err(|error| Fault::new(format!("the demo is JSON: {error}")))?;
    for truck in file["trucks"].as_array_mut().into_iter().flatten() {
        truck["mount"] = "narrow".into();
    }
    tour.catalogue(&file.to_string(), &[FIT], "and their mounts don't match")?;
    for kit in file["kits"].as_array_mut().into_iter().flatten() {
        kit["slots"]["pack"]["default"] = "unknown-1".into();
    }
    tour.catalogue(&file.to_string(), &[OVERVIEW, BUILD], "to see figures")?;
    let text = r#"{"schema_version": 1, "maker": "Nobody yet", "kits": []}"#;
    tour.catalogue(text, &[MORE, OVERVIEW, FAST, FAR, CHARGE, FIT, BUILD], "Nobody yet")
}

/// In a frame of another page.
fn framed(tour: &mut Tour) -> Outcome {
    let shop = tempfile::Builder::new().prefix("pitchline-page-").tempdir()?;
    let frame = format!(
        "<!DOCTYPE html><html lang=en><title>Shop</title><h1>Shop</h1>
         <iframe title=Calculator src='{}#see=more' width=1200 height=700></iframe>",
        tour.visit.server.url()
    );
    fs::write(shop.path().join("index.html"), frame)?;
    let server = serve(Options::new(shop.path()))?;
    tour.page().goto(&server.url())?;
    tour.page().enter_frame(&tour.page().by_css("iframe")?)?;
    wait_living(tour.page())?;
    tour.kept()?;
    tour.page().by_text("builds saved inside another page")?;
    // To ask for a name takes long in a frame, and the rest is as it is outside.
    tour.part("How far to trust it")?;
    tour.page().leave_frame()
}

/// Where the browser keeps nothing.
fn spoilt(tour: &mut Tour) -> Outcome {
    tour.page().before_each_page(
        "Storage.prototype.setItem = function () { throw new DOMException('', 'QuotaExceededError'); };",
    )?;
    tour.visit.open("#v=1&kit=kittiwake&see=share")?;
    tour.page().by_label("Name")?.fill("Mine")?;
    tour.press("Save on this device")?;
    tour.page().by_text("This browser can't save anything here")?;
    tour.glance()
}

/// Without a copy for offline use.
fn online(tour: &mut Tour) -> Outcome {
    tour.page().goto(&format!("{}?no-sw", tour.visit.server.url()))?;
    wait_living(tour.page())?;
    tour.see_said(MORE, &["Not available offline"])
}

/// After a panic, with the last edit saved or not, and where the calculator did not load.
fn broken(tour: &mut Tour) -> Outcome {
    let detail = json!({ "kind": "load", "message": "a tooth broke" });
    for (event, detail, kept, words) in [
        ("panic", json!("a tooth broke"), "yes", "your build is saved"),
        ("panic", json!("a tooth broke"), "no", "your last edit may be lost"),
        ("not-loaded", detail, "yes", "didn't load"),
    ] {
        tour.visit.open("")?;
        tour.page().eval(
            "document.documentElement.dataset.kept = arguments[2];
             dispatchEvent(new CustomEvent('pitchline:' + arguments[0], { detail: arguments[1] }));
             // What stands below is dead, and would be busy for ever.
             document.getElementById('pitchline-page').remove()",
            &[event.into(), detail, kept.into()],
        )?;
        tour.page().by_text(words)?;
        tour.glance()?;
    }
    Ok(())
}
