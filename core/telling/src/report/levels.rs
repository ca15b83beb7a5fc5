//! What TV and modem get, and what the work list changes of it.

use advice::level::LevelTold;
use house::naming;
use maud::{Markup, html};
use phrase::Phrase;

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let heads = teller.words(&[
        "head-outlet",
        "head-service",
        "head-level",
        "head-needs",
        "head-fits",
        "head-when-done",
    ]);
    let rows: Vec<_> = teller.input.levels.iter().map(|told| row(teller, told)).collect();
    let body = html! {
        @if rows.is_empty() {
            p { (teller.word("report-levels-none")) }
        } @else {
            p { (teller.word("levels-how")) }
            (table(&teller.word("report-levels-caption"), &heads, &rows))
        }
    };
    Section { id: "levels", heading: "report-levels", body }
}

fn row(teller: &ReportTeller<'_>, told: &LevelTold) -> Vec<Markup> {
    let several = |phrases: &[Phrase]| {
        let none = phrases.is_empty();
        html! {
            @if none { "–" }
            @for phrase in phrases { p { (teller.say(phrase)) } }
        }
    };
    vec![
        teller.name(told.outlet),
        teller.cell(&naming::service(told.service)),
        several(&told.now),
        several(&told.needs),
        html! { strong { (teller.say(&told.fits_phrase())) } },
        told.change.as_ref().map_or_else(|| html! { "–" }, |change| teller.cell(change)),
    ]
}
