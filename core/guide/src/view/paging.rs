//! Long lists in pages, so that no screen is longer than a screen may be.

use phrase::Phrase;

use crate::deed::Deed;
use crate::screen::PressWeight;
use crate::session::Pending;
use crate::view::Sketch;

/// Rows of one page.
pub(crate) const ROWS: usize = 100;

/// Where the turned page is kept among what the screen was given.
const PAGE: &str = "page";

/// The first row that the page shows.
pub(crate) fn first(pending: &Pending) -> usize {
    page(pending).saturating_mul(ROWS)
}

fn page(pending: &Pending) -> usize {
    pending.written(PAGE).and_then(|page| page.parse().ok()).unwrap_or(0)
}

/// The presses that turn pages, where there are `rows` in all.
pub(crate) fn presses(sketch: &mut Sketch<'_>, rows: usize) {
    let first = first(sketch.pending());
    if rows > first.saturating_add(ROWS) {
        sketch.press("more", &Phrase::new("more-rows"), PressWeight::Other);
    }
    if first > 0 {
        sketch.press("first", &Phrase::new("first-rows"), PressWeight::Other);
    }
}

/// What is to be kept when such a press was pressed; `None` if it was another.
pub(crate) fn turned(pending: &Pending, key: &str) -> Option<Deed> {
    let page = match key {
        "more" => page(pending).saturating_add(1),
        "first" => 0,
        _ => return None,
    };
    Some(Deed::Write { key: PAGE.into(), words: page.to_string() })
}
