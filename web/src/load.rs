//! The maker's parts: from the host, else as last kept on this device, else the demo's.

use crate::app::Loaded;
use crate::platform::{self, Store, Unfetched};
use crate::text::{Style, THE_FILE, fault, page};
use pitchline_core::Error;
use pitchline_core::catalog::Catalog;
use std::sync::Arc;

/// The maker's file.
const CATALOGUE: &str = "catalogue.json";
/// The demo, which stands in where there is nothing else. The build puts it beside that file.
const DEMO: &str = "demo.json";
/// Key of the last good copy: its date, a line end, its text.
const KEPT: &str = "catalogue";
/// Seconds for which the host is waited for where a good copy is kept, and where none is.
const PATIENCE_S: [u32; 2] = [3, 30];

/// A catalogue, and the faults of what was left out.
type Parts = (Catalog, Vec<Error>);

/// A good copy and its date.
struct Kept {
    date: String,
    parts: Parts,
}

/// The maker's catalogue, or what stands in and why.
pub(crate) async fn load() -> Loaded {
    let store = Store::local();
    let kept = store.get(KEPT).as_deref().and_then(kept);
    let patience = PATIENCE_S[usize::from(kept.is_none())];
    // One that comes late is still good for the next time.
    let task = async move {
        let text = fetch(CATALOGUE).await?;
        let parts = read(&text)?;
        if is_good(&parts) {
            store.set(KEPT, &format!("{}\n{text}", platform::today()));
        }
        Ok(parts)
    };
    let late = || Err(page::late(CATALOGUE, patience));
    let fetched = platform::within(patience * 1000, task).await.unwrap_or_else(late);
    match choose(fetched, kept) {
        Ok(loaded) => loaded,
        Err(why) => {
            let demo = fetch(DEMO).await.and_then(|text| read(&text));
            // An empty catalogue still works: every part is then typed in.
            Loaded { refused: Some(why), ..loaded(demo.unwrap_or_default()) }
        }
    }
}

async fn fetch(file: &str) -> Result<String, String> {
    platform::fetch(file).await.map_err(|why| match why {
        Unfetched::Failed => page::unfetched(file),
        Unfetched::Refused(status) => page::refused(file, status),
        Unfetched::NotText => page::not_text(file),
    })
}

/// What is shown; an error says why it can only be the demo.
fn choose(fetched: Result<Parts, String>, kept: Option<Kept>) -> Result<Loaded, String> {
    let why = match (fetched, &kept) {
        (Ok(parts), None) => return Ok(loaded(parts)),
        (Ok(parts), _) if is_good(&parts) => return Ok(loaded(parts)),
        (Ok((_, faults)), _) => {
            let first = faults.first().map(|error| fault(error, Style::default()));
            format!("{} {}", page::NO_KIT, first.unwrap_or_default())
        }
        (Err(why), _) => why,
    };
    let Some(Kept { date, parts }) = kept else { return Err(why) };
    // Of two files, it is the one on the host.
    let why = why.replacen(THE_FILE, CATALOGUE, 1);
    Ok(Loaded { refused: Some(why), kept: Some(date), ..loaded(parts) })
}

fn loaded((catalog, faults): Parts) -> Loaded {
    Loaded { catalog: Arc::new(catalog), faults, ..Loaded::default() }
}

fn read(text: &str) -> Result<Parts, String> {
    Catalog::read(text).map_err(|error| fault(&error, Style::default()))
}

/// Whether it may take the place of a good one.
fn is_good((catalog, _): &Parts) -> bool {
    !catalog.kits.is_empty()
}

/// What is kept, if it can still be used.
fn kept(text: &str) -> Option<Kept> {
    let (date, text) = text.split_once('\n')?;
    let parts = read(text).ok().filter(is_good)?;
    Some(Kept { date: date.into(), parts })
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = r#"{"schema_version":1,"maker":"Mill Pond","kits":[{"id":"a","name":"A"}]}"#;

    fn spoilt() -> Vec<(String, &'static str)> {
        vec![
            ("null".into(), "object"),
            ("[]".into(), "object"),
            (r#"{"error":"try again later"}"#.into(), page::NO_KIT),
            ("x".repeat(2 << 20), "1048576 bytes"),
            (r#"{"schema_version":1e999}"#.into(), "line 1"),
            (String::new(), "line 1"),
        ]
    }

    fn kept_one() -> Option<Kept> {
        kept(&format!("2026-11-02\n{GOOD}"))
    }

    #[test]
    fn a_spoilt_file_never_takes_the_place_of_a_good_one() {
        for (text, reason) in spoilt() {
            assert!(!read(&text).is_ok_and(|parts| is_good(&parts)), "{reason}");
            let shown = choose(read(&text), kept_one()).expect("the kept one");
            assert_eq!(shown.catalog.maker, "Mill Pond");
            assert_eq!(shown.kept.as_deref(), Some("2026-11-02"));
            let why = shown.refused.expect("a reason");
            assert!(
                why.contains(reason) && why.contains(CATALOGUE),
                "{reason:?} is not in {why:?}"
            );
        }
    }

    #[test]
    fn a_good_file_takes_the_place_of_the_kept_one() {
        let new = GOOD.replace("Mill Pond", "Weir House");
        let shown = choose(read(&new), kept_one()).expect("the new one");
        assert_eq!(
            (shown.catalog.maker.as_str(), shown.kept, shown.refused),
            ("Weir House", None, None)
        );
    }

    #[test]
    fn where_nothing_is_kept_parts_without_a_kit_are_shown() {
        let shown = choose(read(r#"{"schema_version":1,"maker":"Mill Pond"}"#), None);
        assert_eq!(shown.expect("its parts").catalog.maker, "Mill Pond");
        assert_eq!(choose(Err("away".into()), None).err().as_deref(), Some("away"));
        assert!(kept("2026-11-02\nnull").is_none() && kept(GOOD).is_none());
    }
}
