//! Builds, files and acts that together bring out everything that the page can show.

use std::fs;

use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Fault, Key, Outcome, Page, Size};
use pitchline_tests::{dist, root};
use serde_json::{Value, json};

use super::entries::Entries;
use crate::visit::{Site, Visit, wait_living};

/// What is on the page as it is, by name; see there.
const MEET: &str = concat!(include_str!("look.js"), include_str!("meet.js"));

/// Opens what is folded away; says whether anything was. What a fold holds is made after that.
const UNFOLD: &str = "const folds = [...document.querySelectorAll('details:not([open])')];
    for (const fold of folds) fold.open = true;
    return folds.length > 0";

/// Whether the page has come to rest.
const STILL: &str = concat!(include_str!("look.js"), include_str!("still.js"));

/// Whether all is kept for offline use, and said to be.
const KEPT: &str = "return document.documentElement.dataset.offline === 'ready'";

/// Moves the cursor of every picture to its first stop.
const READ: &str = "for (const e of document.querySelectorAll('[role=\"application\"]')) {
      e.dispatchEvent(new KeyboardEvent('keydown', { key: 'Home', bubbles: true, cancelable: true }));
    }";

/// What is on the page at once, moving or not.
pub(super) fn glance(page: &Page) -> Outcome<Entries> {
    Entries::from_page(page.eval(MEET, &[])?)
}

/// What is on the page with everything unfolded, once it is still.
pub(super) fn look(page: &Page) -> Outcome<Entries> {
    for _ in 0..8 {
        if page.eval(STILL, &[])? == true && page.eval(UNFOLD, &[])? == false {
            return glance(page);
        }
    }
    Err(Fault::new("the page does not come to rest"))
}

/// Links, and words of what each is for.
const LINKS: [(&str, &[&str]); 15] = [
    // Another kit, with a charger that never fills its pack.
    ("kit=gannet&charger=neap-50", &["made for another pack and never fills this one"]),
    // What does not fit by size, together with what must not be charged.
    (
        "kit=kittiwake&wheel_pulley=w38&wheel.diameter_mm=140&deck.box_length_mm=280&charger=neap-54",
        &["The belt on the board wants", "Wheel bite:", "mm too long", "Wrong charger: it ends at"],
    ),
    (
        "kit=kittiwake&belt.teeth=22&deck.box_height_mm=150&charger=spring-50&cell.max_charge_a=1\
         &pack.parallel=3&ride.charge_to_percent=100",
        &["belt on the board is too short", "The box drags", "This charger is too strong"],
    ),
    (
        "kit=kittiwake&belt.rating_n_per_mm=5&deck.box_height_mm=115&place.air_c=-5",
        &["may skip or tear", "strikes the road", "Too cold to charge"],
    ),
    (
        "kit=kittiwake&truck.hanger_width_mm=150&truck.axle_mm=50&motor.can_diameter_mm=130\
         &truck.mount_angle_deg=60",
        &["too narrow for mounts and motors", "too short for pulley", "Motor to deck:"],
    ),
    (
        "kit=kittiwake&motor.can_diameter_mm=130&truck.mount_angle_deg=-60&wheel_pulley.teeth=72\
         &deck.box_length_mm=640",
        &["Motor to road:", "Motor to box:"],
    ),
    // What is tight, and what does not agree.
    (
        "kit=kittiwake&deck.box_length_mm=297&deck.riser_mm=8&motor_pulley=m10-17\
         &controller.max_bus_v=40&pack.mass_kg=0.5",
        &["tight, ", "do not fit: one has", "Do not connect them", "its cells alone weigh"],
    ),
    // Cold cells of each class.
    (
        "kit=kittiwake&cell.chemistry=lfp&cell.full_v=4.2&place.air_c=-15",
        &["Figures of LFP cells", "A full cell is said to have"],
    ),
    ("kit=kittiwake&cell.chemistry=power&place.air_c=-25", &["Figures of power cells"]),
    ("kit=kittiwake&cell.chemistry=energy&place.air_c=-20", &["Figures of energy cells"]),
    // Wishes that cannot be had, heat, and a board that does not move.
    (
        "kit=kittiwake&ride.outing=my_own&ride.climb_m_per_km=150&bench.measured_centre_mm=200",
        &["% climb", "None on offer comes near"],
    ),
    (
        "kit=kittiwake&ride.outing=my_own&ride.stops_per_km=0&ride.cruise_km_h=90\
         &bench.measured_centre_mm=76.4&bench.belt_in_hand_teeth=59&wheel_pulley=w38",
        &["wished for cannot be held", "the belt in hand wants", "The nearest is"],
    ),
    (
        "kit=kittiwake&ride.outing=full_send&motor.winding_limit_c=60&controller.cutback_start_c=40",
        &["motors burn out like that"],
    ),
    ("kit=kittiwake&controller.motor_current_a=1", &["This build does not move on the flat."]),
    // A part that is not there.
    ("kit=kittiwake&wheel=unknown-1", &["Pick another to see figures."]),
];

