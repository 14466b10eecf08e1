//! How far with stops, hills and heat; speeding up and braking; a long hill. Every expected number
//! is what the core gives on this machine, rounded here.

use crate::visit::{Visit, demo, open_build, see, unfold};
use pitchline_core::band::{Band, Quantity};
use pitchline_core::ride::{Goal, Ridden, Until};
use pitchline_core::{Build, Draft, Drive, Outing, Slot};
use pitchline_tests::browser::{Key, Outcome, Page, Size};
use pitchline_web::text::{Style, span, words};

fn drive(draft: &Draft) -> Drive {
    Drive::new(&Build::check(draft).expect("a valid draft"))
}

/// A distance as the page writes it, in km.
fn km(ride: &Ridden) -> String {
    let km = ride.distance_m / 1000.0;
    let decimals = usize::from(km < 9.95);
    format!("{km:.decimals$}")
}

/// Distance and mean speed of each way to ride.
fn expected(draft: &Draft) -> Vec<(String, String)> {
    let drive = drive(draft);
    let one = |outing| {
        let ride = drive.ride_out(outing, Until::EMPTY);
        (km(&ride), format!("{:.0}", 3.6 * ride.distance_m / ride.time_s))
    };
    Outing::ALL.into_iter().map(one).collect()
}

const TABLE: &str = ".ride > div.chart tbody tr";

/// Opens what is said of rides in time.
#[track_caller]
fn rides(page: &Page) -> Outcome {
    see(page, "How far?")?;
    unfold(page, "With stops and hills")
}

fn rows(page: &Page) -> Outcome<Vec<(String, String)>> {
    let script = "return [...document.querySelectorAll(arguments[0])]
        .map((row) => [row.cells[1].textContent, row.cells[3].textContent])";
    Ok(serde_json::from_value(page.eval(script, &[TABLE.into()])?).unwrap_or_default())
}

#[track_caller]
fn wait_rows(page: &Page, draft: &Draft) -> Outcome {
    let wanted = expected(draft);
    let mut seen = Vec::new();
    let found = page.wait_for("the rides of this build", |page| {
        seen = rows(page)?;
        Ok(seen == wanted)
    });
    assert!(found.is_ok(), "{seen:?} is not {wanted:?}");
    found
}

/// A ride's distance as the page writes it with a band, in km. Its samples are cut more coarsely
/// than the ride, which its band goes with.
fn about(ride: &Ridden, band: &Band) -> String {
    let [low, high] = [band.p10, band.p90].map(|m| m * ride.distance_m / band.nominal / 1000.0);
    let decimals = usize::from(high < 9.95 && high - low < 2.0);
    let [low, high] = [low, high].map(|km| format!("{km:.decimals$}"));
    if low == high { high } else { format!("{low}–{high}") }
}

/// The distance of the chosen way, large.
#[track_caller]
fn wait_headline(page: &Page, draft: &Draft, outing: Outing) -> Outcome {
    let mut drive = drive(draft);
    let ride = drive.ride_out(outing, Until::EMPTY);
    drive.build.ride.outing = outing;
    let band = Band::of(&drive.build, Quantity::OutingDistance).expect("it rides");
    let wanted = about(&ride, &band);
    page.wait_for(&format!("{outing:?}: {wanted}"), |page| {
        Ok(page.by_css(".ridden strong")?.text()? == wanted)
    })
}

fn styles(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    rides(page)?;
    wait_rows(page, &draft)?;
    wait_headline(page, &draft, Outing::Town)?;
    page.by_label("How you ride")?.choose("Full send (full speed)")?;
    wait_headline(page, &draft, Outing::Flatout)?;
    page.wait_until("return location.hash.includes('ride.outing=full_send')")?;
    visit.reload()?;
    unfold(page, "With stops and hills")?;
    wait_headline(page, &draft, Outing::Flatout)?;
    page.by_label("How you ride")?.choose("Urban cycle, speeds capped")?;
    wait_headline(page, &draft, Outing::CycleCut)?;
    page.by_text("is cut off.")?;
    page.by_label("How you ride")?.choose("My own")?;
    page.by_css("#ride-stops_per_km")?.fill("4")?;
    page.by_css("#ride-rest_s")?.fill("30")?;
    draft.set(Slot::Ride, "outing", 5.0);
    draft.set(Slot::Ride, "stops_per_km", 4.0);
    draft.set(Slot::Ride, "rest_s", 30.0);
    wait_rows(page, &draft)?;
    wait_headline(page, &draft, Outing::Own)?;
    // At its end nothing lies behind the bar.
    page.eval("scrollTo(0, document.body.scrollHeight)", &[])?;
    page.assert_accessible()?;
    page.screenshot(&format!("page-ride-own-{size:?}"))?;
    visit.end()
}

#[test]
fn every_way_to_ride_gives_what_the_core_gives_on_a_phone() -> Outcome {
    styles(Size::Phone)
}

#[test]
fn every_way_to_ride_gives_what_the_core_gives_on_a_desktop() -> Outcome {
    styles(Size::Desktop)
}

