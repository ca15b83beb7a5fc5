//! `legwork worklist`: what to change, in which order.

mod data;
mod words;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use advice::adapters::{adapters_to_come, are_adapters_to_place};
use advice::finding::Caution;
use advice::level;
use advice::worklist::{Step, WorkList, chosen, nothing_to_do};
use house::document::Document;
use house::naming;
use house::record::{Named, Survey, Without};
use phrase::{Arg, Phrase};
use telling::words::ToldGain;

use super::context::Context;
use super::record::open_to_write;
use super::worked::Opened;
use crate::error::DeskError;
use crate::printed::Page;

pub use data::{WorkListJson, as_json};
use words::adapter_in_words;

/// Keeps in the survey that these kinds of work, and no others, are not wanted; nothing is written where it stands so already.
pub fn choose(folder: &Path, left_out: &BTreeSet<Without>) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let survey = store.survey()?;
    if survey.without() != *left_out {
        store.write(&[survey.set_without(left_out)])?;
    }
    Ok(())
}

/// Works the list out and tells it.
pub fn run(context: &Context, opened: &Opened) -> Result<(), DeskError> {
    let (list, survey) = (opened.work_list(context)?, &opened.survey);
    context.answer(&as_json(context, survey, &list), |page| tell(context, survey, &list, page))
}

/// Tells a work list in words.
pub fn tell(context: &Context, survey: &Survey, list: &WorkList, page: &mut Page) {
    page.heading(&context.word("desk-worklist"));
    let minutes = list.steps.iter().map(|step| step.effort.minutes).sum();
    let intro = if list.is_only_checks() { "desk-worklist-checks" } else { "desk-worklist-count" };
    let intro = Phrase::new(intro)
        .with("count", Arg::Count(list.steps.len() as u64))
        .with("minutes", Arg::Minutes(minutes));
    if let Some(chosen) = chosen(survey) {
        page.paragraph(0, &context.say(&chosen));
    }
    // Where a test failed, a list without steps says what is left for it.
    if !list.steps.is_empty() {
        page.paragraph(0, &context.say(&intro));
    } else if list.failed.is_empty() {
        let said: Vec<_> = nothing_to_do(survey).iter().map(|phrase| context.say(phrase)).collect();
        page.paragraph(0, &said.join(" "));
    }
    if !list.failed.is_empty() {
        page.heading(&context.word("desk-failed"));
        for room in &list.failed {
            page.item(0, &context.say(&room.phrase(survey, list)));
        }
    }
    let mut told_cautions = BTreeMap::new();
    for (number, step) in list.steps.iter().enumerate() {
        tell_step(context, number + 1, step, &mut told_cautions, page);
    }
    if let Some(searched) = list.searched.filter(|_| !list.steps.is_empty()) {
        page.paragraph(0, &context.say(&searched.phrase()));
    }
    if let Some(cut_short) = list.cut_short {
        page.paragraph(0, &context.say(&cut_short.phrase()));
    }
    tell_when_done(context, list, page);
    tell_services_when_done(context, survey, list, page);
    tell_shopping(context, survey, list, page);
    tell_adapters(context, list, page);
    tell_others(context, survey, list, page);
    if !list.refused.is_empty() {
        page.heading(&context.word("desk-refused"));
        for (change, refusal) in &list.refused {
            let refused = Phrase::new("desk-refused-one")
                .phrase("change", change.phrase(survey))
                .phrase("why", refusal.why(survey));
            page.item(0, &context.say(&refused));
        }
    }
}

fn tell_step(
    context: &Context,
    number: usize,
    step: &Step,
    told: &mut BTreeMap<Caution, u64>,
    page: &mut Page,
) {
    let change = step.change.phrase(&step.before);
    page.numbered(number, &context.say(&change));
    let mut rows = Vec::new();
    let attribute = |name: &str| context.language.say_if_known(&change.attribute(name));
    if let Some(why) = attribute("why") {
        rows.push((context.word("desk-why"), why));
    }
    rows.push((context.word("desk-gain"), gains_in_words(context, step)));
    if let Some(how) = attribute("how") {
        rows.push((context.word("desk-how"), how));
    }
    let services: Vec<_> = step.service_words().iter().map(|words| context.say(words)).collect();
    if !services.is_empty() {
        rows.push((context.word("desk-services"), services.join("; ")));
    }
    for caution in &step.cautions() {
        // Said in full where it comes first; where it comes again its head says what to do or leave.
        let said = match told.get(caution) {
            Some(step) => Phrase::new("desk-caution-again")
                .phrase("head", caution.phrase().attribute("head"))
                .with("step", Arg::Count(*step)),
            None => caution.phrase(),
        };
        let row = (context.word("desk-caution"), context.say(&said));
        if !rows.contains(&row) {
            rows.push(row);
        }
        told.entry(*caution).or_insert(number as u64);
    }
    if let Some(check) = attribute("check") {
        rows.push((context.word("desk-check"), check));
    }
    if let Some(back) = attribute("back") {
        rows.push((context.word("desk-back"), back));
    }
    rows.push((
        context.word("desk-takes"),
        context.say(&Phrase::new("desk-minutes").with("minutes", Arg::Minutes(step.effort.minutes))),
    ));
    page.rows(3, &rows);
}

