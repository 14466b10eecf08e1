//! Follows the address, and has it follow. The build is one thing and the view another: Back and
//! Forward change the view alone, and the place that they lead to then says the build of now.

use super::keeping::Keeper;
use super::link;
use super::see::{self, Asked};
use super::shelf::Keep;
use super::store::App;
use crate::platform::{self, Mark, Spot};
use leptos::prelude::*;
use std::time::Duration;

/// After the last change, until the address follows.
const AFTER: Duration = Duration::from_millis(300);
/// Places of which the reader's spot is known, at most.
const SPOTS: usize = 60;

/// The place in the history that the tab is at, and what is known of the others.
pub(super) struct Here {
    /// Its id.
    place: String,
    /// The fragment of which the page has been told, or that it wrote.
    known: String,
    /// Where the reader was, by place; the last one left is the last.
    spots: Vec<(String, Spot)>,
}

/// Where the reader comes to in a view.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Landing {
    /// Counts them; 0 before any.
    pub count: u32,
    /// Where the reader was in that place before; none in a new one.
    pub spot: Option<Spot>,
}

/// Key of the spots of a tab's places.
fn key(tab: &str) -> String {
    format!("tab:{tab}:spots")
}

impl Here {
    /// Where the page begins, which is the tab's from now on.
    pub(super) fn begin(session: &impl Keep, tab: &str) -> Self {
        let place = Mark::read().map(|mark| mark.place).filter(|place| !place.is_empty());
        let place = place.unwrap_or_else(platform::letters);
        Mark { tab: tab.into(), place: place.clone() }.write(None);
        let spots = session.get(&key(tab)).and_then(|text| serde_json::from_str(&text).ok());
        Self { place, known: platform::hash(), spots: spots.unwrap_or_default() }
    }

    /// The reader leaves the place, or the page.
    fn leave(&mut self, spot: Spot) {
        self.spots.retain(|(place, _)| *place != self.place);
        self.spots.push((self.place.clone(), spot));
        if self.spots.len() > SPOTS {
            self.spots.remove(0);
        }
    }

    /// Where the reader was in this place.
    fn spot(&self) -> Option<Spot> {
        self.spots.iter().find(|(place, _)| *place == self.place).map(|(_, spot)| spot.clone())
    }
}

/// An address that is about to follow.
struct Due {
    timer: TimeoutHandle,
    leaving: WindowListenerHandle,
}

impl Due {
    /// Not while the page is being left: Chromium then loads it anew without its mark, and what the
    /// address said before would be taken for another build.
    fn new(timer: TimeoutHandle) -> Self {
        let leaving = window_event_listener_untyped("beforeunload", move |_| timer.clear());
        Self { timer, leaving }
    }

    fn cancel(self) {
        self.timer.clear();
        self.leaving.remove();
    }
}

impl Keeper {
    /// What the place asks for that the tab has come to; none where the page knows of it. The place
    /// is the tab's from now on, should the page be loaded anew before it has followed.
    fn arrive(&mut self) -> Option<Asked> {
        let (mark, fragment) = (Mark::read(), platform::hash());
        let same = mark.as_ref().is_some_and(|mark| mark.place == self.here.place);
        if same && fragment == self.here.known {
            return None;
        }
        let asked = see::asked(&fragment, mark.is_some());
        if !same {
            self.here.leave(Spot::read());
        }
        let place = mark.map(|mark| mark.place).filter(|place| !place.is_empty());
        self.here.place = place.unwrap_or_else(platform::letters);
        self.here.known = fragment;
        self.mark(None);
        Some(asked)
    }

    fn mark(&self, fragment: Option<&str>) {
        Mark { tab: self.tab.id().into(), place: self.here.place.clone() }.write(fragment);
    }

    /// The address says the build and the view of now, unless somebody else has just changed it: then
    /// a link is being opened, of which the page has not been told yet.
    fn follow(&mut self, text: &str) {
        if self.here.known == platform::hash() && self.here.known != text {
            self.mark(Some(text));
            self.here.known = platform::hash();
        }
    }

    fn keep_spots(&mut self) {
        self.here.leave(Spot::read());
        if let Ok(text) = serde_json::to_string(&self.here.spots) {
            self.session.set(&key(self.tab.id()), &text);
        }
    }
}

impl App {
    /// Where the reader comes to in the view in sight; tracked.
    #[must_use]
    pub fn landing(self) -> Landing {
        self.landing.get()
    }

    /// The view that the address names, where the reader was in it before the page was loaded anew.
    pub(super) fn begin_at(self, here: &Here) {
        self.see.set(see::part(&here.known).1.unwrap_or_default());
        if let Some(spot) = here.spot() {
            self.land(Some(spot));
        }
    }

    pub(super) fn land(self, spot: Option<Spot>) {
        self.landing.update(|landing| *landing = Landing { count: landing.count + 1, spot });
    }

    fn with_keeper<T>(self, act: impl FnOnce(&mut Keeper) -> T) -> Option<T> {
        self.keeper.try_update_value(|keeper| keeper.as_mut().map(act)).flatten()
    }

    /// The tab is at another place of its history.
    fn arrive(self) {
        let Some(Asked { build, view }) = self.with_keeper(Keeper::arrive).flatten() else {
            return;
        };
        let ours = build.is_none();
        if let Some(build) = build {
            self.open_link(&build);
        }
        if let Some(view) = view {
            let spot = self.with_keeper(|keeper| keeper.here.spot()).flatten().filter(|_| ours);
            let moves = spot.is_some() || self.see.with_untracked(|now| *now != view);
            if self.see.with_untracked(|now| *now != view) {
                self.see.set(view);
            }
            if moves {
                self.land(spot);
            }
        }
        // Whatever it said before, it says the build of now.
        self.places.update(|places| *places += 1);
    }

    /// Begins to follow the address, and goes on for as long as the page lives.
    pub(super) fn follow_address(self) {
        platform::keep_spots();
        platform::on_arrival(move || self.arrive());
        // A link to the view in sight leads to its beginning, and makes no place of its own.
        platform::on_link(move |fragment| {
            let Asked { build, view } = see::asked(fragment, false);
            let stays =
                build.is_none() && view.is_some_and(|view| view == self.see.get_untracked());
            if stays {
                self.land(None);
            }
            stays
        });
        platform::heard("pagehide", move || _ = self.with_keeper(Keeper::keep_spots));
        // Back whole from the browser's memory, the address still has to follow what was done last.
        platform::heard("pageshow", move || self.places.update(|places| *places += 1));
        let text = Memo::new(move |_| {
            let _ = self.found();
            see::join(&self.link(), &self.see())
        });
        let due = StoredValue::new(None::<Due>);
        let cancel = move || _ = due.try_update_value(Option::take).flatten().map(Due::cancel);
        Effect::new(move |_| {
            cancel();
            self.places.track();
            let text = text.get();
            if text.len() > link::LONGEST {
                return;
            }
            let follow = move || {
                cancel();
                self.with_keeper(|keeper| keeper.follow(&text));
            };
            due.set_value(set_timeout_with_handle(follow, AFTER).ok().map(Due::new));
        });
    }
}
