//! What was read from photos of labels, in words.

use facts::photo::Area;
use label::Doubt;
use label::seen::{JacketLength, NoLength, SeenMember, SeenNumber, SeenPlace, Unsure};
use phrase::{Arg, Phrase};
use print::Turn;

use super::photo::Told;
use super::rows::{self, Row};
use crate::command::context::Context;
use crate::error::DeskError;
use crate::output;
use crate::printed::Page;

/// Tells all of it, and that it is a suggestion.
pub fn tell(
    context: &Context,
    told: &[Told],
    length: Option<&Result<JacketLength, NoLength>>,
) -> Result<(), DeskError> {
    let mut page = Page::for_output();
    for photo in told {
        tell_one(context, &mut page, photo);
    }
    if let Some(length) = length {
        page.title(&context.word("desk-label-length"));
        page.rows(2, &of_length(context, length));
    }
    page.gap();
    page.paragraph(0, &context.word("desk-label-suggestion"));
    output::say_page(page)
}

fn tell_one(context: &Context, page: &mut Page, photo: &Told) {
    let seen = &photo.read.suggestion;
    page.title(&photo.file.display().to_string());
    let mut told: Vec<(String, String)> = Vec::new();
    under(&mut told, context.word("desk-label-text"), seen.text.lines().map(str::to_owned));
    let turn = photo.read.turn();
    if turn != Turn::Upright {
        let turned = Phrase::new("desk-label-turned-by").text("degrees", turn.degrees().to_string());
        told.push((context.word("desk-label-turned"), context.say(&turned)));
    }
    for row in rows::of(context, &seen.reading) {
        let lines = of_row(context, photo, &row);
        under(&mut told, row.name, lines);
    }
    for mark in seen.marks() {
        under(&mut told, context.word("desk-label-mark"), of_mark(context, photo, mark));
    }
    page.rows(2, &told);
    // A mark is none of what a rating is read from, and still it was read.
    let has_marks = seen.marks().next().is_some();
    let is_told = |doubt: &&Doubt| !(has_marks && **doubt == Doubt::NothingRead);
    let doubts: Vec<Doubt> = seen.reading.doubts.iter().filter(is_told).cloned().collect();
    for doubt in telling::doubts::said(&doubts, &context.language) {
        page.item(2, &context.say(&Phrase::new("desk-label-doubt").text("doubt", doubt)));
    }
}

/// Lines below each other, the first beside the name.
fn under(rows: &mut Vec<(String, String)>, name: String, lines: impl IntoIterator<Item = String>) {
    let mut names = std::iter::once(name).chain(std::iter::repeat(String::new()));
    rows.extend(lines.into_iter().filter_map(|line| Some((names.next()?, line))));
}

/// What a row tells, whether it is sure, why not, and where it stands.
fn of_row(context: &Context, photo: &Told, row: &Row) -> Vec<String> {
    let seen: Vec<(&SeenMember, &str)> = row
        .members
        .iter()
        .filter_map(|(member, told)| {
            let members = &photo.read.suggestion.members;
            Some((members.iter().find(|seen| seen.member == *member)?, told.as_str()))
        })
        .collect();
    let is_sure = seen.iter().all(|(seen, _)| seen.is_sure());
    let mut lines = vec![marked(context, &row.value, is_sure)];
    for (seen, told) in &seen {
        // Of a band it may be one edge only.
        let of = (row.members.len() > 1).then_some(*told);
        lines.extend(seen.unsure.iter().map(|why| said_of(context, of, &why.phrase())));
    }
    let places = seen.iter().flat_map(|(seen, _)| &seen.places);
    lines.extend(at(context, photo, places));
    lines
}

fn of_mark(context: &Context, photo: &Told, mark: &SeenNumber) -> Vec<String> {
    let value = Phrase::new("desk-label-mark-value")
        .text("mark", mark.written.clone())
        .text("unit", mark.unit.symbol());
    let mut lines = vec![marked(context, &context.say(&value), mark.is_sure())];
    lines.extend(mark.unsure.iter().map(Unsure::phrase).map(|why| context.say(&why)));
    lines.extend(at(context, photo, [&mark.place]));
    lines
}

fn of_length(context: &Context, length: &Result<JacketLength, NoLength>) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let lines = match length {
        Ok(length) => {
            let told = context.language.write(&Arg::Length(length.metres));
            let first = marked(context, &told, length.unsure.is_empty());
            let whys = length.unsure.iter().map(|why| context.say(&why.phrase()));
            std::iter::once(first).chain(whys).collect()
        }
        Err(why) => vec![context.say(&why.phrase())],
    };
    under(&mut rows, context.word("desk-label-between"), lines);
    rows
}

fn marked(context: &Context, value: &str, is_sure: bool) -> String {
    let id = if is_sure { "desk-label-sure" } else { "desk-label-asked" };
    context.say(&Phrase::new(id).text("value", value))
}

fn said_of(context: &Context, of: Option<&str>, why: &Phrase) -> String {
    match of {
        None => context.say(why),
        Some(of) => context.say(&Phrase::new("desk-label-why-of").text("of", of).phrase("why", why.clone())),
    }
}

/// Where in the photo something stands, a line a place; nothing where it is told by words.
fn at<'p>(context: &Context, photo: &Told, places: impl IntoIterator<Item = &'p SeenPlace>) -> Vec<String> {
    let mut areas: Vec<Area> = Vec::new();
    for area in places.into_iter().filter_map(|place| photo.area(place)) {
        if !areas.contains(&area) {
            areas.push(area);
        }
    }
    let told = |Area { left, top, width, height }| {
        let place = Phrase::new("desk-label-at").text("place", format!("{left},{top},{width},{height}"));
        context.say(&place)
    };
    areas.into_iter().map(told).collect()
}
