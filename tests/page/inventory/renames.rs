//! What the page called its things before it was parted into views, and what became of each.

use std::collections::BTreeMap;
use std::fs;

use pitchline_tests::browser::{Fault, Outcome};
use pitchline_tests::root;
use serde_json::Value;

use super::entries::Entries;

/// Names that were changed on purpose, under the reason for it.
pub(super) struct Group {
    pub(super) reason: String,
    pub(super) renames: Vec<Rename>,
}

/// A name that was changed. A `kind` of [`CAPTIONS`] renames what stands over a table or a picture, for
/// all that is named after it. An empty `new` says that the thing is gone, or merged into another.
pub(super) struct Rename {
    pub(super) kind: String,
    pub(super) old: String,
    pub(super) new: String,
    /// What kind of thing it is now, where that is another.
    pub(super) now: Option<String>,
}

/// Kind of a rename that is of a caption.
const CAPTIONS: &str = "captions";

/// The file of renames: an array of `{reason, renames: [{kind, old, new, now?}]}`.
pub(super) fn read() -> Outcome<Vec<Group>> {
    let text = fs::read_to_string(root().join("tests/fixture/renamed.json"))?;
    let json: Value = serde_json::from_str(&text)
        .map_err(|error| Fault::new(format!("renamed.json is no JSON: {error}")))?;
    let all = json.as_array().ok_or_else(|| Fault::new("renamed.json is no array"))?;
    all.iter().map(group).collect()
}

fn group(json: &Value) -> Outcome<Group> {
    let renames = json["renames"].as_array().ok_or_else(|| slip(json, "renames"))?;
    let renames: Outcome<_> = renames.iter().map(rename).collect();
    Ok(Group { reason: text(json, "reason")?, renames: renames? })
}

fn rename(json: &Value) -> Outcome<Rename> {
    Ok(Rename {
        kind: text(json, "kind")?,
        old: text(json, "old")?,
        new: text(json, "new")?,
        now: json.get("now").map(|_| text(json, "now")).transpose()?,
    })
}

fn text(json: &Value, key: &str) -> Outcome<String> {
    json[key].as_str().map(str::to_owned).ok_or_else(|| slip(json, key))
}

fn slip(json: &Value, key: &str) -> Fault {
    Fault::new(format!("renamed.json: no {key:?} in {json}"))
}

/// What a name is called that is named after the caption `old`, once that is `new`; none where it is
/// named after another.
fn recaptioned(name: &str, old: &str, new: &str) -> Option<String> {
    let rest = name.strip_prefix(old)?;
    let ends = rest.is_empty() || [" | ", ": ", " (called"].iter().any(|end| rest.starts_with(end));
    ends.then(|| format!("{new}{rest}"))
}

/// Everything that is wrong, a line each: a name from before that is neither on the page nor renamed or
/// dropped, and a rename that does not hold.
pub(super) fn lost(before: &Entries, now: &Entries, groups: &[Group]) -> Vec<String> {
    let (old, new) = (before.names(), now.names());
    let mut wrong = Vec::new();
    let (mut names, mut captions) = (BTreeMap::new(), Vec::new());
    for group in groups {
        if group.reason.is_empty() || group.renames.is_empty() {
            wrong.push(format!("a group without a reason or a rename: {:?}", group.reason));
        }
        for rename in &group.renames {
            let Rename { kind, old: was, new: is, now } = rename;
            let mut slip = |what: &str| wrong.push(format!("{what}: {kind} | {was}"));
            if kind == CAPTIONS {
                let after: Vec<_> = old
                    .iter()
                    .filter_map(|(k, name)| Some((*k, recaptioned(name, was, is)?)))
                    .collect();
                if after.is_empty() {
                    slip("not on the page before");
                } else if !is.is_empty()
                    && !after.iter().any(|(k, name)| new.contains(&(*k, &**name)))
                {
                    slip(&format!("renamed to {is:?}, which is not on the page"));
                }
                captions.push((was, is));
                continue;
            }
            if !old.contains(&(kind, was)) {
                slip("not on the page before");
            }
            if new.contains(&(kind, was)) {
                slip("renamed, but still on the page");
            }
            let kind_now = now.as_ref().unwrap_or(kind);
            if !is.is_empty() && !new.contains(&(kind_now, is)) {
                slip(&format!("renamed to {is:?}, which is not on the page"));
            }
            if names.insert((kind.as_str(), was.as_str()), is).is_some() {
                slip("renamed twice");
            }
        }
    }
    for (kind, name) in old {
        if new.contains(&(kind, name)) || names.contains_key(&(kind, name)) {
            continue;
        }
        let mut renamed =
            captions.iter().filter_map(|(was, is)| Some((recaptioned(name, was, is)?, is)));
        if renamed.any(|(name, is)| is.is_empty() || new.contains(&(kind, &*name))) {
            continue;
        }
        wrong.push(format!("lost: {kind} | {name}"));
    }
    wrong
}
