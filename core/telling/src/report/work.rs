//! What to do, in order, with boxes to tick.

use advice::adapters::{adapters_to_come, are_adapters_to_place};
use advice::worklist::{Gain, PartNeeded};
use house::naming;
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::input::{OtherTold, StepTold};
use super::job::nothing_to_do;
use super::letters::Letters;
use super::page::Section;
use super::signs;
use super::table::table;
use super::teller::ReportTeller;
use super::whole::part_told;
use crate::words::ToldGain;

/// The section with the steps.
pub(super) fn list(teller: &ReportTeller<'_>, letters: &Letters) -> Section {
    let steps = &teller.input.steps;
    let body = html! {
        @if !teller.input.failed.is_empty() {
            h3 { (teller.word("report-work-failed")) }
            ul { @for room in &teller.input.failed { li { (teller.say(room)) } } }
        }
        @if let Some(chosen) = &teller.input.chosen { p { (teller.say(chosen)) } }
        @if steps.is_empty() {
            @if teller.input.failed.is_empty() { p { (nothing_to_do(teller)) } }
        } @else {
            p { (teller.word("report-work-how")) }
            ol.steps {
                @for (place, step) in steps.iter().enumerate() { li.whole { (told(teller, letters, place + 1, step)) } }
            }
            @if let Some(searched) = teller.input.searched { p.says { (teller.say(&searched.phrase())) } }
            @if let Some(cut_short) = teller.input.cut_short { p { (teller.say(&cut_short.phrase())) } }
        }
        @if !steps.is_empty() {
            h3 { (teller.word("report-work-all")) }
            @let minutes = steps.iter().map(|step| step.minutes).sum();
            p { (teller.say(&Phrase::new("report-work-minutes").with("minutes", Arg::Minutes(minutes)))) }
            (shopping(teller))
        } @else if !teller.input.shopping.is_empty() {
            h3 { (teller.word("step-parts")) }
            (shopping(teller))
        }
        (adapters(teller))
        (others(teller))
        @if !teller.input.refused.is_empty() {
            h3 { (teller.word("report-refused")) }
            ul { @for change in &teller.input.refused { li { (teller.say(change)) } } }
        }
    };
    Section { id: "work", heading: "report-work", body }
}

fn told(teller: &ReportTeller<'_>, letters: &Letters, number: usize, step: &StepTold) -> Markup {
    let ordinal = Phrase::new("report-step-number").with("number", Arg::Count(number as u64));
    let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.minutes));
    let line = |term: &str, text: Option<String>| {
        html! { @if let Some(text) = text { div { dt { (teller.word(term)) } dd { (text) } } } }
    };
    let services = step.services.iter().map(|change| teller.say(change)).collect::<Vec<_>>().join("; ");
    html! {
        (signs::step(number))
        div.step {
            h3 { span.unseen { (teller.say(&ordinal)) " " } (teller.say(&step.what)) }
            (letters.beside(teller, &step.cautions))
            p.says { (teller.say(&minutes)) " " (gains(teller, step)) }
            dl.run-in.in-columns {
                (line("step-parts", Some(parts(teller, step))))
                @match told_before(teller, number - 1) {
                    Some(before) => {
                        (line("term-services", (!services.is_empty()).then_some(services)))
                        (line("report-term-rest", Some(teller.say(&before))))
                    }
                    None => {
                        (line("term-why", attribute_of(teller, step, "why")))
                        (line("term-how", attribute_of(teller, step, "how")))
                        (line("term-services", (!services.is_empty()).then_some(services)))
                        (line("term-check", attribute_of(teller, step, "check")))
                        (line("term-back", attribute_of(teller, step, "back")))
                    }
                }
            }
            ul.ticks {
                @for tick in ["report-tick-before", "report-tick-done", "report-tick-fine", "report-tick-after"] {
                    li { (signs::tick_box()) (teller.word(tick)) }
                }
            }
        }
    }
}

