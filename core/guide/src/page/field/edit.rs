//! What a part is, what its tape says, and where it is.

use facts::fact::SubjectId;
use house::naming;
use house::record::{EntryKind, Part, PartKind, Worded, field};
use phrase::Phrase;

use super::{builder, gone, write};
use crate::error::Result;
use crate::place::{Key, Move};
use crate::question::Answer;
use crate::screen::{PressWeight, WritingKind};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// Every kind of part, in the order in which it is offered.
const KINDS: [PartKind; 14] = [
    PartKind::Splitter,
    PartKind::Outlet,
    PartKind::Amplifier,
    PartKind::Tap,
    PartKind::EntryFilter,
    PartKind::GroundBlock,
    PartKind::Barrel,
    PartKind::Terminator,
    PartKind::Pad,
    PartKind::HighPassFilter,
    PartKind::SatelliteCombiner,
    PartKind::PowerInserter,
    PartKind::Entry,
    PartKind::Unknown,
];

const ENTRIES: [EntryKind; 5] =
    [EntryKind::Cable, EntryKind::Antenna, EntryKind::Satellite, EntryKind::FibreBox, EntryKind::Unknown];

/// The kinds as options.
pub(super) fn kind_offers() -> Vec<Offer> {
    let words = |kind| naming::kind(&Part::new(SubjectId::random(), kind));
    KINDS.iter().map(|kind| Offer::new(kind, words(*kind))).collect()
}

/// The rooms as options, by name.
pub(super) fn room_offers(snapshot: &SurveySnapshot<'_>) -> Vec<Offer> {
    let mut rooms: Vec<_> = snapshot.survey.rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let offer =
        |room: &&house::record::Room| Offer::new(&Key::Room(room.id), naming::of_room(snapshot.survey, room));
    rooms.iter().take(120).map(offer).collect()
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let Some(part) = survey.parts.get(&id) else {
        return gone(snapshot, "free-part");
    };
    let mut builder =
        builder(snapshot, &Phrase::new("free-edit-part").phrase("part", naming::part(survey, id)));
    let tag = part.tag.clone().unwrap_or_default();
    builder.writing(
        &Key::Tag,
        &Phrase::new("free-tag"),
        Some(&Phrase::new("free-tag.hint")),
        WritingKind::Tag,
        &tag,
    );
    let place = part.place.clone().unwrap_or_default();
    builder.writing(
        &Key::Where,
        &Phrase::new("free-where"),
        Some(&Phrase::new("free-where.hint")),
        WritingKind::Name,
        &place,
    );
    if !survey.rooms.is_empty() {
        let now = part.room.map(Key::Room);
        builder.choice(&Key::InRoom, &Phrase::new("free-room-of"), false, room_offers(snapshot), &now);
    }
    builder.choice(&Key::Kind, &Phrase::new("free-kind"), false, kind_offers(), &[part.kind]);
    if part.kind == PartKind::Entry {
        let words = |kind: &EntryKind| kind.phrase();
        let offers = ENTRIES.iter().map(|kind| Offer::new(kind, words(kind))).collect();
        builder.choice(&Key::EntryKind, &Phrase::new("free-entry-kind"), false, offers, &[part.entry_kind]);
    }
    builder.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Main);
    builder
}

fn edits(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Answer {
    let pending = snapshot.pending();
    let mut answer = Answer::new();
    for (key, field) in [(Key::Tag, field::part::TAG), (Key::Where, field::part::WHERE)] {
        if let Some(text) = pending.written(&key) {
            answer.edits.push(field.put(id, (!text.is_empty()).then_some(text)));
        }
    }
    if let Some(Key::Room(room)) = pending.one(&Key::InRoom) {
        answer = answer.says(id, field::part::ROOM, &room);
    }
    if let Some(kind) = pending.one::<PartKind>(&Key::Kind) {
        answer = answer.says(id, field::part::KIND, &kind);
    }
    if let Some(kind) = pending.one::<EntryKind>(&Key::EntryKind) {
        answer = answer.says(id, field::part::ENTRY_KIND, &kind);
    }
    answer
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    if *key != Key::Save {
        return Ok(Move::Stay);
    }
    let told = session.with_snapshot(|snapshot| edits(snapshot, id))?;
    Ok(if write(session, Ok(told))? { Move::Back } else { Move::Stay })
}
