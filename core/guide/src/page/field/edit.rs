//! What a part is, what its tape says, and where it is.

use facts::fact::{Edit, SubjectId};
use house::naming;
use house::record::{EntryKind, Part, PartKind, field};
use phrase::Phrase;
use serde_json::{Value, json};

use super::{gone, sketch, write};
use crate::error::Result;
use crate::place::{Move, key_of, subject_of};
use crate::question::{Answer, Told};
use crate::screen::{PressWeight, WritingKind};
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch};

/// Every kind of part, in the order in which it is offered.
pub(super) const KINDS: [(&str, PartKind); 14] = [
    ("splitter", PartKind::Splitter),
    ("outlet", PartKind::Outlet),
    ("amplifier", PartKind::Amplifier),
    ("tap", PartKind::Tap),
    ("entry_filter", PartKind::EntryFilter),
    ("ground_block", PartKind::GroundBlock),
    ("barrel", PartKind::Barrel),
    ("terminator", PartKind::Terminator),
    ("pad", PartKind::Pad),
    ("high_pass_filter", PartKind::HighPassFilter),
    ("satellite_combiner", PartKind::SatelliteCombiner),
    ("power_inserter", PartKind::PowerInserter),
    ("entry", PartKind::Entry),
    ("unknown", PartKind::Unknown),
];

const ENTRIES: [(&str, EntryKind); 5] = [
    ("cable", EntryKind::Cable),
    ("antenna", EntryKind::Antenna),
    ("satellite", EntryKind::Satellite),
    ("fibre_box", EntryKind::FibreBox),
    ("unknown", EntryKind::Unknown),
];

/// The kinds as options.
pub(super) fn kind_offers() -> Vec<Offer> {
    let words = |kind| naming::kind(&Part::new(SubjectId::random(), kind));
    KINDS.iter().map(|(key, kind)| Offer::new(*key, words(*kind))).collect()
}

/// The kind that a key names.
pub(super) fn kind_of(key: &str) -> Option<PartKind> {
    KINDS.iter().find(|(of, _)| *of == key).map(|(_, kind)| *kind)
}

/// The rooms as options, by name.
pub(super) fn room_offers(scene: &Scene<'_>) -> Vec<Offer> {
    let mut rooms: Vec<_> = scene.survey.rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let offer = |room: &&house::record::Room| Offer::new(key_of("room", room.id), super::text(&room.name));
    rooms.iter().take(120).map(offer).collect()
}

fn key_of_kind(kind: PartKind) -> &'static str {
    KINDS.iter().find(|(_, of)| *of == kind).map_or("unknown", |(key, _)| key)
}

fn key_of_entry(kind: EntryKind) -> &'static str {
    ENTRIES.iter().find(|(_, of)| *of == kind).map_or("unknown", |(key, _)| key)
}

pub(crate) fn show<'a>(scene: &Scene<'a>, id: SubjectId) -> Sketch<'a> {
    let survey = scene.survey;
    let Some(part) = survey.parts.get(&id) else {
        return gone(scene, "free-part");
    };
    let mut sketch = sketch(scene, &Phrase::new("free-edit-part").phrase("part", naming::part(survey, id)));
    let tag = part.tag.clone().unwrap_or_default();
    sketch.writing(
        "tag",
        &Phrase::new("free-tag"),
        Some(&Phrase::new("free-tag.hint")),
        WritingKind::Tag,
        &tag,
    );
    let place = part.place.clone().unwrap_or_default();
    sketch.writing(
        "where",
        &Phrase::new("free-where"),
        Some(&Phrase::new("free-where.hint")),
        WritingKind::Name,
        &place,
    );
    if !survey.rooms.is_empty() {
        let now: Vec<_> = part.room.map(|room| key_of("room", room)).into_iter().collect();
        sketch.choice("room", &Phrase::new("free-room-of"), false, room_offers(scene), &now);
    }
    let now = [key_of_kind(part.kind).to_owned()];
    sketch.choice("kind", &Phrase::new("free-kind"), false, kind_offers(), &now);
    if part.kind == PartKind::Entry {
        let words = |key: &str| Phrase::new(format!("value-entry_kind-{key}"));
        let offers = ENTRIES.iter().map(|(key, _)| Offer::new(*key, words(key))).collect();
        let now = [key_of_entry(part.entry_kind).to_owned()];
        sketch.choice("entry-kind", &Phrase::new("free-entry-kind"), false, offers, &now);
    }
    sketch.press("save", &Phrase::new("free-save"), PressWeight::Main);
    sketch
}

fn edits(scene: &Scene<'_>, id: SubjectId) -> Told<Answer> {
    let pending = scene.pending();
    let mut answer = Answer::new();
    for (key, name) in [("tag", field::TAG), ("where", field::WHERE)] {
        if let Some(text) = pending.written(key) {
            let value = if text.is_empty() { Value::Null } else { json!(text) };
            answer.edits.push(Edit::new(id, name, value));
        }
    }
    if let Some(room) = pending.one("room").and_then(|key| subject_of(key, "room")) {
        answer = answer.plain(id, field::ROOM, json!(room));
    }
    if let Some(kind) = pending.one("kind").and_then(kind_of) {
        answer = answer.says(id, field::KIND, &kind)?;
    }
    let entry = pending.one("entry-kind");
    if let Some((_, kind)) = ENTRIES.iter().find(|(key, _)| Some(*key) == entry) {
        answer = answer.says(id, field::ENTRY_KIND, kind)?;
    }
    Ok(answer)
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &str) -> Result<Move> {
    if key != "save" {
        return Ok(Move::Stay);
    }
    let told = session.with_scene(|scene| edits(scene, id))?;
    Ok(if write(session, told)? { Move::Back } else { Move::Stay })
}
