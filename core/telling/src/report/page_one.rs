//! Page one, to leave with a person: the answer, what each room gets, the first steps, the map, what to take care of, and
//! who says so of which day. It stands before the report, or alone, to be hung up: then with what to get, and nothing on it
//! leads on.

use house::record::OutcomeKind;
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::input::StepTold;
use super::letters::Letters;
use super::teller::ReportTeller;
use super::{job, pictures, room_bars, signs, work};
use crate::words::{ToldGain, told_gains};

/// So many steps stand on page one, and one less where many rooms stand there.
const FIRST_STEPS: usize = 3;
const MANY_ROOMS: usize = 5;

/// So many rooms that gain are named beside a step.
const SHORT_GAINS: usize = 2;

/// So many lines for notes stand ready; those that the sheet has no room for are not seen.
const RULED: usize = 24;

/// Where the sheet stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stands {
    /// Before the rest of the report.
    First,
    /// Alone.
    Alone,
}

impl Stands {
    /// For a message to choose by.
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::First => "no",
            Self::Alone => "yes",
        }
    }
}

/// The sheet.
pub(super) fn sheet(teller: &ReportTeller<'_>, letters: &Letters, stands: Stands) -> Markup {
    let title = Phrase::new("report-page-title").text("name", teller.house_name());
    let most = if room_bars::count(teller) < MANY_ROOMS { FIRST_STEPS } else { FIRST_STEPS - 1 };
    let steps = &teller.input.steps;
    let first = steps.get(..most).unwrap_or(steps);
    html! {
        section.sheet.one.alone[stands == Stands::Alone] aria-labelledby="answer" {
            p.trail { (ReportTeller::own(&teller.say(&title))) }
            h1.answer id="answer" { (job::answer(teller)) }
            @if let Some(more) = job::more(teller) { p.more { (more) } }
            div.halves {
                div.half.of-rooms {
                    (room_bars::list(teller, stands))
                    (first_steps(teller, first, stands))
                }
                div.half.of-map { (pictures::small_map(teller)) }
            }
            @if stands == Stands::Alone && !teller.input.shopping.is_empty() {
                div { h2 { (teller.word("report-to-get")) } (work::shopping(teller)) }
            }
            (care(teller, letters, first, stands))
            p.aside { (teller.word("report-made")) }
            div.ruled aria-hidden="true" { (teller.word("report-for-notes")) @for _ in 0..RULED { i {} } }
            (title_block(teller))
        }
    }
}

fn first_steps(teller: &ReportTeller<'_>, first: &[StepTold], stands: Stands) -> Markup {
    let steps = &teller.input.steps;
    if steps.is_empty() && !teller.input.failed.is_empty() {
        // What is left for a room whose test failed stands under the answer.
        return html! {};
    }
    let left = Arg::Count((steps.len() - first.len()) as u64);
    let heading = Phrase::new("report-first-steps").with("count", Arg::Count(first.len() as u64));
    html! {
        h2 { (teller.say(&heading.with("left", left.clone()))) }
        @if steps.is_empty() {
            p { (job::nothing_to_do(teller)) }
        } @else {
            ol.first-steps {
                @for (place, step) in first.iter().enumerate() {
                    li {
                        (signs::step(place + 1))
                        div { p { b { (teller.say(&step.what)) } } p.says { (in_short(teller, step)) } }
                    }
                }
            }
            @if steps.len() > first.len() {
                @let more = Phrase::new("report-more-steps").with("count", left).text("alone", stands.word());
                p.says { (teller.say(&more)) }
            }
        }
    }
}

/// How long it takes and what it gains, in a line.
fn in_short(teller: &ReportTeller<'_>, step: &StepTold) -> String {
    let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.minutes));
    let gains: Vec<_> = told_gains(&step.gains)
        .into_iter()
        .take(SHORT_GAINS)
        .map(|(gain, told)| {
            let id = if matches!(told, ToldGain::More(_)) {
                "report-gain-short"
            } else {
                "report-gain-short-beside"
            };
            let room = Phrase::new(id).text("room", teller.room_name(gain.outlet));
            let room = room.with("after", Arg::Rate(gain.after.likely_mbps));
            Arg::Phrase(Box::new(room.phrase("change", told.phrase(gain))))
        })
        .collect();
    let gain = if gains.is_empty() {
        teller.word("report-no-gain-short")
    } else {
        teller.say(&Phrase::new("report-gains-short").with("gains", Arg::Several(gains)))
    };
    format!("{} {gain}", teller.say(&minutes))
}

/// What to take care of at the first steps, in short: one box.
fn care(teller: &ReportTeller<'_>, letters: &Letters, first: &[StepTold], stands: Stands) -> Markup {
    let cautions = letters.of_phrases(teller, first.iter().flat_map(|step| &step.cautions));
    html! {
        @if !cautions.is_empty() {
            section.care role="note" aria-label=(teller.word("report-care")) {
                i.stripes aria-hidden="true" {}
                (signs::care())
                p {
                    b { (teller.word("report-care")) }
                    @for caution in &cautions { " " (caution.head.as_ref().unwrap_or(&caution.text)) }
                    " "
                    @match stands {
                        Stands::First => a href="#cautions" { (teller.word("report-care-more")) },
                        Stands::Alone => (teller.word("report-care-more-alone")),
                    }
                }
            }
        }
    }
}

/// The foot of page one: which house, as of when, by whom, and what was done.
fn title_block(teller: &ReportTeller<'_>) -> Markup {
    let provenance = &teller.input.provenance;
    let cells = [
        Some(("report-block-house", teller.house_name())),
        teller.day().map(|day| ("report-block-day", day)),
        (!provenance.authors.is_empty()).then(|| ("report-block-by", provenance.authors.join(", "))),
        Some(("report-block-done", done_in_short(teller))),
    ];
    html! {
        dl.title-block {
            @for (term, says) in cells.into_iter().flatten() {
                div { dt { (teller.word(term)) } dd { (ReportTeller::own(&says)) } }
            }
        }
    }
}

fn done_in_short(teller: &ReportTeller<'_>) -> String {
    let works = &teller.survey().works;
    if works.is_empty() {
        return teller.word("report-done-nothing");
    }
    let count = |end| works.values().filter(|work| work.outcome.end == end).count();
    let told = [
        ("report-done-count", OutcomeKind::Done),
        ("report-could-not-count", OutcomeKind::CouldNot),
        ("report-put-back-count", OutcomeKind::PutBack),
    ];
    let told = told.into_iter().filter_map(|(id, end)| {
        let count = count(end) as u64;
        (count > 0).then(|| Phrase::new(id).with("count", Arg::Count(count)))
    });
    teller.say(&Phrase::new("report-done-told").with("told", ReportTeller::list(told)))
}
