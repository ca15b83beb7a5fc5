//! What is pressed.

use guide::screen::{ConfirmBlock, HowFarBlock, Need, PressBlock, PressWeight};
use maud::{Markup, html};

use super::sign::{Sign, sign};
use super::{Drawn, element};
use crate::form::Field;

/// A press; one that needs a file has a place for it.
pub(super) fn press(drawn: &Drawn<'_>, press: &PressBlock) -> Markup {
    match &press.need {
        Some(Need::FileToRead { kinds }) => {
            let kinds = kinds.iter().map(|kind| format!(".{},{}", kind.extension, kind.media_type));
            let input = format!("{}-file", element(&press.id));
            html! {
                div.file-in {
                    label.nl for=(input) { (drawn.word("page-take-file")) }
                    input type="file" id=(input) name=(Field::File(&press.key).name())
                        accept=(kinds.collect::<Vec<_>>().join(","));
                    (button(press, false))
                }
            }
        }
        Some(Need::FileToWrite { .. } | Need::FileToShare { .. }) => button(press, true),
        Some(Need::Photo { .. }) | None => button(press, false),
    }
}

/// A press that stands back, whatever it weighs elsewhere.
pub(super) fn quiet(drawn: &Drawn<'_>, block: &PressBlock) -> Markup {
    press(drawn, &PressBlock { weight: PressWeight::Quiet, ..block.clone() })
}

fn button(press: &PressBlock, writes: bool) -> Markup {
    let weight = match press.weight {
        PressWeight::Main => "main",
        PressWeight::Other => "other",
        PressWeight::Quiet => "quiet",
    };
    html! {
        button.press.(weight) type="submit" id=(element(&press.id)) name="press" value=(press.key)
            disabled[!press.enabled] {
            @if writes { (sign(Sign::File, 24)) }
            span { (press.words) }
        }
    }
}

/// A press with a second question, which unfolds.
pub(super) fn confirm(confirm: &ConfirmBlock) -> Markup {
    html! {
        details.confirm id=(element(&confirm.id)) {
            summary.press.other[confirm.enabled] { span { (confirm.words) } }
            div role="group" aria-label=(confirm.question) {
                p { (confirm.question) }
                button.press.other type="submit" name="press" value=(confirm.key) disabled[!confirm.enabled] {
                    @if confirm.destructive { (sign(Sign::Cross, 22)) }
                    span { (confirm.yes) }
                }
                button.press.main.no type="submit" name="keep" value="1" { span { (confirm.no) } }
            }
        }
    }
}

/// How far something has come that takes a while.
pub(super) fn how_far(far: &HowFarBlock) -> Markup {
    let id = element(&far.id);
    html! {
        div.howfar id=(id) {
            p id=(format!("{id}-name")) { (far.name) }
            @match far.thousandths {
                Some(done) => progress aria-labelledby=(format!("{id}-name")) max="1000" value=(done) {}
                None => progress aria-labelledby=(format!("{id}-name")) max="1000" {}
            }
            @if let Some(stop) = &far.stop { (button(stop, false)) }
        }
    }
}
