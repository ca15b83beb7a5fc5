//! What TV and modem get, and what the work list changes of it.

use advice::level::LevelTold;
use house::naming;
use house::record::ServiceKind;
use maud::{Markup, html};
use phrase::Phrase;

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let heads = teller.words(&["head-outlet", "head-service", "head-level", "head-fits", "head-when-done"]);
    let rows: Vec<_> = teller.input.levels.iter().map(|told| row(teller, told)).collect();
    let body = html! {
        @if rows.is_empty() {
            p { (teller.word("report-levels-none")) }
        } @else {
            p { (teller.word("levels-how")) }
            (table(&teller.word("report-levels-caption"), &heads, &rows))
            (needs(teller))
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
        html! { strong { (teller.say(&told.fits_phrase())) } },
        then(teller, told),
    ]
}

/// What each service needs: once, however many outlets have it.
fn needs(teller: &ReportTeller<'_>) -> Markup {
    let mut services: Vec<(ServiceKind, Vec<&Phrase>)> = Vec::new();
    for told in teller.input.levels.iter().filter(|told| !told.needs.is_empty()) {
        let place = services.iter().position(|(service, _)| *service == told.service);
        let place = place.unwrap_or_else(|| {
            services.push((told.service, Vec::new()));
            services.len() - 1
        });
        if let Some((_, needs)) = services.get_mut(place) {
            for need in &told.needs {
                if !needs.contains(&need) {
                    needs.push(need);
                }
            }
        }
    }
    html! {
        @if !services.is_empty() {
            h3 { (teller.word("report-levels-needs")) }
            dl.run-in.in-columns {
                @for (service, needs) in &services {
                    div {
                        dt { (teller.say(&naming::service(*service))) }
                        @for need in needs { dd { (teller.say(need)) } }
                    }
                }
            }
        }
    }
}

/// What the work list changes, the levels that come of it, and whether they are within what is needed.
fn then(teller: &ReportTeller<'_>, told: &LevelTold) -> Markup {
    html! {
        @if told.change.is_none() { "–" }
        @for phrase in told.change.iter().chain(&told.then) { p { (teller.say(phrase)) } }
        @if let Some(fits) = told.fits_then_phrase() { p { strong { (teller.say(&fits)) } } }
    }
}
