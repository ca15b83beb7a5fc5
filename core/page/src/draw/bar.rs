//! Bars: the rate of a room, and a share of a whole. Each says nothing that the words beside it do not.

use guide::screen::RowBar;
use maud::{Markup, PreEscaped, html};
use telling::figure::svg;
use telling::words::Language;

/// The bar of a room. `id` is a name that no other bar of the screen has.
pub(super) fn bar(bar: &RowBar, id: &str, words: &Language) -> Markup {
    html! { span.bar aria-hidden="true" { (PreEscaped(svg(&bar.figure(), id, words))) } }
}

/// A share of a whole, in thousandths.
pub(super) fn share(thousandths: u32) -> Markup {
    html! {
        svg.lossbar viewBox="0 0 1000 10" preserveAspectRatio="none" aria-hidden="true" {
            rect width=(thousandths.clamp(4, 1000)) height="10" {}
        }
    }
}
