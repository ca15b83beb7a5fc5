//! What to do, in order; and what to mind while doing it.

use advice::finding::Caution;
use advice::worklist::{Gain, PartNeeded};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::done::is_anything_done;
use super::input::StepTold;
use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;
use super::whole::part_told;
use crate::words::ToldGain;

/// The section with the steps.
pub(super) fn list(teller: &ReportTeller<'_>) -> Section {
    let steps = &teller.input.steps;
    let body = html! {
        @if !teller.input.failed.is_empty() {
            h3 { (teller.word("report-work-failed")) }
            ul { @for room in &teller.input.failed { li { (teller.say(room)) } } }
        }
        @if steps.is_empty() && !teller.input.failed.is_empty() {
        } @else if steps.is_empty() {
            p { (teller.word(if is_anything_done(teller) { "answer-nothing-more" } else { "report-work-none" })) }
        } @else {
            p { (teller.word("report-work-how")) }
        }
        @for (place, step) in steps.iter().enumerate() { (told(teller, place + 1, step)) }
        @if !steps.is_empty() {
            h3 { (teller.word("report-work-all")) }
            @let minutes = steps.iter().map(|step| step.minutes).sum();
            p { (teller.say(&Phrase::new("report-work-minutes").with("minutes", Arg::Minutes(minutes)))) }
            (shopping(teller, teller.input.shopping.iter()))
        } @else if !teller.input.shopping.is_empty() {
            h3 { (teller.word("step-parts")) }
            (shopping(teller, teller.input.shopping.iter()))
        }
        @if !teller.input.refused.is_empty() {
            h3 { (teller.word("report-refused")) }
            ul { @for change in &teller.input.refused { li { (teller.say(change)) } } }
        }
    };
    Section { id: "work", heading: "report-work", across: false, body }
}

fn told(teller: &ReportTeller<'_>, number: usize, step: &StepTold) -> Markup {
    let number = Arg::Count(number as u64);
    let heading =
        Phrase::new("step-heading").with("number", number.clone()).phrase("what", step.what.clone());
    let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.minutes));
    let terms = [("term-why", "why"), ("term-how", "how"), ("term-check", "check"), ("term-back", "back")];
    html! {
        article {
            h3 { (teller.say(&heading)) }
            dl {
                @for (term, attribute) in terms {
                    @if let Some(text) = attribute_of(teller, step, attribute) {
                        dt { (teller.word(term)) }
                        dd { (text) }
                    }
                }
                @if !step.services.is_empty() {
                    dt { (teller.word("term-services")) }
                    @for change in &step.services { dd { (teller.say(change)) } }
                }
                @if !step.cautions.is_empty() {
                    dt { (teller.word("term-caution")) }
                    @for caution in &step.cautions { dd.caution { (teller.say(caution)) } }
                }
                dt { (teller.word("term-time")) }
                dd { (teller.say(&minutes)) }
            }
            @if step.parts.is_empty() {
                p { (teller.word("step-no-parts")) }
            } @else {
                h4 { (teller.word("step-parts")) }
                (shopping(teller, step.parts.iter()))
            }
            (gains(teller, number, step))
        }
    }
}

/// What a step's message says under an attribute, if it says anything.
fn attribute_of(teller: &ReportTeller<'_>, step: &StepTold, attribute: &str) -> Option<String> {
    teller.say_if_known(&step.what.attribute(attribute))
}

/// Parts with equal ones together, in the order in which they come first.
fn counted<'a>(parts: impl Iterator<Item = &'a PartNeeded>) -> Vec<PartNeeded> {
    let mut sums: Vec<PartNeeded> = Vec::new();
    for part in parts {
        match sums.iter_mut().find(|known| known.what == part.what) {
            Some(known) => known.count += part.count,
            None => sums.push(part.clone()),
        }
    }
    sums
}

fn shopping<'a>(teller: &ReportTeller<'_>, parts: impl Iterator<Item = &'a PartNeeded>) -> Markup {
    html! { ul { @for part in counted(parts) { li { (teller.say(&part_told(&part))) } } } }
}

fn no_gain(step: &StepTold) -> Phrase {
    Phrase::new("step-no-gain").phrase("why", step.what.attribute("why"))
}

fn gains(teller: &ReportTeller<'_>, number: Arg, step: &StepTold) -> Markup {
    let heads = teller.words(&["head-outlet", "head-before", "head-after", "head-gain"]);
    let rate = |mbps| teller.language.write(&Arg::Rate(mbps));
    let row = |gain: &Gain| {
        let (before, after) = (rate(gain.before.likely_mbps), rate(gain.after.likely_mbps));
        let change = ToldGain::of(gain).phrase(gain);
        vec![teller.name(gain.outlet), html! { (before) }, html! { (after) }, teller.cell(&change)]
    };
    let rows: Vec<_> = step.gains.iter().map(row).collect();
    let gained = |gain: &Gain| ToldGain::of(gain).is_gain();
    html! {
        @if !step.gains.iter().any(gained) { p { (teller.say(&no_gain(step))) } }
        @if !rows.is_empty() {
            (table(&teller.say(&Phrase::new("step-gain-caption").with("number", number)), &heads, &rows))
        }
    }
}

/// The section with every caution, each once.
pub(super) fn cautions(teller: &ReportTeller<'_>) -> Section {
    // The trade's usual ones come first, whether or not this house gives a cause for each.
    let mut said: Vec<_> = Caution::ALL.iter().map(|caution| teller.say(&caution.phrase())).collect();
    let of_findings = teller.input.findings.iter().flat_map(|finding| &finding.cautions);
    let of_steps = teller.input.steps.iter().flat_map(|step| &step.cautions);
    for text in of_findings.chain(of_steps).map(|caution| teller.say(caution)) {
        if !said.contains(&text) {
            said.push(text);
        }
    }
    let body = html! {
        p { (teller.word("report-cautions-how")) }
        ul { @for caution in said { li.caution { (caution) } } }
    };
    Section { id: "cautions", heading: "report-cautions", across: false, body }
}
