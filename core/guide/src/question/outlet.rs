//! Outlets: which room, what is plugged in, and those that nobody has come to yet.

use facts::fact::SubjectId;
use house::record::{PartKind, Plugged, field};
use phrase::Phrase;
use serde_json::json;

use super::{Answer, Question, Told, free_tag, not_answered};
use crate::place::{key_of, subject_of};
use crate::screen::WritingKind;
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

const DEVICES: [(&str, Plugged); 8] = [
    ("tv", Plugged::Tv),
    ("tv_box", Plugged::TvBox),
    ("modem", Plugged::Modem),
    ("moca_gateway", Plugged::MocaGateway),
    ("satellite_receiver", Plugged::SatelliteReceiver),
    ("fibre_box", Plugged::FibreBox),
    ("power_supply", Plugged::PowerSupply),
    ("other", Plugged::Other),
];

pub(super) fn draw_plugged(scene: &Scene<'_>, sketch: &mut Sketch<'_>, outlet: SubjectId) {
    let words = |key: &str| Phrase::new(format!("at-outlet-{key}"));
    let mut offers: Vec<_> = DEVICES.iter().map(|(key, _)| Offer::new(*key, words(key))).collect();
    offers.push(Offer::new("nothing", words("nothing")));
    offers.push(Offer::unsure());
    let plugged = scene.survey.parts.get(&outlet).and_then(|part| part.plugged.clone());
    let mut now: Vec<String> = DEVICES
        .iter()
        .filter(|(_, device)| plugged.iter().flatten().any(|there| there == device))
        .map(|(key, _)| (*key).to_owned())
        .collect();
    if plugged.as_ref().is_some_and(Vec::is_empty) {
        now.push("nothing".into());
    } else if plugged.is_none() && scene.survey.answer(outlet, "plugged").is_some() {
        now.push(UNSURE.into());
    }
    sketch.choice("plugged", &Question::Plugged(outlet).phrase(scene), true, offers, &now);
}

pub(super) fn take_plugged(scene: &Scene<'_>, outlet: SubjectId) -> Told<Answer> {
    let picked =
        scene.pending().picked("plugged").filter(|picked| !picked.is_empty()).ok_or_else(not_answered)?;
    if picked.iter().any(|one| one == UNSURE) {
        return Ok(Answer::new().asked(outlet, "plugged", UNSURE));
    }
    let devices: Vec<Plugged> = DEVICES
        .iter()
        .filter(|(key, _)| picked.iter().any(|one| one == key))
        .map(|(_, device)| *device)
        .collect();
    Answer::new().says(outlet, field::PLUGGED, &devices)
}

/// Every room, each under these words.
fn room_offers(scene: &Scene<'_>, words: impl Fn(&str) -> Phrase) -> Vec<Offer> {
    let mut rooms: Vec<_> = scene.survey.rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let offer = |room: &&house::record::Room| Offer::new(key_of("room", room.id), words(&room.name));
    rooms.iter().take(150).map(offer).collect()
}

pub(super) fn draw_room(scene: &Scene<'_>, sketch: &mut Sketch<'_>, outlet: SubjectId) {
    let room = scene.survey.parts.get(&outlet).and_then(|part| part.room);
    let now: Vec<_> = room.map(|room| key_of("room", room)).into_iter().collect();
    let offers = room_offers(scene, |room| Phrase::new("text").text("text", room));
    sketch.choice("room", &Question::RoomOf(outlet).phrase(scene), false, offers, &now);
    sketch.writing("new-room", &Phrase::new("room-new"), None, WritingKind::Name, "");
}

pub(super) fn take_room(scene: &Scene<'_>, outlet: SubjectId) -> Told<Answer> {
    let pending = scene.pending();
    if let Some(name) = pending.written("new-room").filter(|name| !name.is_empty()) {
        let id = SubjectId::random();
        let answer = Answer::new().is(id, "room").plain(id, field::NAME, json!(name));
        return Ok(answer.plain(outlet, field::ROOM, json!(id)));
    }
    let room = pending.one("room").and_then(|key| subject_of(key, "room")).ok_or_else(not_answered)?;
    Ok(Answer::new().plain(outlet, field::ROOM, json!(room)))
}

pub(super) fn draw_more(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let mut offers = vec![Offer::new("no", Phrase::new("more-outlets-no"))];
    offers.extend(room_offers(scene, |room| Phrase::new("leads-room").text("room", room)));
    offers.push(Offer::unsure());
    sketch.choice("more", &Phrase::new("ask-more-outlets"), true, offers, &[]);
}

/// Outlets found that nobody has traced yet: loose parts, to be joined later.
pub(super) fn take_more(scene: &Scene<'_>) -> Told<Answer> {
    let picked =
        scene.pending().picked("more").filter(|picked| !picked.is_empty()).ok_or_else(not_answered)?;
    let told = if picked.iter().any(|one| one == UNSURE) { UNSURE } else { "no" };
    let mut answer = Answer::new().asked(scene.survey.id, "more-outlets", told);
    for (skip, room) in picked.iter().filter_map(|key| subject_of(key, "room")).enumerate() {
        let id = SubjectId::random();
        answer = answer.is(id, "part").says(id, field::KIND, &PartKind::Outlet)?;
        answer = answer.plain(id, field::TAG, json!(free_tag(scene.survey, PartKind::Outlet, skip)));
        answer = answer.plain(id, field::ROOM, json!(room));
    }
    Ok(answer)
}