/// The page in front, and all that was met so far.
struct Tour {
    visit: Visit,
    found: Entries,
}

impl Tour {
    fn page(&self) -> &Page {
        &self.visit.page
    }

    fn see(&mut self) -> Outcome {
        self.found.add(&look(&self.visit.page)?);
        Ok(())
    }

    /// Waits until these words are there, and looks.
    #[track_caller]
    fn see_said(&mut self, words: &[&str]) -> Outcome {
        self.page().wait_for(&words.join("; "), |page| {
            page.eval(UNFOLD, &[])?;
            let text = page.text()?;
            Ok(words.iter().all(|words| text.contains(words)))
        })?;
        self.see()
    }

    /// Opens a link in the page that is open.
    #[track_caller]
    fn link(&mut self, link: &str, words: &[&str]) -> Outcome {
        self.page().eval("location.hash = arguments[0]", &[format!("v=1&{link}").into()])?;
        self.see_said(words)
    }

    /// Picks every option of a list, one after the other.
    #[track_caller]
    fn pick_all(&mut self, label: &str) -> Outcome {
        let list = self.page().by_label(label)?.json();
        let options =
            self.page().eval("return [...arguments[0].options].map((o) => o.text)", &[list])?;
        for option in options.as_array().into_iter().flatten().filter_map(Value::as_str) {
            self.page().by_label(label)?.choose(option)?;
            self.see()?;
        }
        Ok(())
    }

    #[track_caller]
    fn press(&mut self, name: &str) -> Outcome {
        self.page().by_role("button", name)?.click()
    }

    /// The page with this catalogue, from its start.
    #[track_caller]
    fn catalogue(&mut self, text: &str, words: &str) -> Outcome {
        let site = Site::with_catalogue(text)?;
        let server = site.serve("/")?;
        self.page().goto(&server.url())?;
        wait_living(self.page())?;
        self.page().wait_until(KEPT)?;
        self.see_said(&[words])
    }
}

/// A part of the way through the page.
type Part = fn(&mut Tour) -> Outcome;

/// All that the page shows, by name. Two browsers share the work.
pub(super) fn everything() -> Outcome<Entries> {
    let ways: [&[Part]; 2] =
        [&[first, edits, keeping], &[links, files, framed, spoilt, online, broken]];
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
    let visit = Visit::at(Size::Desktop)?;
    let mut tour = Tour { visit, found: Entries::default() };
    for part in way {
        part(&mut tour)?;
    }
    Ok(tour.found)
}

/// The first kit, every way to ride, every view of the gear map, the way to every question.
fn first(tour: &mut Tour) -> Outcome {
    tour.see()?;
    tour.page().eval(READ, &[])?;
    tour.see()?;
    tour.press("Questions")?;
    tour.page().wait_until("return document.querySelector(':popover-open')")?;
    tour.see()?;
    tour.page().press(Key::Escape)?;
    tour.pick_all("Show")?;
    tour.press("The first ten minutes")?;
    tour.page().eval(READ, &[])?;
    tour.see()?;
    tour.pick_all("How you ride")
}

