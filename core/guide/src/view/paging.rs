//! Long lists in pages, so that no screen is longer than a screen may be.

use phrase::Phrase;

use super::builder::ScreenBuilder;
use crate::place::Key;
use crate::screen::PressWeight;
use crate::session::Pending;

/// Rows of one page.
pub(crate) const ROWS: usize = 100;

/// The first row that the page shows.
pub(crate) fn first(pending: &Pending) -> usize {
    page(pending).saturating_mul(ROWS)
}

/// Which page is shown, 0 first.
pub(crate) fn page(pending: &Pending) -> usize {
    pending.written(&Key::Page).and_then(|page| page.parse().ok()).unwrap_or(0)
}

/// The presses that turn pages, where there are `rows` in all.
pub(crate) fn presses(builder: &mut ScreenBuilder<'_>, rows: usize) {
    presses_of(builder, page(builder.pending()), rows, ROWS);
}

/// The presses that turn pages of `of` rows, where this page is shown of `rows` in all.
pub(crate) fn presses_of(builder: &mut ScreenBuilder<'_>, page: usize, rows: usize, of: usize) {
    if rows > page.saturating_add(1).saturating_mul(of) {
        builder.press(&Key::More, &Phrase::new("more-rows"), PressWeight::Other);
    }
    if page > 0 {
        builder.press(&Key::First, &Phrase::new("first-rows"), PressWeight::Other);
    }
}

/// Turns the page if such a press was pressed; returns whether it was.
pub(crate) fn turn(pending: &mut Pending, key: &Key) -> bool {
    let page = match key {
        Key::More => page(pending).saturating_add(1),
        Key::First => 0,
        _ => return false,
    };
    pending.write(&Key::Page, page.to_string());
    true
}