/// The first step of which why, how, check and the way back read the same as of this one, in words.
fn told_before(teller: &ReportTeller<'_>, place: usize) -> Option<Phrase> {
    let steps = &teller.input.steps;
    let told = |step: &StepTold| ["why", "how", "check", "back"].map(|of| attribute_of(teller, step, of));
    let this = told(steps.get(place)?);
    let before = steps.iter().take(place).position(|step| told(step) == this)?;
    Some(Phrase::new("report-as-in-step").with("number", Arg::Count(before as u64 + 1)))
}

fn parts(teller: &ReportTeller<'_>, step: &StepTold) -> String {
    if step.parts.is_empty() {
        return teller.word("step-no-parts");
    }
    counted(step.parts.iter()).iter().map(|part| teller.say(&part_told(part))).collect::<Vec<_>>().join("; ")
}

/// What each room gains or loses, in sentences; that none gets faster where none does.
fn gains(teller: &ReportTeller<'_>, step: &StepTold) -> String {
    let told = step.gains.iter().map(|gain| (gain, ToldGain::of(gain)));
    let told: Vec<_> = told.filter(|(_, told)| *told != ToldGain::Nothing).collect();
    let mut sentences: Vec<_> =
        told.iter().map(|(gain, told)| teller.say(&gain_told(teller, gain, *told))).collect();
    if !told.iter().any(|(_, told)| told.is_gain()) {
        sentences.push(teller.word("report-no-gain"));
    } else if sentences.len() < step.gains.len() {
        sentences.push(teller.word("report-gain-others"));
    }
    sentences.join(" ")
}

fn gain_told(teller: &ReportTeller<'_>, gain: &Gain, told: ToldGain) -> Phrase {
    let of_likely = matches!(told, ToldGain::More(_) | ToldGain::Less(_));
    Phrase::new(if of_likely { "report-gain" } else { "report-gain-beside" })
        .phrase("room", naming::part(teller.survey(), gain.outlet))
        .with("before", Arg::Rate(gain.before.likely_mbps))
        .with("after", Arg::Rate(gain.after.likely_mbps))
        .phrase("change", told.phrase(gain))
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

/// What might be done instead, a row each.
fn others(teller: &ReportTeller<'_>) -> Markup {
    let heads = teller.words(&["head-other-list", "head-other-takes", "head-other-differs"]);
    let row = |other: &OtherTold| {
        vec![
            teller.cell(&other.name),
            teller.cell(&other.takes),
            html! { ul { @for differs in &other.differs { li { (teller.say(differs)) } } } },
        ]
    };
    let rows: Vec<_> = teller.input.others.iter().map(row).collect();
    html! {
        @if !rows.is_empty() {
            h3 { (teller.word("other-lists")) }
            (table(&teller.word("other-lists-caption"), &heads, &rows))
        }
    }
}

/// Where each adapter goes, once the cables are done.
fn adapters(teller: &ReportTeller<'_>) -> Markup {
    let house = teller.input.when_done.map_or_else(|| teller.survey(), |(house, _)| house);
    let to_place = if are_adapters_to_place(house) { adapters_to_come(house) } else { Vec::new() };
    html! {
        @if !to_place.is_empty() {
            h3 { (teller.word("adapters-to-place")) }
            ul.to-get {
                @for adapter in to_place {
                    li {
                        (signs::tick_box()) b { (teller.say(&adapter.place(house))) } ": " (teller.say(&adapter.how()))
                        @if let Some(sharing) = adapter.sharing() { " " (teller.say(&sharing)) }
                    }
                }
            }
        }
    }
}

/// What to get, with boxes to tick.
pub(super) fn shopping(teller: &ReportTeller<'_>) -> Markup {
    html! {
        ul.to-get {
            @for part in counted(teller.input.shopping.iter()) {
                li { (signs::tick_box()) (teller.say(&part_told(&part))) }
            }
        }
    }
}
