//! Bars: the rate of a room, and a share of a whole. Each says nothing that the words beside it do not.

use guide::screen::RowBar;
use maud::{Markup, PreEscaped, html};
use telling::figure::{BarSign, bar_sign, svg};
use telling::words::Language;

/// The bar of a room. `id` is a name that no other bar of the screen has.
pub(super) fn bar(bar: &RowBar, id: &str, words: &Language) -> Markup {
    html! { span.bar aria-hidden="true" { (PreEscaped(svg(&bar.figure(), id, words))) } }
}

/// What the marks on these bars mean, each beside its word. `id` is a name that no other key of the screen has.
pub(super) fn key<'a>(bars: impl Iterator<Item = &'a RowBar>, id: &str, words: &Language) -> Markup {
    let bars: Vec<_> = bars.map(RowBar::marks).collect();
    html! {
        ul.barkey {
            @for (place, (sign, word)) in BarSign::on(&bars).into_iter().enumerate() {
                @let figure = bar_sign(sign, word.clone());
                li { span.bar aria-hidden="true" { (PreEscaped(svg(&figure, &format!("{id}-key-{place}"), words))) } (words.say(&word)) }
            }
        }
    }
}

/// A share of a whole, in thousandths.
pub(super) fn share(thousandths: u32) -> Markup {
    html! {
        svg.lossbar viewBox="0 0 1000 10" preserveAspectRatio="none" aria-hidden="true" {
            rect width=(thousandths.clamp(4, 1000)) height="10" {}
        }
    }
}
