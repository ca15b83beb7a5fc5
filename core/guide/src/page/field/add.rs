//! A new part: behind a port of another, between two that are joined there, or loose.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Feed, FeedFrom, Is, Part, PartKind, field};
use phrase::{Arg, Phrase};

use super::edit::kind_offers;
use super::{gone, sketch, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place};
use crate::question::{Answer, Told, free_tag, not_answered};
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch};

/// A part of a kind with the next free tag, not yet traced.
pub(super) fn loose(scene: &Scene<'_>, kind: PartKind) -> (Answer, SubjectId) {
    let id = SubjectId::random();
    let answer = Answer::new().is(id, Is::Part).says(id, field::part::KIND, &kind);
    (answer.says(id, field::part::TAG, &free_tag(scene.survey, kind, 0)), id)
}

pub(crate) fn show<'a>(scene: &Scene<'a>, behind: Option<SubjectId>) -> Sketch<'a> {
    let survey = scene.survey;
    let Some(feeder) = behind else {
        let mut sketch = sketch(scene, &Phrase::new("free-new-part"));
        sketch.words(WordsRole::Lead, &Phrase::new("free-new-loose"));
        draw_kind(&mut sketch);
        return sketch;
    };
    let Some(part) = survey.parts.get(&feeder) else { return gone(scene, "free-part") };
    let mut sketch =
        sketch(scene, &Phrase::new("free-new-behind").phrase("part", naming::part(survey, feeder)));
    if part.outputs() > 1 {
        let offer = |port: u8| {
            let before = survey.wiring.on_port(feeder, port).next();
            let words = Phrase::new(if before.is_some() { "free-port-before" } else { "free-port-free" })
                .with("port", Arg::Count(u64::from(port)));
            let words =
                before.map_or(words.clone(), |child| words.phrase("part", naming::part(survey, child)));
            Offer::new(&port, words)
        };
        let offers = (1..=part.outputs()).map(offer).collect();
        let now = first_free(scene, part);
        sketch.choice(&Key::Port, &Phrase::new("free-which-port"), false, offers, &now);
    } else if let Some(child) = survey.wiring.on_port(feeder, 1).next() {
        let between = Phrase::new("free-between").phrase("part", naming::part(survey, child));
        sketch.words(WordsRole::How, &between);
    }
    draw_kind(&mut sketch);
    sketch
}

fn draw_kind(sketch: &mut Sketch<'_>) {
    sketch.choice(&Key::Kind, &Phrase::new("free-kind"), false, kind_offers(), None::<&PartKind>);
    sketch.press(&Key::Make, &Phrase::new("free-add"), PressWeight::Main);
}

fn first_free(scene: &Scene<'_>, part: &Part) -> Option<u8> {
    (1..=part.outputs()).find(|port| scene.survey.wiring.on_port(part.id, *port).next().is_none())
}

/// The new part, joined where it was said. What hung on that port hangs on the new part's first output.
fn make(scene: &Scene<'_>, behind: Option<SubjectId>) -> Told<(Answer, SubjectId)> {
    let survey = scene.survey;
    let kind = scene.pending().one(&Key::Kind).ok_or_else(not_answered)?;
    let (mut answer, id) = loose(scene, kind);
    let Some(feeder) = behind.and_then(|part| survey.parts.get(&part)) else { return Ok((answer, id)) };
    if kind == PartKind::Entry {
        return Err(Phrase::new("free-entry-hangs-on-nothing"));
    }
    let picked = scene.pending().one(&Key::Port);
    let picked = picked.filter(|port| (1..=feeder.outputs()).contains(port));
    let port = picked.or_else(|| first_free(scene, feeder)).unwrap_or(1);
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
    let (told, id) = match session.with_scene(|scene| make(scene, behind))? {
        Ok((answer, id)) => (Ok(answer), Some(id)),
        Err(problem) => (Err(problem), None),
    };
    let written = write(session, told)?;
    Ok(match id {
        Some(id) if written => Move::Swap(Place::Field(FieldPlace::Part(id))),
        _ => Move::Stay,
    })
}
