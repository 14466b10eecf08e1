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
/// Key of the id of the tab that was here last.
const HERE: &str = "here";
/// Places of which the reader's spot is known, at most.
const SPOTS: usize = 60;

/// The id that a tab goes on with, and whether it was at this place before.
///
/// A page that is loaded anew is where it was. Its mark may be gone all the same: Chromium drops it where
/// the address changes just as it loads the page. A frame has its history anew with the page around it,
/// and begins where it began before.
#[must_use]
pub fn arrived(session: &impl Keep) -> (Option<String>, bool) {
    let mark = Mark::read().map(|mark| mark.tab);
    let frame = platform::frame_id();
    let again = frame.as_ref().is_some_and(|id| session.get(&began(id)) == Some(platform::hash()));
    let ours = mark.is_some() || again || platform::is_reload();
    let last = || session.get(HERE).filter(|_| ours);
    (mark.or(frame).or_else(last), ours)
}

/// Key of the fragment that a frame began with.
fn began(frame: &str) -> String {
    format!("{frame}:began")
}

/// The place in the history that the tab is at, and what is known of the others.
pub(super) struct Here {
    /// Its id.
    place: String,
    /// The fragment of which the page has been told, or that it wrote.
    known: String,
    /// What the address would have said beside a link in it that was too long to be read.
    beside: Option<String>,
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
        session.set(HERE, tab);
        let mark = Mark::read();
        if let Some(frame) = platform::frame_id().filter(|_| mark.is_none()) {
            session.set(&began(&frame), &platform::hash());
        }
        let place = mark.map(|mark| mark.place).filter(|place| !place.is_empty());
        let place = place.unwrap_or_else(platform::letters);
        Mark { tab: tab.into(), place: place.clone() }.write(None);
        let spots = session.get(&key(tab)).and_then(|text| serde_json::from_str(&text).ok());
        Self { place, known: platform::hash(), beside: None, spots: spots.unwrap_or_default() }
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
        self.here.beside = None;
        self.mark(None);
        Some(asked)
    }

    fn mark(&self, fragment: Option<&str>) {
        Mark { tab: self.tab.id().into(), place: self.here.place.clone() }.write(fragment);
    }

    /// The address says the build and the view of now, unless somebody else has just changed it: then
    /// a link is being opened, of which the page has not been told yet.
    ///
    /// A link that was too long to be read stays until something else is done than opening it.
    fn follow(&mut self, text: &str) {
        if self.here.known.len() > link::LONGEST {
            let (build, view) = see::part(&self.here.known);
            let unread = build.len() > link::LONGEST
                && view.unwrap_or_default() == see::part(text).1.unwrap_or_default();
            if unread && self.here.beside.get_or_insert_with(|| text.into()) == text {
                return;
            }
        }
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
        let text = Memo::new(move |_| {
            let _ = self.found();
            // A build that no link can hold is in none: an older one in the address would be false.
            let link = Some(self.link()).filter(|link| link.len() <= link::LONGEST);
            see::join(&link.unwrap_or_default(), &self.see())
        });
        let due = StoredValue::new(None::<TimeoutHandle>);
        let cancel =
            move || _ = due.try_update_value(Option::take).flatten().map(|due| due.clear());
        Effect::new(move |_| {
            cancel();
            self.places.track();
            let text = text.get();
            let follow = move || {
                self.with_keeper(|keeper| keeper.follow(&text));
            };
            due.set_value(set_timeout_with_handle(follow, AFTER).ok());
        });
    }
}
