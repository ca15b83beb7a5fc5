//! The same house told anew: by somebody else, in another order.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::record::{Feed, Part, Survey};
use uuid::Uuid;

/// What was told of a house, with each id as the how-manieth that is met: ids are by chance, and all else is not.
pub fn with_ids_counted(told: &str) -> String {
    let mut met: Vec<&str> = Vec::new();
    let mut counted = String::new();
    let mut pieces = told.split("SubjectId(");
    counted.push_str(pieces.next().unwrap_or_default());
    for piece in pieces {
        let (id, rest) = piece.split_once(')').unwrap_or((piece, ""));
        let place = met.iter().position(|known| *known == id).unwrap_or_else(|| {
            met.push(id);
            met.len() - 1
        });
        counted.extend(["the id ", &place.to_string(), rest]);
    }
    counted
}

/// Tells a house anew: every part, run, room and service gets an id by chance, and they come in the order of these. What was
/// read and done keeps its time.
pub fn told_again(survey: &Survey, seed: u64) -> Survey {
    let under = Uuid::from_u128(u128::from(seed));
    let fresh = |id: SubjectId| SubjectId::from_uuid(Uuid::new_v5(&under, id.uuid().as_bytes()));
    let things = survey.parts.keys().chain(survey.runs.keys());
    let things = things.chain(survey.rooms.keys()).chain(survey.services.keys());
    let renamed: BTreeMap<_, _> = things.map(|id| (*id, fresh(*id))).collect();
    let new = |id: SubjectId| renamed.get(&id).copied().unwrap_or(id);
    let mut told = Survey::new(survey.id);
    told.name.clone_from(&survey.name);
    told.place.clone_from(&survey.place);
    told.internet = survey.internet;
    told.building = survey.building;
    told.network = survey.network.clone();
    told.photos = survey.photos.clone();
    told.done_since.clone_from(&survey.done_since);
    told.notes = survey.notes.clone();
    told.asked = survey.asked.iter().map(|((id, asked), said)| ((new(*id), *asked), said.clone())).collect();
    for part in survey.parts.values() {
        let mut part = part.clone();
        with_new_ids(&mut part, new);
        told.parts.insert(part.id, part);
    }
    for run in survey.runs.values() {
        let mut run = run.clone();
        run.id = new(run.id);
        told.runs.insert(run.id, run);
    }
    for room in survey.rooms.values() {
        let mut room = room.clone();
        room.id = new(room.id);
        room.served_from = room.served_from.map(new);
        told.rooms.insert(room.id, room);
    }
    for service in survey.services.values() {
        let mut service = service.clone();
        service.id = new(service.id);
        service.entry = service.entry.map(new);
        if let Some(power) = &mut service.power {
            power.from = new(power.from);
            power.to = new(power.to);
        }
        told.services.insert(service.id, service);
    }
    for (id, reading) in &survey.readings {
        let mut reading = reading.clone();
        reading.about = reading.about.map(new);
        told.readings.insert(*id, reading);
    }
    for (id, work) in &survey.works {
        let mut work = work.clone();
        work.change = work.change.with_ids(new);
        work.before.parts.iter_mut().for_each(|part| with_new_ids(part, new));
        work.before.runs.iter_mut().for_each(|run| run.id = new(run.id));
        told.works.insert(*id, work);
    }
    told.parts.sort_unstable_keys();
    told.runs.sort_unstable_keys();
    told.rooms.sort_unstable_keys();
    told.services.sort_unstable_keys();
    told.rewire();
    told
}

fn with_new_ids(part: &mut Part, new: impl Fn(SubjectId) -> SubjectId) {
    part.id = new(part.id);
    part.room = part.room.map(&new);
    if let Some(Feed::From(feed)) = &mut part.feed {
        feed.part = new(feed.part);
        feed.run = feed.run.map(new);
    }
}
