//! Every question of the page, in the order in which they are listed.

use super::{charge, fit, hill, limits, range, settings, speed};
use crate::app::App;
use crate::text::page;
use leptos::prelude::*;

/// What a question is about, as the list has them apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// Of riders.
    Ride,
    /// Of whoever builds the board.
    Workshop,
}

impl Group {
    /// All of them, in the order of the list.
    pub const ALL: [Self; 2] = [Self::Ride, Self::Workshop];

    /// Its heading.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Ride => page::RIDE_GROUP,
            Self::Workshop => page::WORKSHOP_GROUP,
        }
    }
}

/// The answer to a question, in one line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// The answer.
    pub text: String,
    /// Whether it is something to mind.
    pub alert: bool,
}

impl Line {
    /// An answer.
    #[must_use]
    pub fn plain(text: String) -> Self {
        Self { text, alert: false }
    }
}

/// A question of the page.
#[derive(Clone, Copy)]
pub struct Question {
    /// Its view's key in the address.
    pub id: &'static str,
    /// Where it is listed.
    pub group: Group,
    /// Its name.
    pub title: &'static str,
    /// Its answer in one line; tracked.
    pub line: fn(App) -> Line,
    /// What stands below its name.
    pub view: fn() -> AnyView,
}

use Group::{Ride, Workshop};

/// All that is answered.
pub const QUESTIONS: &[Question] = &[
    Question { id: "fast", group: Ride, title: page::FAST, line: speed::line, view: speed::view },
    Question { id: "steep", group: Ride, title: page::STEEP, line: hill::line, view: hill::view },
    Question { id: "far", group: Ride, title: page::FAR, line: range::line, view: range::view },
    Question {
        id: "charge",
        group: Ride,
        title: page::CHARGE,
        line: charge::line,
        view: charge::view,
    },
    Question { id: "fit", group: Workshop, title: page::FIT, line: fit::line, view: fit::view },
    Question {
        id: "limits",
        group: Workshop,
        title: page::LIMITS,
        line: limits::line,
        view: limits::view,
    },
    Question {
        id: "settings",
        group: Workshop,
        title: page::SETTINGS,
        line: settings::line,
        view: settings::view,
    },
];

/// The question of that key.
#[must_use]
pub fn find(id: &str) -> Option<&'static Question> {
    QUESTIONS.iter().find(|question| question.id == id)
}
