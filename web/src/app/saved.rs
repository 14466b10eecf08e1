//! A build as a file, for the reader and for the store.

use super::link::read_more;
use super::rest::{self, LONGEST_TEXT, Rest, Whole, is_known};
use crate::text::keep;
use percent_encoding::utf8_percent_encode;
use pitchline_core::catalog::{Catalog, read_build, syntax_fault, write_build};
use pitchline_core::{Draft, Error, Reason, Slot, Unfilled};
use serde_json::{Map, Number, Value};

/// Largest build file that is read, in bytes.
const LARGEST: usize = 256 * 1024;

/// Form of the file that is written here.
const VERSION: f64 = 1.0;

type Object = Map<String, Value>;

/// Reads a build file, and tells what of it is not understood.
///
/// # Errors
/// One for each fault, located by line and column or by JSON pointer. With another value in the
/// place of a faulty one it would be another build; only in a later version's file it is something
/// that this page does not know, told and kept.
pub fn read_file(text: &str, catalog: &Catalog) -> Result<(Whole, Vec<Error>), Vec<Error>> {
    if text.len() > LARGEST {
        let reason = Reason::TooLarge { most: LARGEST, what: keep::BYTES };
        return Err(vec![Error::new("", reason)]);
    }
    let value = parsed(text)?;
    // A file by hand may leave the format out, but any other JSON is no build.
    let is_build = |map: &Object| {
        map.contains_key("format") || map.keys().any(|key| Slot::from_key(key).is_some())
    };
    if value.as_object().is_some_and(|map| !is_build(map)) {
        return Err(vec![no_format()]);
    }
    let version = value.get("version").and_then(Value::as_f64);
    if version.is_none_or(|version| version <= VERSION) {
        read_build(&value)?;
    }
    understood(value, catalog)
}

/// Reads what the page kept, as far as it is understood.
///
/// # Errors
/// Where it is no build at all.
pub fn read_kept(text: &str, catalog: &Catalog) -> Result<(Whole, Vec<Error>), Vec<Error>> {
    let value = parsed(text)?;
    if value.get("format").is_none() {
        // Whatever else stands in the store is no build.
        return Err(vec![no_format()]);
    }
    understood(value, catalog)
}

fn no_format() -> Error {
    Error::new("/format", Reason::missing("\"pitchline-build\""))
}

/// The name of a kept build, and whether all of it is understood; none where it is no build.
#[must_use]
pub fn look(text: &str) -> Option<(String, bool)> {
    let (whole, faults) = read_kept(text, &Catalog::default()).ok()?;
    let Whole { draft, rest } = whole;
    let all = faults.is_empty() && rest.is_empty() && draft.unfilled().is_empty();
    Some((draft.name, all))
}

fn parsed(text: &str) -> Result<Value, Vec<Error>> {
    serde_json::from_str(text).map_err(|error: serde_json::Error| vec![syntax_fault(text, &error)])
}

/// Reads a build, as far as it is understood.
pub(super) fn understood(
    mut value: Value,
    catalog: &Catalog,
) -> Result<(Whole, Vec<Error>), Vec<Error>> {
    let mut rest = Rest::default();
    let Some(map) = value.as_object_mut() else {
        return Err(read_build(&value).err().unwrap_or_default());
    };
    for piece in taken_pieces(map, rest::REPEATED) {
        rest.piece(&piece, true);
    }
    let link = taken_pieces(map, rest::LINK);
    // The version of a link that it was opened from.
    let version = map.remove("v");
    let (mut draft, mut faults) = as_far_as_known(&mut value, &mut rest)?;
    if let Some(version) = version {
        faults.push(Error::new("v", Reason::wrong_form(keep::VERSION)));
        rest.value("", "v", version);
    }
    for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
        if let Some(record) = rest.record(slot) {
            let text = |key| record.get(key).and_then(Value::as_str).unwrap_or_default().into();
            draft.unfill(Unfilled { slot, id: text("id"), name: text("name"), why: None });
        }
    }
    keep_unknown(value, &mut rest);
    let mut whole = Whole { draft, rest };
    faults.extend(read_more(&mut whole, link.iter().map(String::as_str), catalog));
    Ok((whole, faults))
}

/// Takes out a list of a link's pieces; one of another form stays.
fn taken_pieces(map: &mut Object, key: &str) -> Vec<String> {
    let texts = |value: &Value| -> Option<Vec<String>> {
        value.as_array()?.iter().map(|piece| Some(piece.as_str()?.to_owned())).collect()
    };
    let found = map.get(key).and_then(texts);
    if found.is_some() {
        map.remove(key);
    }
    found.unwrap_or_default()
}

