//! Long work in small pieces, so that the page never stands still.

use crate::browser;
use crate::dom::{Node, el, said};
use crate::text::page;
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use std::cell::RefCell;
use std::rc::Rc;

/// Does the next small piece, of a millisecond or so, and gives the share that is done; 1 once all is.
pub(super) type Job = Box<dyn FnMut() -> f64>;

/// Milliseconds after an edit at which work on it begins: the edit is drawn first.
const AFTER: u32 = 60;
/// Milliseconds of work between two looks at what the reader does.
const PIECE: f64 = 8.0;

/// Work that begins anew whenever what it depends on changes; what was begun before is dropped.
#[derive(Clone, Copy)]
pub(super) struct Work(RwSignal<Standing>);

#[derive(Clone, Copy, Default)]
struct Standing {
    /// Counts beginnings: a piece of an older one is not done any more.
    begun: u32,
    ended: u32,
    share: f64,
}

impl Work {
    pub(super) fn new() -> Self {
        Self(RwSignal::default())
    }

    /// How often it has ended; tracked. Belongs into the key of what shows the result.
    pub(super) fn ended(self) -> u32 {
        self.0.get().ended
    }

    /// Whether the result is that of an earlier build, or not there yet; tracked.
    pub(super) fn busy(self) -> bool {
        self.0.get().share < 1.0
    }

    /// A line that says how far it is. It must stand on the page: what it reads in `key` begins
    /// the work anew, with the job that `begin` then gives.
    pub(super) fn line(
        self,
        key: impl Fn() -> String + 'static,
        begin: impl Fn() -> Job + 'static,
    ) -> Node {
        let last = RefCell::new(None);
        let begin: Rc<dyn Fn() -> Job> = Rc::new(begin);
        let told = move || {
            let now = Some(key());
            if *last.borrow() != now {
                last.replace(now);
                let begin = begin.clone();
                // Begun after this run: what runs here may not change what it reads.
                browser::later(0, move || self.begin(begin));
            }
            let Standing { begun, share, .. } = self.0.get();
            match (begun, share) {
                (0, _) => page::WORKING.into(),
                (_, share) if share < 1.0 => {
                    format!("{} {}\u{a0}%", page::WORKING, (share * 100.0) as u32)
                }
                _ => String::new(),
            }
        };
        el("p").class("help busy").with(said(told)).into()
    }

    #[inline(never)]
    fn begin(self, begin: Rc<dyn Fn() -> Job>) {
        let begun = self.0.try_update(|now| {
            now.begun += 1;
            now.share = 0.0;
            now.begun
        });
        let Some(begun) = begun else { return };
        browser::later(AFTER, move || {
            if self.stands(begun) {
                self.go_on(begun, begin());
            }
        });
    }

    /// Whether it is still this beginning's turn, and what shows it is still on the page.
    fn stands(self, begun: u32) -> bool {
        self.0.try_get_untracked().is_some_and(|now| now.begun == begun)
    }

    #[inline(never)]
    fn go_on(self, begun: u32, mut job: Job) {
        if !self.stands(begun) {
            return;
        }
        let start = browser::now();
        let mut share = 0.0;
        while share < 1.0 && browser::now() - start < PIECE {
            share = job();
        }
        self.0.try_update(|now| {
            now.share = share;
            now.ended += u32::from(share >= 1.0);
        });
        if share < 1.0 {
            browser::later(0, move || self.go_on(begun, job));
        }
    }
}
