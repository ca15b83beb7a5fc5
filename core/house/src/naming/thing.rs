//! What everything is called that facts speak of, be it a part or not.

use std::sync::Arc;

use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use super::{mark, part, run_to};
use crate::record::{Part, Reading, ReadingKind, Room, Service, Survey};

/// How much of a note stands for it.
const NOTE_BEGINS: usize = 40;

/// Anything that a fact speaks of: a part, a cable, a room, the survey.
pub fn thing(survey: &Survey, subject: SubjectId) -> Phrase {
    if let Some(place) = place(survey, subject) {
        return place;
    }
    if let Some(note) = survey.notes.get(&subject) {
        let short: String = note.text.chars().take(NOTE_BEGINS).collect();
        return match note.about.and_then(|about| place(survey, about)) {
            _ if short == note.text && !short.trim().is_empty() => {
                Phrase::new("told-note").text("text", short)
            }
            _ if !short.trim().is_empty() => Phrase::new("told-note-longer").text("text", short),
            Some(about) => Phrase::new("thing-note-on").phrase("thing", about),
            None => Phrase::new("thing-note"),
        };
    }
    if let Some(photo) = survey.photos.get(&subject) {
        return match photo.of.and_then(|of| place(survey, of)) {
            Some(of) => Phrase::new("told-photo-of").phrase("thing", of),
            None => match &photo.file_name {
                Some(file) => Phrase::new("thing-photo-file").text("file", file),
                None => Phrase::new("thing-photo"),
            },
        };
    }
    if let Some(found) = survey.readings.get(&subject) {
        return reading_taken(survey, found);
    }
    if let Some(found) = survey.services.get(&subject) {
        return one_service(survey, found);
    }
    if let Some(work) = survey.works.get(&subject) {
        return Phrase::new("thing-work").phrase("what", work.what(survey));
    }
    if let Some(measured) = survey.measurements.get(&subject) {
        let is_of = |part: &&Part| part.measured.as_ref().is_some_and(|of| Arc::ptr_eq(of, measured));
        return match survey.parts.values().find(is_of) {
            Some(of) => Phrase::new("thing-measurement-of").phrase("part", mark(survey, of.id)),
            None => Phrase::new("thing-measurement"),
        };
    }
    Phrase::new(if subject == survey.id { "thing-survey" } else { "thing-gone" })
}

/// Whether a survey has a record of this subject, from which its name comes.
pub fn knows(survey: &Survey, subject: SubjectId) -> bool {
    subject == survey.id
        || survey.parts.contains_key(&subject)
        || survey.runs.contains_key(&subject)
        || survey.rooms.contains_key(&subject)
        || survey.services.contains_key(&subject)
        || survey.notes.contains_key(&subject)
        || survey.photos.contains_key(&subject)
        || survey.readings.contains_key(&subject)
        || survey.works.contains_key(&subject)
        || survey.measurements.contains_key(&subject)
}

/// What other things are about: a part, a cable or a room.
fn place(survey: &Survey, subject: SubjectId) -> Option<Phrase> {
    if survey.parts.contains_key(&subject) {
        return Some(part(survey, subject));
    }
    if survey.runs.contains_key(&subject) {
        return Some(run(survey, subject));
    }
    let room = survey.rooms.get(&subject)?;
    Some(if room.name.trim().is_empty() {
        of_room(survey, room)
    } else {
        Phrase::new("thing-room").text("name", &room.name)
    })
}

/// A cable: by what it joins, or by its tag where it joins nothing.
pub fn run(survey: &Survey, id: SubjectId) -> Phrase {
    if let Some(part) = survey.wiring.fed_over(id) {
        return run_to(survey, part);
    }
    match survey.runs.get(&id).and_then(|run| run.tag.as_ref()) {
        Some(tag) => Phrase::new("thing-run").text("tag", tag),
        None => Phrase::new("thing-run-untagged"),
    }
}

/// A room: its name, or the outlets in it where it has none.
pub fn room(survey: &Survey, id: SubjectId) -> Phrase {
    survey.rooms.get(&id).map_or_else(|| Phrase::new("room-unnamed"), |room| of_room(survey, room))
}

/// The room at hand.
pub fn of_room(survey: &Survey, room: &Room) -> Phrase {
    if !room.name.trim().is_empty() {
        return Phrase::new("room-named").text("name", &room.name);
    }
    let outlets = survey.parts.values().filter(|part| part.room == Some(room.id));
    let outlets: Vec<_> = outlets.map(|part| Arg::Phrase(Box::new(mark(survey, part.id)))).collect();
    if outlets.is_empty() {
        return Phrase::new("room-unnamed");
    }
    Phrase::new("room-of").with("outlets", Arg::Several(outlets))
}

/// A reading, by what was read and where.
fn reading_taken(survey: &Survey, reading: &Reading) -> Phrase {
    let at = match (reading.about, reading.port) {
        (Some(about), Some(port)) if survey.parts.contains_key(&about) => super::port(survey, about, port),
        (Some(about), _) if survey.parts.contains_key(&about) => mark(survey, about),
        _ => Phrase::new("naming-house"),
    };
    let (what, mhz) = match reading.measured {
        ReadingKind::Level { mhz, .. } => ("level", Some(mhz)),
        ReadingKind::ErrorRatio { mhz, .. } => ("error_ratio", Some(mhz)),
        ReadingKind::ModemSends { .. } => ("modem_sends", None),
        ReadingKind::Throughput { .. } => ("throughput", None),
        ReadingKind::PhyRate { .. } => ("phy_rate", None),
        ReadingKind::RoundTrip { .. } => ("round_trip", None),
        ReadingKind::Power { .. } => ("power", None),
        ReadingKind::NodesSeen { .. } => ("nodes_seen", None),
        ReadingKind::PacketLoss { .. } => ("packet_loss", None),
        ReadingKind::Link { .. } => ("link", None),
        ReadingKind::Swings { .. } => ("swings", None),
    };
    let phrase = Phrase::new(format!("thing-reading-{what}")).phrase("place", at);
    match mhz {
        Some(mhz) => phrase.with("frequency", Arg::Frequency(mhz)),
        None => phrase,
    }
}

/// A service: what it is, and where it comes in if another of its kind comes in elsewhere.
fn one_service(survey: &Survey, service: &Service) -> Phrase {
    let alike = survey.services_of(service.kind).count();
    match service.entry.filter(|entry| alike > 1 && survey.parts.contains_key(entry)) {
        Some(entry) => Phrase::new("service-at")
            .phrase("service", super::service(service.kind))
            .phrase("entry", mark(survey, entry)),
        None => super::service(service.kind),
    }
}