/// Takes out what cannot be read, until the others are a build.
fn as_far_as_known(value: &mut Value, rest: &mut Rest) -> Result<(Draft, Vec<Error>), Vec<Error>> {
    let whole = value.clone();
    let mut told: Vec<Error> = Vec::new();
    loop {
        let read = read_build(value);
        let faults = match &read {
            Ok((_, ignored)) => ignored,
            Err(errors) => errors,
        };
        for fault in faults {
            if told.iter().all(|other| other.field != fault.field) {
                told.push(fault.clone());
            }
        }
        let errors = match read {
            Ok((draft, _)) => return Ok((draft, told)),
            Err(errors) => errors,
        };
        let Some(map) = value.as_object_mut() else { return Err(errors) };
        let places = || errors.iter().filter_map(|error| place(&error.field));
        let before = map.clone();
        for (slot, key) in places() {
            if let Some(record) = map.get_mut(slot.key()).and_then(Value::as_object_mut)
                && let Some(key) = key.filter(|key| is_known(slot, key))
                && let Some(value) = record.remove(key)
            {
                rest.value(slot.key(), key, value);
            }
        }
        if *map != before {
            continue;
        }
        // A value that is needed is not there: so is the part.
        for (slot, _) in places() {
            if map.remove(slot.key()).is_some()
                && let Some(record) = whole.get(slot.key())
            {
                rest.forget_slot(slot);
                rest.value("", slot.key(), record.clone());
            }
        }
        if *map == before {
            return Err(errors);
        }
    }
}

/// Slot and key of a JSON pointer.
fn place(pointer: &str) -> Option<(Slot, Option<&str>)> {
    let mut parts = pointer.strip_prefix('/')?.split('/');
    Some((Slot::from_key(parts.next()?)?, parts.next()))
}

/// Keeps what is not read.
fn keep_unknown(value: Value, rest: &mut Rest) {
    let Value::Object(map) = value else { return };
    for (key, value) in map {
        let slot = Slot::from_key(&key);
        match (key.as_str(), value) {
            ("format" | "app" | "created", _) => {}
            ("version", value) if value.as_f64() == Some(VERSION) => {}
            ("name" | "kit", Value::Null) => {}
            ("name" | "kit", Value::String(text)) if text.chars().count() <= LONGEST_TEXT => {}
            // A slot of this version or of a later one.
            (_, Value::Object(record)) if !record.is_empty() || slot.is_some() => {
                for (name, value) in record {
                    if slot.is_none_or(|slot| !is_known(slot, &name)) {
                        rest.value(&key, &name, value);
                    }
                }
            }
            (_, value) => rest.value("", &key, value),
        }
    }
}

/// A build as a file; `created` is the date, as the browser tells it. A slot without its part is
/// left out, and named as in a link.
#[must_use]
pub fn write_file(Whole { draft, rest }: &Whole, created: &str) -> Value {
    let mut value = write_build(draft);
    let Some(map) = value.as_object_mut() else { return value };
    map.insert("app".into(), "Pitchline".into());
    if !created.is_empty() {
        map.insert("created".into(), created.into());
    }
    for record in map.values_mut().filter_map(Value::as_object_mut) {
        record.values_mut().for_each(as_whole);
    }
    let mut link = Vec::new();
    for unfilled in draft.unfilled() {
        let key = unfilled.slot.key();
        map.remove(key);
        if rest.record(unfilled.slot).is_none() {
            link.push(format!("{key}={}", utf8_percent_encode(&unfilled.id, rest::PLAIN)).into());
        }
    }
    rest.write_into(map, link);
    value
}

/// The text of such a file: easy to read, but never larger for it than what can be opened again.
#[must_use]
pub fn file_text(whole: &Whole, created: &str) -> String {
    let file = write_file(whole, created);
    let easy = format!("{file:#}");
    if easy.len() > LARGEST { file.to_string() } else { easy }
}

