//! Words of fuse and wires.

use super::page::Warning;
use super::{Style, limits, percent, words};
use pitchline_core::{Leads, RISE_K, Unit, Wiring};

/// Caption of the table of fuse and wires.
pub const CAPTION: &str = "What flows, and what to fit";
/// Heads of their table.
pub const HEADS: [&str; 2] = ["What", "Value"];
/// Where the fuse cannot be chosen.
pub const FUSE_MISSING: &str =
    "The fuse must protect what is behind it. Enter these ratings and a size appears here:";
/// What the table rests on.
pub const RULES: &str = "Rules of thumb: a fuse carries 75 % of its rated current for long, and leads may get 30 °C warmer than the air. Wire areas follow ASTM B258, copper IEC 60028.";
/// Caution by the wires.
pub const CAUTION: Warning = Warning {
    short: "A lithium pack drives hundreds of amps through a short circuit. Have packs built, fused and repaired by someone qualified.",
    more: "Fit the fuse as close to the pack as it goes, rated for direct current at no less than the full voltage. Cover every joint, take off rings and watches, and never work on a pack alone.",
};

/// A gauge and its copper.
fn gauge(leads: &Leads, style: Style) -> String {
    let area = style.significant(leads.area_mm2, 2);
    format!("AWG\u{a0}{} ({area}\u{a0}mm²)", style.significant(leads.gauge, 2))
}

/// Fuse and leads in a few words.
#[must_use]
pub fn hint(found: &Wiring, style: Style) -> String {
    let fuse = match (found.fuse.fuse_a, found.fuse.most_a) {
        (Some(fuse_a), _) => format!("fuse {}", style.si(fuse_a, Unit::Ampere, 3)),
        (None, Some(_)) => "no fuse fits".into(),
        (None, None) => "fuse: ratings are missing".into(),
    };
    format!("{fuse}, {}", gauge(found.thinnest.as_ref().unwrap_or(&found.leads), style))
}

/// What flows, and what to fit, a name and a value each.
#[must_use]
pub fn rows(found: &Wiring, style: Style) -> Vec<Vec<String>> {
    let amps = |a: f64| style.si(a, Unit::Ampere, 2);
    let volts = |v: f64, digits| style.si(v, Unit::Volt, digits);
    let fuse = &found.fuse;
    let size = match (fuse.fuse_a, fuse.most_a) {
        (Some(fuse_a), _) => style.si(fuse_a, Unit::Ampere, 3),
        (None, Some(most_a)) => {
            format!(
                "None fits. The board draws {}, and the wiring bears {}.",
                amps(fuse.least_a),
                amps(most_a)
            )
        }
        (None, None) => "Ratings are missing, see above.".into(),
    };
    let from = match (fuse.most_a, fuse.protects) {
        (Some(most_a), Some(rating)) if most_a >= fuse.least_a => format!(
            "{} to {}, which is what this bears: {}",
            amps(fuse.least_a),
            amps(most_a),
            words::small(limits::name(rating))
        ),
        (Some(most_a), Some(rating)) => {
            format!("at most {}: {}", amps(most_a), words::small(limits::name(rating)))
        }
        _ => format!("{} or more", amps(fuse.least_a)),
    };
    let fitted = match (fuse.now_a, fuse.most_a) {
        (Some(now_a), Some(most_a)) if now_a > most_a => {
            format!("{}, too big: the wires would burn first", amps(now_a))
        }
        (Some(now_a), _) => amps(now_a),
        (None, _) => "not given".into(),
    };
    let thinnest = match &found.thinnest {
        Some(leads) => format!("{} or thicker", gauge(leads, style)),
        None => "None on sale stays cool enough".into(),
    };
    let leads = &found.leads;
    let row = |name: &str, value: String| vec![name.to_owned(), value];
    vec![
        row("Main fuse", size),
        row("Fuse fitted now", fitted),
        row("Fuses that would do", from),
        row("Fuse voltage, DC", format!("{} or more", volts(fuse.least_v, 3))),
        row("Leads, thinnest that stay cool", thinnest),
        row("Leads now", gauge(leads, style)),
        row("They lose at full throttle", format!("{}\u{a0}V", style.fixed(leads.drop_v, 1))),
        row("They get warmer on your hill by", rise(leads.rise_k, style)),
        row("Pack current on your hill", amps(found.hill_a)),
        row("Pack current at full throttle", amps(found.peak_a)),
        row("Each cell at full throttle", amps(found.cell_a)),
        row("Connections between groups", style.significant(found.links, 3)),
        row("Welds on the cells", style.significant(found.welds, 3)),
    ]
}

fn rise(kelvin: f64, style: Style) -> String {
    let rise = style.shown_si(kelvin, Unit::Celsius) - style.shown_si(0.0, Unit::Celsius);
    let symbol = style.units.shown(Unit::Celsius).symbol;
    let note = if kelvin > RISE_K { ", too much" } else { "" };
    format!("{}\u{a0}{symbol}{note}", style.significant(rise, 2))
}

/// What one weak cell does.
#[must_use]
pub fn weak_group(found: &Wiring, style: Style) -> String {
    if found.weak_share <= 0.0 {
        return "Cells stand alone in their groups. If one fails, the pack is dead.".into();
    }
    format!(
        "If a cell fails, stop riding. Its neighbours would carry {} each at full throttle, and the pack ends with its weakest group: {} of the range.",
        style.si(found.weak_cell_a, Unit::Ampere, 2),
        percent(found.weak_share),
    )
}
