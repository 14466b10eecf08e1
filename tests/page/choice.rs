//! The one thing that a first visit asks: which kit, or a board of one's own.

use pitchline_tests::browser::{Browser, Outcome, Page, Size};

use crate::history::turn;
use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, link, see, wait_begun};

/// A first visit, and the choice of this.
#[track_caller]
fn chosen(name: &str) -> Outcome<Visit> {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    page.goto(&visit.server.url())?;
    wait_begun(page)?;
    // Undo has nothing to undo, and answers nothing in the reader's place.
    turn(page, "Undo")?;
    page.by_text("nothing more to undo")?;
    page.by_css(".first")?;
    page.by_role("button", name)?.click()?;
    page.wait_until("return !document.querySelector('.first')")?;
    Ok(visit)
}

/// What is chosen is a beginning and no edit: there is nothing to undo, and nothing was before it.
#[track_caller]
fn assert_beginning(page: &Page) -> Outcome {
    for name in ["Undo", "Redo"] {
        let off = page.by_role("button", name)?.attribute("aria-disabled")?;
        assert_eq!(off.as_deref(), Some("true"), "{name}");
    }
    let text = page.text()?;
    for words in ["Last change", "about the same", "▲", "▼", "differ"] {
        assert!(!text.contains(words), "{words:?} in {text}");
    }
    Ok(())
}

#[test]
fn a_kit_is_a_beginning() -> Outcome {
    let visit = chosen("Gannet")?;
    let page = &visit.page;
    // The view is another: who cannot see that hears its heading.
    page.wait_until("return document.activeElement.id === 'view-title'")?;
    assert_answers(page, &demo().draft("gannet"))?;
    assert_beginning(page)?;
    visit.reload()?;
    assert_answers(page, &demo().draft("gannet"))?;
    assert_beginning(page)?;
    visit.end()
}

#[test]
fn a_board_of_ones_own_is_a_beginning() -> Outcome {
    let visit = chosen("My own board")?;
    let page = &visit.page;
    page.by_text("Replace them with yours")?;
    // It is no kit's any more, until one of a kit's parts is picked.
    let pressed = "return document.querySelectorAll('.kits [aria-pressed=true]').length";
    assert_eq!(page.eval(pressed, &[])?, 0);
    see(page, "Overview")?;
    assert_eq!(page.by_css(".summary strong")?.text()?, "My own board");
    assert_beginning(page)?;
    visit.reload()?;
    assert_eq!(page.by_css(".summary strong")?.text()?, "My own board");
    visit.end()
}

/// What the board cannot do for the rider is told before anything is asked.
#[test]
fn a_hill_that_is_too_steep_is_told_first() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    visit.open(&link("kit=kittiwake&ride.grade_percent=45"))?;
    page.by_role("button", "Your 45\u{a0}% hill is too steep")?.click()?;
    page.wait_for(
        "the view of it",
        |page| Ok(page.by_css("#view-title")?.text()? == "How steep?"),
    )?;
    visit.open(&link("kit=kittiwake&ride.grade_percent=5"))?;
    assert!(!page.text()?.contains("too steep"));
    visit.end()
}
