//! Which view is in sight: `see=` in the fragment, beside the build.

use super::store::App;
use leptos::prelude::*;

/// Key of the view in a fragment.
const KEY: &str = "see=";

/// A fragment, parted into what it says of the build and the view that it names. The view is none
/// where no `see=` stands there, and empty for the overview.
#[must_use]
pub fn part(fragment: &str) -> (String, Option<String>) {
    let is_view = |piece: &&str| piece.starts_with(KEY);
    let build: Vec<&str> = fragment.split('&').filter(|piece| !is_view(piece)).collect();
    let view = fragment.split('&').find(is_view).map(|piece| piece[KEY.len()..].into());
    (build.join("&"), view)
}

/// The fragment of a build in a view.
#[must_use]
pub fn join(build: &str, view: &str) -> String {
    if view.is_empty() { build.into() } else { format!("{build}&{KEY}{view}") }
}

/// The fragment that leads to a view and leaves the build alone.
#[must_use]
pub fn lead(view: &str) -> String {
    format!("#{KEY}{view}")
}

impl App {
    /// The view in sight, by its key; empty for the overview; tracked.
    #[must_use]
    pub fn see(self) -> String {
        self.see.get()
    }

    /// The view in sight is another; the address has it already.
    pub(super) fn look_at(self, view: &str) {
        if self.see.with_untracked(|now| now != view) {
            self.see.set(view.into());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn build_and_view_are_told_apart() {
        let build = "v=1&kit=kittiwake&wheel=w";
        assert_eq!(part(build), (build.into(), None));
        assert_eq!(part(&join(build, "far")), (build.into(), Some("far".into())));
        assert_eq!(part("see=far"), (String::new(), Some("far".into())));
        assert_eq!(part("v=1&see=&kit=a"), ("v=1&kit=a".into(), Some(String::new())));
        assert_eq!(part("far"), ("far".into(), None));
        assert_eq!(part(""), (String::new(), None));
        assert_eq!(join(build, ""), build);
    }
}
