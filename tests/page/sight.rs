//! What is in sight comes first.

use pitchline_tests::browser::{Outcome, Size};

use crate::visit::{Visit, drawn, see, unfold};

/// What is in sight follows at once, what is not once the reader rests; nothing stays behind.
#[test]
fn a_drawing_out_of_sight_follows_when_the_reader_rests() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    see(page, "How far?")?;
    for fold in [
        "With stops and hills",
        "Where the energy goes",
        "In the cold, and with age",
        "How certain is this?",
    ] {
        unfold(page, fold)?;
    }
    page.wait_until("return document.querySelectorAll('figure').length > 6")?;
    drawn(page)?;
    // The captions of all drawings just after an edit, and once there was a rest.
    let script = "const said = () => [...document.querySelectorAll('figure')].map(
            (figure) => [figure.querySelector('svg').getAttribute('aria-label'),
                         figure.querySelector('figcaption').textContent,
                         figure.hasAttribute('aria-busy')]);
        document.querySelectorAll('figure')[0].scrollIntoView();
        await new Promise((then) => setTimeout(then, 300));
        const input = document.getElementById('far-ride-cruise_km_h'), before = said();
        input.value = '31';
        input.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise((then) => queueMicrotask(() => setTimeout(then, 0)));
        return [before, said()];";
    let found = page.eval(script, &[])?;
    let at = |n: usize, figure: usize| found[n][figure].clone();
    let last = found[0].as_array().map_or(0, Vec::len) - 1;
    assert!(last > 5, "{found}");
    // The first names the cruising speed, and is in sight.
    assert_ne!(at(0, 0), at(1, 0));
    assert!(at(1, 0)[1].as_str().is_some_and(|said| said.contains("31")), "{found}");
    let behind = |n: usize| found[n].as_array().into_iter().flatten().filter(|f| f[2] == true);
    assert_eq!(behind(0).count(), 0);
    assert!(behind(1).count() > 0, "all drawn at once: {found}");
    drawn(page)?;
    let script = "return [...document.querySelectorAll('figure')].filter(
        (f) => f.querySelector('svg').getAttribute('aria-label')
            !== f.querySelector('figcaption').textContent).length";
    assert_eq!(page.eval(script, &[])?, 0);
    visit.end()
}
