//! What was done of the work list, what could not be, what was put back; and whether everything else still works and the
//! network is private.

use advice::adapters::{adapters_to_come, are_adapters_placed, has_no_adapters};
use house::record::{Asked, Named, OutcomeKind, Reply, Survey, Work};
use maud::{Markup, html};
use phrase::Phrase;

use super::page::Section;
use super::teller::ReportTeller;

/// Each end with its heading.
const ENDS: [(OutcomeKind, &str); 3] = [
    (OutcomeKind::Done, "done-done"),
    (OutcomeKind::CouldNot, "done-could-not"),
    (OutcomeKind::PutBack, "done-put-back"),
];

/// Questions about the whole house that tell how the job stands.
const ANSWERS: [Asked; 2] = [Asked::StillFine, Asked::PrivatePassword];

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let survey = teller.survey();
    let mut standing: Vec<_> = ANSWERS
        .iter()
        .filter_map(|question| {
            let told = survey.reply(survey.id, *question);
            let told = told.filter(|told| question.replies().contains(told)).map(Named::name);
            let told = told.or_else(|| can_be_open(survey, *question).then_some("open"))?;
            Some(format!("done-{question}-{told}"))
        })
        .collect();
    if has_no_adapters(survey) || !adapters_to_come(survey).is_empty() {
        let told = if are_adapters_placed(survey) { "done-adapters-yes" } else { "done-adapters-open" };
        standing.insert(0, told.into());
    }
    let body = html! {
        @if survey.works.is_empty() { p { (teller.word("done-nothing")) } }
        @for (end, heading) in ENDS { (of_end(teller, end, heading)) }
        @if !standing.is_empty() {
            h3 { (teller.word("done-standing")) }
            ul { @for message in standing { li { (teller.word(&message)) } } }
        }
    };
    Section { id: "done", heading: "report-done", body }
}

/// Whether somebody could have answered by now: before any work nobody can say how the house stands after it, nor, where
/// adapters are still to come, whether they are private.
fn can_be_open(survey: &Survey, question: Asked) -> bool {
    let is_worked = !survey.works.is_empty();
    match question {
        Asked::PrivatePassword => is_worked || !has_no_adapters(survey) || are_adapters_placed(survey),
        _ => is_worked,
    }
}

fn of_end(teller: &ReportTeller<'_>, end: OutcomeKind, heading: &str) -> Markup {
    let works: Vec<_> = teller.survey().works.values().filter(|work| work.outcome.end == end).collect();
    html! {
        @if !works.is_empty() {
            h3 { (teller.word(heading)) }
            ul {
                @for work in works {
                    li {
                        (teller.say(&work.what(teller.survey())))
                        @if end == OutcomeKind::Done { " " (teller.say(&others(teller, work))) }
                    }
                }
            }
        }
    }
}

/// Whether TV and internet were fine after a change.
fn others(teller: &ReportTeller<'_>, work: &Work) -> Phrase {
    let told = teller.survey().reply(work.id, Asked::OthersFine);
    Phrase::new(match work.outcome.others_fine {
        Some(true) => "done-fine",
        Some(false) => "done-not-fine",
        None if told == Some(Reply::Nothing) => "done-nothing-else",
        None => "done-not-looked",
    })
}
