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

/// What a place in the browser's history asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// The link to a build that is to be opened.
    pub build: Option<String>,
    /// The view that is to be in sight; none where that stays as it is.
    pub view: Option<String>,
}

/// What a place with that fragment asks for. One of `ours` was there before: it brings its view, and
/// the build stays. Any other was come to by a link, which brings its build too; a link of earlier
/// versions names no view, and begins with the overview.
#[must_use]
pub fn asked(fragment: &str, ours: bool) -> Asked {
    let (build, view) = part(fragment);
    let build = Some(build).filter(|build| !ours && build.contains('='));
    let first = || (ours || build.is_some()).then(String::new);
    Asked { view: view.or_else(first), build }
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

    #[test]
    fn a_place_that_was_there_before_brings_its_view_alone() {
        let some = |text: &str| Some(String::from(text));
        let ask = |fragment, ours| {
            let Asked { build, view } = asked(fragment, ours);
            (build, view)
        };
        assert_eq!(ask("kit=a&see=far", false), (some("kit=a"), some("far")));
        assert_eq!(ask("kit=a&see=far", true), (None, some("far")));
        assert_eq!(ask("kit=a", false), (some("kit=a"), some("")));
        assert_eq!(ask("kit=a", true), (None, some("")));
        assert_eq!(ask("see=far", false), (None, some("far")));
        // A place on the page is no view, and no build.
        assert_eq!(ask("main", false), (None, None));
    }
}
