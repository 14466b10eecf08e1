//! Long work in small pieces, so that the page never stands still.

use crate::platform;
use crate::text::{page, percent};
use leptos::prelude::*;
use std::rc::Rc;
use std::time::Duration;

/// Does the next small piece, of a millisecond or so, and gives the share that is done; 1 once all is.
pub type Job = Box<dyn FnMut() -> f64>;

/// After an edit, until work on it begins: the edit is drawn first.
const AFTER: Duration = Duration::from_millis(60);
/// Milliseconds of work between two looks at what the reader does.
const PIECE: f64 = 4.0;

/// Work that begins anew whenever what it follows changes; what was begun before is dropped, and all
/// of it once its owner goes.
#[derive(Clone, Copy)]
pub struct Task(RwSignal<Standing>);

#[derive(Clone, Copy, Default)]
struct Standing {
    /// Counts beginnings: a piece of an older one is not done any more.
    begun: u32,
    share: f64,
}

impl Task {
    /// Work that follows what `follow` reads. `begin` gives the job, of which nothing is tracked;
    /// none where there is nothing to do.
    pub fn new(follow: impl Fn() + 'static, begin: impl Fn() -> Option<Job> + 'static) -> Self {
        Self::of(Box::new(follow), Rc::new(begin))
    }

    fn of(follow: Box<dyn Fn()>, begin: Rc<dyn Fn() -> Option<Job>>) -> Self {
        let task = Self(RwSignal::default());
        Effect::new(move |_| {
            follow();
            let begun = task.0.try_update_untracked(|now| {
                *now = Standing { begun: now.begun + 1, share: 0.0 };
                now.begun
            });
            let begin = begin.clone();
            set_timeout(
                move || {
                    if let Some(begun) = begun.filter(|begun| task.stands(*begun)) {
                        task.0.notify();
                        let job = untrack(&*begin).unwrap_or_else(|| Box::new(|| 1.0));
                        task.go_on(begun, job);
                    }
                },
                AFTER,
            );
        });
        task
    }

    /// Whether the result is that of an earlier build, or not there yet; tracked.
    #[must_use]
    pub fn busy(self) -> bool {
        self.0.get().share < 1.0
    }

    /// How far it is, in words; nothing once it is done. Tracked.
    #[must_use]
    pub fn said(self) -> String {
        match self.0.get() {
            Standing { share, .. } if share >= 1.0 => String::new(),
            Standing { share, .. } if share > 0.0 => {
                format!("{} {}", page::WORKING, percent(share))
            }
            _ => page::WORKING.into(),
        }
    }

    /// Whether it is still this beginning's turn, and its owner still there.
    fn stands(self, begun: u32) -> bool {
        self.0.try_get_untracked().is_some_and(|now| now.begun == begun)
    }

    fn go_on(self, begun: u32, mut job: Job) {
        if !self.stands(begun) {
            return;
        }
        let start = platform::now();
        let mut share = job();
        while share < 1.0 && platform::now() - start < PIECE {
            share = job();
        }
        self.0.try_update(|now| now.share = share);
        if share < 1.0 {
            set_timeout(move || self.go_on(begun, job), Duration::ZERO);
        }
    }
}
