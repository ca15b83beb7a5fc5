//! Notes of the surveyor, and what was measured.

use advice::verdict::{Tells, Verdict};
use facts::fact::SubjectId;
use house::naming;
use house::record::Reading;
use maud::{Markup, html};
use phrase::Phrase;

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let survey = teller.survey();
    let notes: Vec<_> = survey
        .notes
        .values()
        .map(|note| vec![about(teller, note.about), ReportTeller::own(&note.text)])
        .collect();
    let readings: Vec<_> = survey
        .readings
        .values()
        .map(|reading| {
            let read = teller.cell(&naming::reading(reading.measured));
            vec![place(teller, reading), read, beside(teller, reading)]
        })
        .collect();
    let body = html! {
        @if notes.is_empty() && readings.is_empty() { p { (teller.word("report-notes-none")) } }
        div.side-by-side.noted {
        @if !notes.is_empty() {
            div { (table(&teller.word("report-notes-caption"), &teller.words(&["head-about", "head-note"]), &notes)) }
        }
        @if !readings.is_empty() {
            @let heads = teller.words(&["head-about", "head-reading", "head-beside"]);
            div { (table(&teller.word("report-readings-caption"), &heads, &readings)) }
        }
        }
    };
    Section { id: "notes", heading: "report-notes", body }
}

/// A reading beside what was to be expected; a dash where it is held against nothing.
fn beside(teller: &ReportTeller<'_>, reading: &Reading) -> Markup {
    let survey = teller.survey();
    let verdict = Verdict::on(survey, reading, Some(teller.forecast()))
        .filter(|verdict| !verdict.held.is_empty() || !matches!(verdict.tells, Tells::Coax | Tells::Socket));
    let Some(verdict) = verdict else { return html! { "–" } };
    let said: Vec<_> =
        verdict.phrases(reading, survey.internet).iter().map(|phrase| teller.say(phrase)).collect();
    html! { (said.join(" ")) }
}

/// Where a reading was taken: a leg of a part, or the part.
fn place(teller: &ReportTeller<'_>, reading: &Reading) -> Markup {
    match (reading.about, reading.port) {
        (Some(part), Some(port)) => {
            ReportTeller::own(&teller.say(&naming::port(teller.survey(), part, port)))
        }
        (about_it, _) => about(teller, about_it),
    }
}

fn about(teller: &ReportTeller<'_>, subject: Option<SubjectId>) -> Markup {
    let survey = teller.survey();
    match subject {
        Some(id) if survey.parts.contains_key(&id) => teller.name(id),
        Some(id) if survey.rooms.contains_key(&id) => {
            ReportTeller::own(&teller.say(&naming::room(survey, id)))
        }
        Some(id) if survey.runs.contains_key(&id) => ReportTeller::own(&teller.say(&naming::run(survey, id))),
        _ => teller.cell(&Phrase::new("about-survey")),
    }
}