const READOUT: &str = ".ride figure .chart-readout";

/// What stands at the cursor, once it is something else.
#[track_caller]
fn read(page: &Page, before: &str) -> Outcome<String> {
    page.wait_for("another reading", |page| {
        let text = page.by_css(READOUT)?.text()?;
        Ok(!text.is_empty() && text != before)
    })?;
    page.by_css(READOUT)?.text()
}

#[test]
fn one_cursor_reads_the_whole_ride_at_a_moment() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let draft = demo().draft("kittiwake");
    rides(page)?;
    wait_rows(page, &draft)?;
    let ride = drive(&draft).ride_out(Outing::Town, Until::EMPTY);
    let style = Style::default();
    let glass = page.by_css(".ride figure .chart-glass")?;
    glass.focus()?;
    page.press(Key::Home)?;
    let start = read(page, "")?;
    assert!(start.starts_with("0\u{a0}s, 0\u{a0}m: 0\u{a0}km/h, "), "{start}");
    assert!(start.contains("charge 100\u{a0}%, "), "{start}");
    page.press(Key::End)?;
    let end = read(page, &start)?;
    let last = ride.moments.last().expect("a last moment");
    let wanted = format!("{}, {}: average ", span(last.time_s), style.way(last.distance_m));
    assert!(end.starts_with(&wanted), "{end} is not {wanted}");
    for (name, value, unit) in [
        ("charge", last.charge * 100.0, "%"),
        ("windings", last.winding_c, "°C"),
        ("cases", last.case_c, "°C"),
        ("controller", last.controller_c, "°C"),
        ("cells", last.cell_c, "°C"),
    ] {
        let wanted = format!("{name} {value:.0}\u{a0}{unit}");
        assert!(end.contains(&wanted), "{end} lacks {wanted}");
    }
    page.press(Key::Left)?;
    let before = read(page, &end)?;
    // By finger: a quarter of the way, then further on.
    glass.tap(0.25, 0.5)?;
    let early = read(page, &before)?;
    glass.tap(0.5, 0.1)?;
    let late = read(page, &early)?;
    let charge = |text: &str| -> f64 {
        let rest = text.split("charge ").nth(1).unwrap_or_default();
        rest.split('\u{a0}').next().and_then(|n| n.parse().ok()).unwrap_or(f64::NAN)
    };
    assert!(charge(&early) > charge(&late) && charge(&late) > charge(&end), "{early} {late}");
    page.screenshot("page-ride-cursor-Phone")?;
    glass.focus()?;
    page.press(Key::Escape)?;
    page.wait_for("the cursor hides", |page| Ok(page.by_css(READOUT)?.text()?.is_empty()))?;
    // Closer: the first ten minutes end at ten minutes.
    page.by_role("button", "The first ten minutes")?.click()?;
    glass.focus()?;
    page.press(Key::End)?;
    let close = read(page, "")?;
    let start = drive(&draft).ride_out(Outing::Town, Until::time(600.0));
    let last = start.moments.last().expect("a last moment");
    let wanted = [
        format!(
            "10\u{a0}min, {}: {}, ",
            style.way(last.distance_m),
            style.speed_unit(last.speed_m_s)
        ),
        format!("pack {:.0}\u{a0}A, each motor {:.0}\u{a0}A; ", last.pack_a, last.motor_a),
    ];
    for wanted in wanted.map(|wanted| wanted.replace('-', "−")) {
        assert!(close.contains(&wanted), "{close} lacks {wanted}");
    }
    visit.end()
}

#[test]
fn an_impossible_wish_says_what_stopped_it_and_where() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    rides(page)?;
    page.by_label("How you ride")?.choose("My own")?;
    page.by_css("#ride-climb_m_per_km")?.fill("150")?;
    draft.set(Slot::Ride, "outing", 5.0);
    draft.set(Slot::Ride, "climb_m_per_km", 150.0);
    let ride = drive(&draft).ride_out(Outing::Own, Until::EMPTY);
    let stopped = ride.stopped.or(ride.not_held).expect("30 % is too much for it");
    // Half of each kilometre goes up 150 m: 30 %.
    let wanted = format!("on the 30\u{a0}% climb: {}", words::met(stopped.limit, stopped.sag));
    page.wait_for(&wanted, |page| Ok(page.by_css(".ridden")?.text()?.contains(&wanted)))?;
    let told = page.by_css(".ridden .notice")?.text()?;
    assert!(told.contains("30\u{a0}%"), "{told}");
    page.screenshot("page-ride-stopped-Phone")?;

    page.by_css("#ride-climb_m_per_km")?.fill("0")?;
    page.by_css("#ride-stops_per_km")?.fill("0")?;
    page.by_css("#far-ride-cruise_km_h")?.fill("90")?;
    draft.set(Slot::Ride, "climb_m_per_km", 0.0);
    draft.set(Slot::Ride, "stops_per_km", 0.0);
    draft.set(Slot::Ride, "cruise_km_h", 90.0);
    let ride = drive(&draft).ride_out(Outing::Own, Until::EMPTY);
    let met = ride.not_held.expect("90 km/h is too fast for it");
    let wanted =
        format!("It can't hold 90\u{a0}km/h: down to {:.0}\u{a0}km/h ", met.speed_m_s * 3.6);
    page.wait_for(&wanted, |page| Ok(page.by_css(".ridden")?.text()?.contains(&wanted)))?;
    visit.end()
}

