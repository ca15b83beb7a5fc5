//! Cautions: several in a row stand in one box, each with its head in sight, its reason folded once it was read.

use guide::screen::CautionBlock;
use maud::{Markup, html};

use super::element;
use super::sign::{Sign, sign};

/// One box of cautions that stand together.
pub(super) fn box_of(cautions: &[&CautionBlock]) -> Markup {
    let Some(first) = cautions.first() else { return html! {} };
    html! {
        section.caution role="note" aria-label=(first.name) {
            i aria-hidden="true" {}
            div {
                (sign(Sign::Care, 26))
                p.name { b { (first.name) } }
                ul {
                    @for caution in cautions {
                        li id=(element(&caution.id)) { (one(caution)) }
                    }
                }
            }
        }
    }
}

fn one(caution: &CautionBlock) -> Markup {
    if caution.head.is_empty() {
        return html! { p { (caution.words) } };
    }
    html! {
        details open[caution.unread] {
            summary { span { (caution.head) } (sign(Sign::Fold, 18)) }
            p { (caution.words) }
        }
    }
}
