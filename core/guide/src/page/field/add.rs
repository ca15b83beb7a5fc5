//! A new part: behind a port of another, between two that are joined there, or loose.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Feed, FeedFrom, Is, Part, PartKind, field};
use phrase::Phrase;

use super::edit::kind_offers;
use super::{builder, gone, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place};
use crate::question::{Answer, Told, free_tag, not_answered};
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// A part of a kind with the next free tag, not yet traced.
pub(super) fn loose(snapshot: &SurveySnapshot<'_>, kind: PartKind) -> (Answer, SubjectId) {
    let id = SubjectId::random();
    let answer = Answer::new().is(id, Is::Part).says(id, field::part::KIND, &kind);
    (answer.says(id, field::part::TAG, &free_tag(snapshot.survey, kind, 0)), id)
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, behind: Option<SubjectId>) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let Some(feeder) = behind else {
        let mut builder = builder(snapshot, &Phrase::new("free-new-part"));
        builder.words(WordsRole::Lead, &Phrase::new("free-new-loose"));
        draw_kind(&mut builder);
        return builder;
    };
    let Some(part) = survey.parts.get(&feeder) else { return gone(snapshot, "free-part") };
    let mut builder =
        builder(snapshot, &Phrase::new("free-new-behind").phrase("part", naming::part(survey, feeder)));
    if part.outputs() > 1 {
        let offer = |port: u8| {
            let before = survey.wiring.on_port(feeder, port).next();
            let words = Phrase::new(if before.is_some() { "free-port-before" } else { "free-port-free" });
            let words = naming::with_port(words, Some(part), port);
            let words =
                before.map_or(words.clone(), |child| words.phrase("part", naming::part(survey, child)));
            Offer::new(&port, words)
        };
        let offers = (1..=part.outputs()).map(offer).collect();
        let now = first_free(snapshot, part);
        builder.choice(&Key::Port, &Phrase::new("free-which-port"), false, offers, &now);
    } else if let Some(child) = survey.wiring.on_port(feeder, 1).next() {
        let between = Phrase::new("free-between").phrase("part", naming::part(survey, child));
        builder.words(WordsRole::How, &between);
    }
    draw_kind(&mut builder);
    builder
}

fn draw_kind(builder: &mut ScreenBuilder<'_>) {
    builder.choice(&Key::Kind, &Phrase::new("free-kind"), false, kind_offers(), None::<&PartKind>);
    builder.press(&Key::Make, &Phrase::new("free-add"), PressWeight::Main);
}

fn first_free(snapshot: &SurveySnapshot<'_>, part: &Part) -> Option<u8> {
    (1..=part.outputs()).find(|port| snapshot.survey.wiring.on_port(part.id, *port).next().is_none())
}

/// The new part, joined where it was said. What hung on that port hangs on the new part's first output.
fn make(snapshot: &SurveySnapshot<'_>, behind: Option<SubjectId>) -> Told<(Answer, SubjectId)> {
    let survey = snapshot.survey;
    let kind = snapshot.pending().one(&Key::Kind).ok_or_else(not_answered)?;
    let (mut answer, id) = loose(snapshot, kind);
    let Some(feeder) = behind.and_then(|part| survey.parts.get(&part)) else { return Ok((answer, id)) };
    if kind == PartKind::Entry {
        return Err(Phrase::new("free-entry-hangs-on-nothing"));
    }
    let picked = snapshot.pending().one(&Key::Port);
    let picked = picked.filter(|port| (1..=feeder.outputs()).contains(port));
    let port = picked.or_else(|| first_free(snapshot, feeder)).unwrap_or(1);
    let children: Vec<_> = survey.wiring.on_port(feeder.id, port).collect();
    let new = Part::new(id, kind);
    if !children.is_empty() && new.outputs() == 0 {
        return Err(Phrase::new("free-port-taken"));
    }
    let run = SubjectId::random();
    let feed = Feed::From(FeedFrom { part: feeder.id, port, run: Some(run) });
    answer = answer.is(run, Is::Run).says(id, field::part::FEED, &feed);
    for child in children {
        let run = survey.wiring.feed(child).and_then(|feed| feed.run);
        answer = answer.says(child, field::part::FEED, &Feed::From(FeedFrom { part: id, port: 1, run }));
    }
    if feeder.end(port).is_some() {
        answer.edits.push(field::END.clear(feeder.id, port));
    }
    Ok((answer, id))
}

pub(crate) fn pressed(session: &mut Session, behind: Option<SubjectId>, key: &Key) -> Result<Move> {
    if *key != Key::Make {
        return Ok(Move::Stay);
    }
    let (told, id) = match session.with_snapshot(|snapshot| make(snapshot, behind))? {
        Ok((answer, id)) => (Ok(answer), Some(id)),
        Err(problem) => (Err(problem), None),
    };
    let written = write(session, told)?;
    Ok(match id {
        Some(id) if written => Move::Swap(Place::Field(FieldPlace::Part(id))),
        _ => Move::Stay,
    })
}
