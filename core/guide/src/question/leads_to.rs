//! Where a port of a part leads: to an outlet in a room, to a splitter, to nothing.

use advice::finding::Caution;
use facts::fact::{Edit, SubjectId};
use house::naming;
use house::record::reading_order;
use house::record::{Feed, FeedFrom, LooseReason, PartKind, PortEnd, RunLength, Survey, field};
use phrase::Phrase;
use serde_json::{Value, json};

use super::{Answer, Question, Told, not_answered};
use crate::place::{key_of, subject_of};
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

/// What else a cable may lead to.
const PARTS: [(&str, PartKind); 4] = [
    ("splitter", PartKind::Splitter),
    ("amplifier", PartKind::Amplifier),
    ("tap", PartKind::Tap),
    ("other", PartKind::Unknown),
];

/// A tag that nothing carries yet: the kind's letter and the next number, `skip` numbers further on.
pub(crate) fn free_tag(survey: &Survey, kind: PartKind, skip: usize) -> String {
    let letter = match kind {
        PartKind::Entry => "E",
        PartKind::GroundBlock => "G",
        PartKind::EntryFilter | PartKind::HighPassFilter => "F",
        PartKind::Splitter => "S",
        PartKind::Tap => "T",
        PartKind::Amplifier | PartKind::PowerInserter => "A",
        PartKind::Outlet => "O",
        _ => "P",
    };
    let taken = |tag: &str| {
        survey.parts.values().any(|part| part.tag.as_deref() == Some(tag))
            || survey.runs.values().any(|run| run.tag.as_deref() == Some(tag))
    };
    let free = (1..).map(|number| format!("{letter}{number}")).filter(|tag| !taken(tag)).nth(skip);
    free.unwrap_or_default()
}

pub(super) fn draw(scene: &Scene<'_>, sketch: &mut Sketch<'_>, part: SubjectId, port: u8) {
    let survey = scene.survey;
    // An outlet that was found already and waits for its feed stands for its room.
    let waits = |room: SubjectId| {
        loose(scene, part).any(|id| survey.parts.get(&id).is_some_and(|part| part.room == Some(room)))
    };
    let mut rooms: Vec<_> = survey.rooms.values().filter(|room| !waits(room.id)).collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let mut offers: Vec<_> = rooms
        .iter()
        .take(100)
        .map(|room| Offer::new(key_of("room", room.id), Phrase::new("leads-room").text("room", &room.name)))
        .collect();
    offers.push(Offer::new("outlet", Phrase::new("leads-outlet")));
    let words = |key: &str| Phrase::new(format!("leads-{key}"));
    offers.extend(
        PARTS.iter().map(|(key, _)| Offer::new(*key, words(key)).about(words(key).attribute("about"))),
    );
    offers.extend(loose(scene, part).take(40).map(|id| {
        Offer::new(key_of("part", id), Phrase::new("leads-part").phrase("part", naming::part(survey, id)))
    }));
    let ends = ["capped", "open"].into_iter().filter(|_| may_end(survey, part));
    offers.extend(ends.map(|key| Offer::new(key, words(key)).about(words(key).attribute("about"))));
    offers.push(Offer::new("loose_end", words("loose_end")));
    let now: Vec<_> = current(scene, part, port).into_iter().collect();
    sketch.choice("leads", &Question::LeadsTo(part, port).phrase(scene), false, offers, &now);
    super::house::caution_of_dependents(scene, sketch);
    sketch.caution(&Caution::SuppliesFirst.phrase());
}

/// Whether a port of a part may well have nothing on it; the chain at the entry goes on.
fn may_end(survey: &Survey, part: SubjectId) -> bool {
    survey.parts.get(&part).is_some_and(|part| {
        part.outputs() > 1
            || !matches!(part.kind, PartKind::Entry | PartKind::GroundBlock | PartKind::EntryFilter)
    })
}

/// Parts that nobody has traced to a feed and that do not feed `part` themselves.
fn loose<'a>(scene: &Scene<'a>, part: SubjectId) -> impl Iterator<Item = SubjectId> + 'a {
    let head = scene.survey.wiring.head_of(part);
    let loose = scene.survey.wiring.loose();
    let not_traced = move |id: &SubjectId| loose.get(id) == Some(&LooseReason::NotTraced) && *id != head;
    reading_order(scene.survey).into_iter().filter(not_traced)
}

