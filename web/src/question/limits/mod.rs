//! What gives first? Every rating against what is asked of it.

mod cures;
mod wires;

use super::draws::{Draws, sketch};
use super::registry::Line;
use super::{WIRES, hint};
use crate::app::{App, use_app};
use crate::chart::{self, Bar, Bars, Drawing, Figure, Table};
use crate::component::{Caution, Fold, Lead};
use crate::text::{Answer, Style, limits as words, page};
use cures::Cures;
use leptos::prelude::*;
use pitchline_core::{Draft, Level, Margin, Margins, Rating};
use std::sync::Arc;
use wires::{Wires, gap};

/// Bars of the picture: those with the least to spare. The table has the others too.
const BARS: usize = 8;

/// The ratings, and the draft that says which are assumed.
struct Rated {
    margins: Arc<Margins>,
    draft: Draft,
}

impl Rated {
    fn now(app: App) -> Option<Arc<Self>> {
        let (margins, found) = (app.margins()?, app.found()?);
        Some(Arc::new(Self { margins, draft: found.draft.clone() }))
    }

    /// Whether nobody gave a rating that is listed.
    fn is_assumed(&self, rating: Rating) -> bool {
        !rating.is_given(&self.draft)
    }
}

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let first = |margins: Arc<Margins>| {
        let first = words::worst(&margins)?;
        Some(Line { text: words::line(first), alert: first.level == Level::Over })
    };
    app.margins().and_then(first).unwrap_or_default()
}

/// Which ratings are exceeded, in a sentence; empty where none is. What gets hot is left to the
/// controller, which limits power before.
#[must_use]
pub fn overloaded(app: App) -> String {
    let heat = [Rating::WindingHeat, Rating::ControllerHeat];
    let over = |margin: &&Margin| margin.level == Level::Over && !heat.contains(&margin.rating);
    app.margins().map_or_else(String::new, |margins| {
        let over: Vec<&Margin> = margins.list.iter().filter(over).collect();
        over.first().map_or_else(String::new, |worst| words::overloaded(over.len(), worst))
    })
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let waits = Signal::derive(move || app.waits());
    let lead = Memo::new(move |_| {
        let style = app.style();
        let first = |margins: Arc<Margins>| Some(words::first(words::worst(&margins)?, style));
        app.margins().and_then(first).unwrap_or_else(Answer::none)
    });
    let missing = Memo::new(move |_| app.margins().map_or_else(Vec::new, |m| m.missing.clone()));
    let counted = Signal::stored(words::COUNTED_HINT.to_string());
    let lacking = Signal::derive(move || missing.with(|missing| words::missing(missing.len())));
    view! {
        <Lead waits answer=lead />
        <Figure sketch=sketch(move || Rated::now(app), &RATED) hint=page::ALONG_BARS />
        <Cures />
        <Caution text=words::CAUTION />
        <Fold class="evidence" title=page::WIRES hint=hint(wires::hint) holds=WIRES>
            <Wires />
        </Fold>
        <Fold class="evidence" title=words::MISSING hint=lacking>
            <p>{words::MISSING_WHY}</p>
            {move || view! { <ul class="plain">{missing.get().into_iter().map(gap).collect_view()}</ul> }}
        </Fold>
        <Fold class="evidence" title=words::COUNTED hint=counted>
            {words::COUNTED_LINES.map(|line| view! { <p>{line}</p> }).collect_view()}
        </Fold>
    }
    .into_any()
}

static RATED: Draws<Rated> = Draws {
    finding: |rated, _| words::finding(&rated.margins),
    draw: |rated, style, width| draw(rated, style, width),
    table: |rated, style| table(rated, style),
};

fn draw(rated: &Rated, style: Style, width: f64) -> Drawing {
    let bar = |margin: &Margin| Bar {
        name: words::name(margin.rating).into(),
        values: vec![words::bar(margin)],
        text: words::amount(margin, rated.is_assumed(margin.rating), style),
        readout: words::readout(margin, style),
    };
    Bars {
        bars: rated.margins.list.iter().take(BARS).map(bar).collect(),
        limit: Some(chart::Limit { at: 100.0, name: words::MARK.into() }),
        nothing: words::NOTHING.into(),
        ..Bars::default()
    }
    .draw(width)
}

fn table(rated: &Rated, style: Style) -> Table {
    let row = |margin: &Margin| words::row(margin, rated.is_assumed(margin.rating), style);
    Table {
        label: words::TABLE.into(),
        caption: words::CAPTION.into(),
        heads: words::HEADS.map(String::from).into(),
        rows: rated.margins.list.iter().map(row).collect(),
    }
}