/// Another kit, other units, own figures, and slips in them.
fn edits(tour: &mut Tour) -> Outcome {
    tour.press("Gannet")?;
    tour.see_said(&["Gannet as it is sold"])?;
    // The answers are read out a second after they have settled.
    tour.page().wait_until(
        "return [...document.querySelectorAll('[role=\"status\"]')]
           .some((e) => e.textContent.startsWith('Top speed '))",
    )?;
    let heard = tour.page().eval(MEET, &["".into(), true.into()])?;
    tour.found.add(&Entries::from_page(heard)?);
    tour.press("mi, lb")?;
    tour.see_said(&["mph"])?;
    tour.press("km, kg")?;
    tour.page().by_label("Kv")?.fill("140")?;
    tour.see_said(&["altered by you"])?;
    for (label, typed, said) in [
        ("Your weight", "1999", "must be between"),
        ("Your weight", "x", "must be a number between"),
        ("Pole pairs", "7.5", "must be a whole number"),
        ("Altitude", "1,500", "Type the one you mean"),
    ] {
        tour.page().by_label(label)?.fill(typed)?;
        tour.see_said(&[said])?;
    }
    Ok(())
}

/// Names, links and files.
fn keeping(tour: &mut Tour) -> Outcome {
    tour.visit.open("#v=1&kit=kittiwake")?;
    tour.see()?;
    tour.press("Save on this device")?;
    tour.page().by_text("Give the build a name first.")?;
    tour.found.add(&glance(tour.page())?);
    tour.page().by_label("Name")?.fill("Mine")?;
    tour.press("Save on this device")?;
    tour.page().by_text("Saved on this device.")?;
    tour.found.add(&glance(tour.page())?);
    tour.press("Open Mine")?;
    tour.see_said(&["Mine opened."])?;
    tour.press("Forget Mine")?;
    tour.see_said(&["Mine forgotten."])?;
    tour.press("Undo last pick")?;
    tour.page().by_text("is kept again.")?;
    tour.found.add(&glance(tour.page())?);
    tour.page().permit("clipboard-write", true)?;
    tour.press("Copy link")?;
    tour.page().by_text("Link copied")?;
    tour.found.add(&glance(tour.page())?);
    tour.page().permit("clipboard-write", false)?;
    tour.press("Copy link")?;
    tour.page().by_label("Copy this link")?;
    tour.see()?;
    // As the page's side of offline use tells it.
    tour.page().eval(
        "document.documentElement.dataset.update = 'waiting';
         dispatchEvent(new CustomEvent('pitchline:update-waiting'))",
        &[],
    )?;
    tour.see_said(&["A new version is ready."])?;
    Ok(())
}

/// Builds by link, among them one of another version and one that is too long.
fn links(tour: &mut Tour) -> Outcome {
    for (link, words) in LINKS {
        tour.link(link, words)?;
    }
    // A riser that is a little more than what only just does.
    let bite = "kit=kittiwake&wheel.diameter_mm=140";
    tour.link(bite, &["A riser of "])?;
    let text = tour.page().text()?;
    let riser = text.split("A riser of ").nth(1).and_then(|rest| rest.split('\u{a0}').next());
    let riser: f64 = riser.and_then(|riser| riser.parse().ok()).unwrap_or(f64::NAN);
    tour.link(
        &format!("{bite}&deck.riser_mm={:.0}", riser + 1.0),
        &["Deck to tyre, at full lean: tight"],
    )?;
    tour.page().eval(
        "location.hash = 'v=2&kit=cormorant&hat=red&rider.mass_kg=900&place.surface=ice&ride.grade=5'",
        &[],
    )?;
    tour.see_said(&["version 1"])?;
    tour.link(&"x=y&".repeat(2500), &["letters"])
}

