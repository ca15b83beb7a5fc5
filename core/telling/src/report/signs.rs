//! The small signs of the page: a step's triangle, the caution's, a box to tick. Each has its word beside it.

use maud::{Markup, html};

/// The triangle of a step with its number, as a revision on a drawing.
pub(super) fn step(number: usize) -> Markup {
    html! {
        svg.step-sign viewBox="0 0 26 24" width="26" height="24" aria-hidden="true" {
            path d="M13 2 24.5 22.5H1.5z" fill="none" stroke="currentColor" stroke-width="1.75" {}
            text x="13" y="19.5" text-anchor="middle" font-size="13" font-weight="700" fill="currentColor" { (number) }
        }
    }
}

/// The triangle of a caution.
pub(super) fn care() -> Markup {
    html! {
        svg.care-sign viewBox="0 0 26 24" width="26" height="24" aria-hidden="true" {
            path d="M13 2 24.5 22.5H1.5z M13 9v7 M13 18.5v1.5" fill="none" stroke="currentColor" stroke-width="1.75" {}
        }
    }
}

/// A box to tick by hand.
pub(super) fn tick_box() -> Markup {
    html! {
        svg.tick viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" {
            path d="M2 2h12v12H2z" fill="none" stroke="currentColor" stroke-width="1.5" {}
        }
    }
}