fn gains_in_words(context: &Context, step: &Step) -> String {
    let told: Vec<_> = step
        .gains
        .iter()
        .filter_map(|gain| {
            let outlet = naming::mark(&step.before, gain.outlet);
            let one = match ToldGain::of(gain) {
                ToldGain::Nothing => return None,
                ToldGain::More(_) | ToldGain::Less(_) => Phrase::new("desk-gain-one")
                    .with("before", Arg::Rate(gain.before.likely_mbps))
                    .with("after", Arg::Rate(gain.after.likely_mbps)),
                other => Phrase::new("desk-gain-other").phrase("gain", other.phrase(gain)),
            };
            Some(Arg::Phrase(Box::new(one.phrase("outlet", outlet))))
        })
        .collect();
    let message = if told.is_empty() { "desk-gain-none" } else { "desk-gain-list" };
    context.say(&Phrase::new(message).with("gains", Arg::Several(told)))
}

/// What gets through when all steps are done, each room against the house as found.
fn tell_when_done(context: &Context, list: &WorkList, page: &mut Page) {
    if list.steps.is_empty() || list.when_done.rooms.is_empty() {
        return;
    }
    page.heading(&context.word("desk-when-done"));
    for room in &list.when_done.rooms {
        let (before, after) =
            (list.as_found.likely_down(room.outlet), list.when_done.likely_down(room.outlet));
        let told = Phrase::new("desk-gain-one")
            .phrase("outlet", naming::part(&list.house_when_done, room.outlet))
            .with("before", Arg::Rate(before))
            .with("after", Arg::Rate(after));
        page.item(0, &context.say(&told));
    }
}

/// What TV and modem get now and when all steps are done.
fn tell_services_when_done(context: &Context, survey: &Survey, list: &WorkList, page: &mut Page) {
    let told = level::told(survey, &list.levels, &list.level_changes);
    if list.steps.is_empty() || told.is_empty() {
        return;
    }
    page.heading(&context.word("desk-levels"));
    for row in &told {
        let line =
            Phrase::new("desk-levels-short").phrase("of", row.of(survey)).phrase("short", row.in_short());
        page.item(0, &context.say(&line));
    }
}

fn tell_shopping(context: &Context, survey: &Survey, list: &WorkList, page: &mut Page) {
    let items = list.shopping(survey);
    if items.is_empty() {
        return;
    }
    page.heading(&context.word("desk-shopping"));
    let rows: Vec<_> =
        items.iter().map(|needed| (needed.count.to_string(), context.say(&needed.what))).collect();
    page.rows(0, &rows);
}

/// What the list might be instead, and how it is told in full.
fn tell_others(context: &Context, survey: &Survey, list: &WorkList, page: &mut Page) {
    if list.others.is_empty() {
        return;
    }
    page.heading(&context.word("other-lists"));
    for other in &list.others {
        let head =
            Phrase::new("other-head").phrase("name", other.name()).phrase("takes", other.takes(survey));
        page.item(0, &context.say(&head));
        for differs in other.differs(list) {
            page.item(2, &context.say(&differs));
        }
        let option = Phrase::new("desk-other-option").text("options", options(&other.without));
        page.paragraph(2, &context.say(&option));
    }
}

/// The options of this command that give a list.
fn options(without: &BTreeSet<Without>) -> String {
    let words: Vec<_> = without.iter().map(|kind| kind.name()).collect();
    let words = if words.is_empty() { vec!["nothing"] } else { words };
    words.iter().map(|word| format!("--without {word}")).collect::<Vec<_>>().join(" ")
}

/// Where each adapter goes, in words, once the cables are done.
fn tell_adapters(context: &Context, list: &WorkList, page: &mut Page) {
    let house = &list.house_when_done;
    if !are_adapters_to_place(house) {
        return;
    }
    page.heading(&context.word("adapters-to-place"));
    for adapter in adapters_to_come(house) {
        page.item(0, &adapter_in_words(context, house, &adapter));
    }
}