/// Edits in quick succession, and everything that the page showed of the rides meanwhile.
#[test]
fn a_newer_edit_drops_the_ride_of_an_older_one_and_no_ride_holds_the_page_up() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    open_build(page)?;
    rides(page)?;
    wait_rows(page, &draft)?;
    // The band of a ride goes on with the next one until that has its own.
    wait_headline(page, &draft, Outing::Town)?;
    let band = Band::of(&drive(&draft).build, Quantity::OutingDistance).expect("it rides");
    let watch = "const rides = document.querySelector('.ride');
        window.shares = new Set(); window.figures = new Set();
        new MutationObserver(() => {
          const busy = rides.querySelector('.busy').textContent.match(/[0-9]+/);
          if (busy) window.shares.add(busy[0]);
          window.figures.add(rides.querySelector('.ridden strong').textContent);
        }).observe(rides, { subtree: true, childList: true, characterData: true });
        const mass = document.querySelector('#rider-mass_kg');
        for (const kg of arguments[0]) {
          mass.value = kg;
          mass.dispatchEvent(new Event('input', { bubbles: true }));
        }";
    // So slow that the rides do not fit into a piece or two.
    page.set_slower(6)?;
    page.eval(watch, &[serde_json::json!(["40", "60", "120", "150"])])?;
    draft.set(Slot::Rider, "mass_kg", 150.0);
    wait_rows(page, &draft)?;
    wait_headline(page, &draft, Outing::Town)?;
    page.set_slower(1)?;
    let seen = page.eval("return [[...window.shares], [...window.figures]]", &[])?;
    let seen: [Vec<String>; 2] = serde_json::from_value(seen).unwrap_or_default();
    let ride = |kg: f64| {
        let mut draft = draft.clone();
        draft.set(Slot::Rider, "mass_kg", kg);
        about(&drive(&draft).ride_out(Outing::Town, Until::EMPTY), &band)
    };
    // Rides of 40 and 120 kg were never shown: they go another way than those before and after.
    for kg in [40.0, 120.0] {
        assert!(!seen[1].contains(&ride(kg)), "{kg} kg: {seen:?}");
    }
    assert!(seen[1].contains(&ride(150.0)), "{seen:?}");
    // In pieces: how far it is was told several times on the way.
    assert!(seen[0].len() >= 3, "{seen:?}");
    visit.end()
}

#[test]
fn speeding_up_braking_and_a_long_hill_give_what_the_core_gives() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let draft = demo().draft("gannet");
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    // A kit keeps the rider, the place and the ride that were there.
    let draft = {
        let mut kept = draft;
        for slot in [Slot::Rider, Slot::Place, Slot::Ride] {
            kept.set_record(slot, demo().draft("kittiwake").record(slot).clone());
        }
        kept
    };
    let drive = drive(&draft);
    let ride = &drive.build.ride;
    let sprint = drive.sprint(Goal::Distance(100.0), 0.0, ride.start_charge);
    let wanted = format!("{:.1}", sprint.time_s);
    see(page, "How fast?")?;
    unfold(page, "Speeding up and braking")?;
    page.wait_for("the first 100 m", |page| {
        let text = page.by_css(".ride")?.text()?;
        Ok(text.contains("The first 100\u{a0}m") && text.contains(&wanted))
    })?;
    let stops = drive.braking_cases(ride.cruise_m_s);
    let stop = stops.iter().find(|s| !s.case.wet && s.case.charge == 0.5 && s.case.motors == 2.0);
    let wanted = format!("{:.0}", stop.expect("two motors").braked_m());
    page.wait_for("the way to stop", |page| Ok(page.by_css(".ridden strong")?.text()? == wanted))?;
    page.by_text("always be able to stop without it")?;
    see(page, "How steep?")?;
    unfold(page, "On a long hill")?;
    let climb = drive.long_climb(ride.grade, 10.0 / 3.6);
    page.wait_for("how long the hill lasts", |page| {
        Ok(page.by_css(".ride")?.text()?.contains(&span(climb.time_s)))
    })?;
    let hill = drive.steepest_for_ever(10.0 / 3.6);
    let text = page.by_css(".ridden")?.text()?;
    assert!(text.contains(&format!("{:.0}", hill.grade * 100.0)), "{text} {hill:?}");
    unfold(page, "Working: steepest climb without overheating")?;
    page.wait_until(
        "const steps = document.querySelectorAll('.ride .steps > li');
         return steps.length > 5",
    )?;
    visit.end()
}