/// The key of what stands in the survey.
fn current(scene: &Scene<'_>, part: SubjectId, port: u8) -> Option<String> {
    let survey = scene.survey;
    if let Some(child) = survey.wiring.on_port(part, port).next() {
        let child = survey.parts.get(&child)?;
        return Some(match (child.kind, child.room) {
            (PartKind::Outlet, Some(room)) => key_of("room", room),
            (PartKind::Outlet, None) => "outlet".into(),
            (kind, _) => PARTS.iter().find(|(_, of)| *of == kind).map_or("other", |(key, _)| *key).into(),
        });
    }
    match survey.parts.get(&part)?.end(port)? {
        PortEnd::Capped => Some("capped".into()),
        PortEnd::Open => Some("open".into()),
        PortEnd::LooseEnd => Some("loose_end".into()),
    }
}

pub(super) fn take(scene: &Scene<'_>, part: SubjectId, port: u8) -> Told<Answer> {
    let picked = scene.pending().one("leads").ok_or_else(not_answered)?;
    let child = scene.survey.wiring.on_port(part, port).next();
    if child.is_some() && current(scene, part, port).as_deref() == Some(picked) {
        return Ok(Answer::new());
    }
    let end = match picked {
        "capped" => Some(PortEnd::Capped),
        "open" => Some(PortEnd::Open),
        "loose_end" | UNSURE => Some(PortEnd::LooseEnd),
        _ => None,
    };
    if let Some(end) = end {
        let answer = clear(scene, Answer::new(), child);
        return answer.says(part, field::end_field(port), &end);
    }
    let room = subject_of(picked, "room");
    let is_outlet = room.is_some() || picked == "outlet";
    // An outlet that turns out to be in another room stays the outlet that it is.
    let there = child.and_then(|child| scene.survey.parts.get(&child));
    if let Some(outlet) = there.filter(|there| is_outlet && there.kind == PartKind::Outlet) {
        return Ok(Answer::new().plain(outlet.id, field::ROOM, room.map_or(Value::Null, |room| json!(room))));
    }
    let mut answer = clear(scene, Answer::new(), child);
    if scene.survey.parts.get(&part).is_some_and(|part| part.end(port).is_some()) {
        answer.edits.push(Edit::new(part, field::end_field(port), Value::Null));
    }
    if let Some(loose) = subject_of(picked, "part") {
        return join(answer, loose, part, port);
    }
    let kind = if is_outlet {
        PartKind::Outlet
    } else {
        PARTS.iter().find(|(key, _)| *key == picked).ok_or_else(not_answered)?.1
    };
    let id = SubjectId::random();
    answer = answer.is(id, "part").says(id, field::KIND, &kind)?;
    answer = answer.plain(id, field::TAG, json!(free_tag(scene.survey, kind, 0)));
    if let Some(room) = room {
        answer = answer.plain(id, field::ROOM, json!(room));
    }
    join(answer, id, part, port)
}

/// Feeds `child` from a port over a cable of which nothing is known yet.
pub(super) fn join(answer: Answer, child: SubjectId, part: SubjectId, port: u8) -> Told<Answer> {
    let run = SubjectId::random();
    answer.is(run, "run").says(child, field::FEED, &Feed::From(FeedFrom { part, port, run: Some(run) }))
}

/// A cable as short as a hand between two parts that are screwed to each other (common practice, no source).
pub(super) fn jumper(answer: Answer) -> Told<(Answer, SubjectId)> {
    let run = SubjectId::random();
    let length = RunLength {
        metres: 0.3,
        low_metres: 0.05,
        high_metres: 1.0,
        known: house::record::LengthKnown::Guessed,
    };
    Ok((answer.is(run, "run").says(run, field::LENGTH, &length)?, run))
}

/// Makes room on a port: what hung there and says nothing yet is removed, anything else becomes loose. Both can be
/// taken back.
fn clear(scene: &Scene<'_>, mut answer: Answer, child: Option<SubjectId>) -> Answer {
    let Some(child) = child else { return answer };
    let survey = scene.survey;
    let says_something = survey.parts.get(&child).is_none_or(|part| {
        part.label.is_some() || part.plugged.is_some() || part.adapter.is_some() || !part.ends.is_empty()
    }) || !survey.wiring.fed_from(child).is_empty()
        || survey.photos_of(Some(child)).next().is_some()
        || survey.notes_on(Some(child)).next().is_some();
    if says_something {
        answer.edits.push(Edit::new(child, field::FEED, Value::Null));
        return answer;
    }
    if let Some(run) = survey.wiring.feed(child).and_then(|feed| feed.run) {
        answer.edits.push(scene.ledger.remove(run));
    }
    answer.edits.push(scene.ledger.remove(child));
    answer
}
