//! What to do, in order; and what to mind while doing it.

use maud::{Markup, html};

use super::input::{Gain, StepTold};
use super::page::Section;
use super::table::table;
use super::teller::Teller;
use crate::words::{Arg, Phrase};

/// The section with the steps.
pub(super) fn list(teller: &Teller<'_>) -> Section {
    let steps = &teller.input.steps;
    let body = html! {
        @if steps.is_empty() {
            p { (teller.word("report-work-none")) }
        } @else {
            p { (teller.word("report-work-how")) }
        }
        @for (place, step) in steps.iter().enumerate() { (told(teller, place + 1, step)) }
        @let parts: Vec<_> = steps.iter().flat_map(|step| &step.parts).collect();
        @if !parts.is_empty() {
            h3 { (teller.word("report-work-parts")) }
            ul { @for part in parts { li { (teller.say(part)) } } }
        }
        @if !teller.input.refused.is_empty() {
            h3 { (teller.word("report-refused")) }
            ul { @for reason in &teller.input.refused { li { (teller.say(reason)) } } }
        }
    };
    Section { id: "work", heading: "report-work", body }
}

fn told(teller: &Teller<'_>, number: usize, step: &StepTold) -> Markup {
    let number = Arg::Count(number as u64);
    let heading =
        Phrase::new("step-heading").with("number", number.clone()).phrase("what", step.what.clone());
    let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.minutes));
    html! {
        article {
            h3 { (teller.say(&heading)) }
            p { (teller.say(&step.why)) " " (teller.say(&minutes)) }
            @if step.parts.is_empty() {
                p { (teller.word("step-no-parts")) }
            } @else {
                h4 { (teller.word("step-parts")) }
                ul { @for part in &step.parts { li { (teller.say(part)) } } }
            }
            @for caution in &step.cautions {
                p.caution { strong { (teller.word("term-caution")) ": " } (teller.say(caution)) }
            }
            (gains(teller, number, &step.gains))
        }
    }
}

fn gains(teller: &Teller<'_>, number: Arg, gains: &[Gain]) -> Markup {
    let heads = teller.words(&["head-outlet", "head-before", "head-after", "head-gain"]);
    let figures = teller.language.figures();
    let row = |gain: &Gain| {
        let (before, after) = (figures.rate(gain.before_mbps), figures.rate(gain.after_mbps));
        let more = gain.after_mbps - gain.before_mbps;
        let message = match more {
            _ if before == after => "gain-none",
            more if more > 0.0 => "gain-more",
            _ => "gain-less",
        };
        let change = Phrase::new(message).with("rate", Arg::Rate(more.abs()));
        vec![teller.name(gain.outlet), html! { (before) }, html! { (after) }, teller.cell(&change)]
    };
    let rows: Vec<_> = gains.iter().map(row).collect();
    html! {
        @if rows.is_empty() {
            p { (teller.word("step-no-gain")) }
        } @else {
            (table(&teller.say(&Phrase::new("step-gain-caption").with("number", number)), &heads, &rows))
        }
    }
}

/// What holds for all work on coax, before anything that a finding or a step adds.
const ALWAYS: [&str; 8] = [
    "caution-who-depends-on-it",
    "caution-supplies-first",
    "caution-house-side-only",
    "caution-keep-grounds",
    "caution-thunderstorm",
    "caution-heights",
    "caution-powered-leg",
    "caution-fibre",
];

/// The section with every caution, each once.
pub(super) fn cautions(teller: &Teller<'_>) -> Section {
    let mut said = teller.words(&ALWAYS);
    let of_findings = teller.input.findings.iter().flat_map(|finding| &finding.cautions);
    let of_steps = teller.input.steps.iter().flat_map(|step| &step.cautions);
    for caution in of_findings.chain(of_steps) {
        let text = teller.say(caution);
        if !said.contains(&text) {
            said.push(text);
        }
    }
    let body = html! {
        p { (teller.word("report-cautions-how")) }
        ul { @for caution in said { li.caution { (caution) } } }
    };
    Section { id: "cautions", heading: "report-cautions", body }
}