/// Catalogues: faulty, no JSON, without a pack, with another plug or mount, and of no kit.
fn files(tour: &mut Tour) -> Outcome {
    let fixture = |name: &str| fs::read_to_string(root().join("tests/fixture").join(name));
    let demo = fs::read_to_string(dist().join("demo.json"))?;
    tour.catalogue(&fixture("three-faults.json")?, "3 entries of this catalogue")?;
    tour.catalogue(&fixture("broken.json")?, "could not be read")?;
    tour.catalogue(&fixture("other-maker.json")?, "Saltmarsh Lane Workshop")?;
    let plug = "\"charge_port\": \"round 3-pin\", \"mass_kg\": 1.1";
    assert!(demo.contains(plug), "the demo's stronger charger");
    let text = demo.replace(plug, "\"charge_port\": \"round 5-pin\", \"mass_kg\": 1.1");
    tour.catalogue(&text, "no: another plug")?;
    let mut file: Value = serde_json::from_str(&demo)
        .map_err(|error| Fault::new(format!("the demo is JSON: {error}")))?;
    for truck in file["trucks"].as_array_mut().into_iter().flatten() {
        truck["mount"] = "narrow".into();
    }
    tour.catalogue(&file.to_string(), "and their mounts do not fit")?;
    for kit in file["kits"].as_array_mut().into_iter().flatten() {
        kit["slots"]["pack"]["default"] = "unknown-1".into();
    }
    tour.catalogue(&file.to_string(), "Pick another to see figures.")?;
    let text = r#"{"schema_version": 1, "maker": "Nobody yet", "kits": []}"#;
    tour.catalogue(text, "Nobody yet")?;
    Ok(())
}

/// In a frame of another page.
fn framed(tour: &mut Tour) -> Outcome {
    let shop = tempfile::Builder::new().prefix("pitchline-page-").tempdir()?;
    let frame = format!(
        "<!DOCTYPE html><html lang=en><title>Shop</title><h1>Shop</h1>
         <iframe title=Calculator src='{}' width=1200 height=700></iframe>",
        tour.visit.server.url()
    );
    fs::write(shop.path().join("index.html"), frame)?;
    let server = serve(Options::new(shop.path()))?;
    tour.page().goto(&server.url())?;
    tour.page().enter_frame(&tour.page().by_css("iframe")?)?;
    wait_living(tour.page())?;
    tour.page().wait_until(KEPT)?;
    tour.page().by_text("Inside another page")?;
    // To ask for a name takes long in a frame, and the rest is as it is outside.
    let part = tour.page().eval(MEET, &["How far to trust it".into()])?;
    tour.found.add(&Entries::from_page(part)?);
    tour.page().leave_frame()
}

/// Where the browser keeps nothing.
fn spoilt(tour: &mut Tour) -> Outcome {
    tour.page().before_each_page(
        "Storage.prototype.setItem = function () { throw new DOMException('', 'QuotaExceededError'); };",
    )?;
    tour.visit.open("")?;
    tour.see()?;
    tour.page().by_label("Name")?.fill("Mine")?;
    tour.press("Save on this device")?;
    tour.page().by_text("This browser keeps nothing here")?;
    tour.found.add(&glance(tour.page())?);
    Ok(())
}

/// Without a copy for offline use.
fn online(tour: &mut Tour) -> Outcome {
    tour.page().goto(&format!("{}?no-sw", tour.visit.server.url()))?;
    wait_living(tour.page())?;
    tour.see_said(&["Not kept for offline use"])
}

/// After a panic, with the last edit saved or not, and where the calculator did not load.
fn broken(tour: &mut Tour) -> Outcome {
    let detail = json!({ "kind": "load", "message": "a tooth broke" });
    for (event, detail, kept, words) in [
        ("panic", json!("a tooth broke"), "yes", "your set-up is saved"),
        ("panic", json!("a tooth broke"), "no", "your last edit may be lost"),
        ("not-loaded", detail, "yes", "did not load"),
    ] {
        tour.visit.open("")?;
        tour.page().eval(
            "document.documentElement.dataset.kept = arguments[2];
             dispatchEvent(new CustomEvent('pitchline:' + arguments[0], { detail: arguments[1] }));
             // What stands below is dead, and would be busy for ever.
             document.getElementById('pitchline-page').remove()",
            &[event.into(), detail, kept.into()],
        )?;
        tour.see_said(&[words])?;
    }
    Ok(())
}