/// 95 and not 95.0.
fn as_whole(value: &mut Value) {
    const EXACT: f64 = 9_007_199_254_740_992.0;
    if let Some(number) = value.as_f64().filter(|n| n.fract() == 0.0 && n.abs() < EXACT) {
        *value = Value::Number(Number::from(number as i64));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::link;
    use serde_json::json;

    fn demo() -> Catalog {
        Catalog::read(include_str!("../../catalog/catalogue.json")).unwrap().0
    }

    fn fields(faults: &[Error]) -> Vec<&str> {
        faults.iter().map(|fault| fault.field.as_str()).collect()
    }

    fn sorted(whole: &Whole) -> Vec<String> {
        let mut pieces: Vec<_> = whole.rest.pieces().collect();
        pieces.sort();
        pieces
    }

    /// A later version's key is no reason to lose a build, nor to lose the key.
    #[test]
    fn what_a_file_has_beyond_is_told_and_written_back() {
        let text = r#"{ "format": "pitchline-build", "version": 1, "name": "Mine",
            "rider": { "mass_kg": 95, "mood": "good" }, "lights": {}, "bell": { "db": 90 } }"#;
        let (whole, ignored) = read_file(text, &demo()).unwrap();
        let draft = &whole.draft;
        assert_eq!(
            (draft.name.as_str(), draft.value(Slot::Rider, "mass_kg")),
            ("Mine", Some(95.0))
        );
        assert_eq!(fields(&ignored), ["/rider/mood", "/bell", "/lights"]);
        let written = write_file(&whole, "");
        assert_eq!(written["rider"]["mood"], "good");
        assert_eq!((&written["lights"], &written["bell"]), (&json!({}), &json!({ "db": 90 })));
        assert_eq!(sorted(&whole), ["bell.db=90", "lights=%7B%7D", "rider.mood=good"]);
        // By way of a link too.
        let (linked, _) = link::read(&link::write(&whole, &demo()), &demo());
        assert_eq!(write_file(&linked, ""), written);
    }

    /// Easy to read, where that is not what makes it too large.
    #[test]
    fn a_file_that_was_opened_can_be_opened_again_when_saved() {
        let text = json!({ "format": "pitchline-build", "version": 1, "rider": { "mass_kg": 95 },
            "trail": vec![1; 20_000] });
        assert!(format!("{text:#}").len() < LARGEST);
        let nested = (0..9_000).map(|n| json!({ "at": n })).collect::<Vec<_>>();
        let mut long = text.clone();
        long["trail"] = json!(nested);
        let (easy, short) = (format!("{long:#}").len(), long.to_string().len());
        assert!(short < LARGEST && LARGEST < easy, "{short} {easy}");
        for (given, lines) in [(text, true), (long, false)] {
            let (whole, _) = read_file(&given.to_string(), &demo()).unwrap();
            let written = file_text(&whole, "");
            assert_eq!(written.contains('\n'), lines);
            let (again, _) = read_file(&written, &demo()).unwrap();
            assert_eq!(write_file(&again, "")["trail"], given["trail"]);
        }
    }

    #[test]
    fn a_later_file_is_opened_as_far_as_it_is_known() {
        let mut file = write_file(&demo().draft("kittiwake").into(), "");
        file["version"] = json!(2);
        file["place"]["surface"] = json!("ice");
        file["rider"]["mass_kg"] = json!(81);
        file["wheel"] = json!({ "id": "hover", "name": "Hover", "height_mm": 3 });
        let (whole, faults) = read_file(&file.to_string(), &demo()).unwrap();
        for field in ["/version", "/place/surface", "/wheel/height_mm"] {
            assert!(fields(&faults).contains(&field), "{faults:?}");
        }
        assert_eq!(whole.draft.value(Slot::Rider, "mass_kg"), Some(81.0));
        let missing: Vec<_> = whole.draft.unfilled().iter().map(|u| u.id.as_str()).collect();
        assert_eq!(missing, ["hover"]);
        assert_eq!(write_file(&whole, ""), file);
        // In a file of this version it is a slip.
        file["version"] = json!(1);
        assert!(read_file(&file.to_string(), &demo()).is_err());
        // What was kept is opened all the same.
        assert_eq!(write_file(&read_kept(&file.to_string(), &demo()).unwrap().0, ""), file);
    }

    /// What a link said stays until the reader sets that field.
    #[test]
    fn a_link_survives_the_store() {
        let catalog = demo();
        let text = "v=2&kit=gannet&wheel=w-none&wheel.width_mm=50&place.surface=ice&hat=red&hat=blue\
            &rider.mass_kg=70&rider.mass_kg=80&flag&rider.mood=%FF&rider=7&truck.glow=1";
        let (whole, faults) = link::read(text, &catalog);
        let kept = write_file(&whole, "").to_string();
        let (back, again) = read_kept(&kept, &catalog).unwrap();
        assert_eq!(back.draft, whole.draft);
        let link = link::write(&whole, &catalog);
        for piece in text.split('&') {
            assert!(link.split('&').any(|written| written == piece), "{piece}: {link}");
        }
        let (mut one, mut other) = (sorted(&whole), sorted(&back));
        assert_eq!(one, other);
        assert!(again.len() >= 6 && faults.len() > again.len(), "{faults:?} {again:?}");
        let (linked, _) = link::read(&link, &catalog);
        (one, other) = (sorted(&linked), sorted(&whole));
        assert_eq!(one, other);
    }

    #[test]
    fn a_slip_of_the_pen_is_told_where_it_is() {
        let text = "{\n  \"name\": \"Mine\"\n  \"version\": 1\n}";
        let faults = read_file(text, &demo()).unwrap_err();
        let said: Vec<_> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(said, [": is not valid JSON at line 2, column 17: a comma is missing here"]);
    }

    #[test]
    fn kept_builds_that_are_not_read_in_full_are_noticed() {
        let mut build = write_file(&Draft::typical().into(), "");
        assert_eq!(look(&build.to_string()), Some((String::new(), true)));
        build["name"] = json!("Mine");
        build["lights"] = json!({});
        assert_eq!(look(&build.to_string()), Some(("Mine".into(), false)));
        build["rider"]["mass_kg"] = json!(-1);
        assert_eq!(look(&build.to_string()), Some(("Mine".into(), false)));
        for text in ["no build", "[]", "7", "{\"format\": \"other\"}"] {
            assert_eq!(look(text), None, "{text}");
        }
    }
}
