//! All rooms, and one room: its name, what is wished for, from where it is served.

use facts::fact::SubjectId;
use house::record::{Is, PartKind, Room, field};
use house::{naming, story};
use phrase::Phrase;

use super::{clear, finder, go, gone, part, sketch, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place, Question};
use crate::question::{Answer, Told, not_answered};
use crate::screen::{PressWeight, WritingKind};
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch};

/// The most rooms that are listed, and the most outlets that may serve one.
const MOST: usize = 150;
const OUTLETS: usize = 60;

pub(crate) fn show_all<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let survey = scene.survey;
    let mut sketch = sketch(scene, &Phrase::new("free-rooms"));
    let mut rooms: Vec<_> = survey.rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let row = |room: &&Room| {
        let wish = room.wish.and_then(|wish| serde_json::to_value(wish).ok());
        let wish = wish.map(|wish| story::value(survey, field::WISH, &wish));
        sketch.row(Some(Key::Room(room.id)), &super::text(&room.name), wish.as_ref(), None)
    };
    let rows = rooms.iter().take(MOST).map(row).collect();
    sketch.rows(&Phrase::new("free-rooms-rows"), rows);
    sketch.writing(&Key::Name, &Phrase::new("free-room-new"), None, WritingKind::Name, "");
    sketch.press(&Key::Add, &Phrase::new("free-room-add"), PressWeight::Main);
    sketch
}

pub(crate) fn pressed_all(session: &mut Session, key: &Key) -> Result<Move> {
    match key {
        Key::Room(room) => return Ok(go(FieldPlace::Room(*room))),
        Key::Add => {}
        _ => return Ok(Move::Stay),
    }
    let told = session.with_scene(|scene| -> Told<Answer> {
        let name = scene.pending().written(&Key::Name).filter(|name| !name.is_empty());
        let name = name.ok_or_else(not_answered)?;
        let id = SubjectId::random();
        Ok(Answer::new().is(id, Is::Room).says(id, field::room::NAME, name))
    })?;
    if write(session, told)? {
        clear(session)?;
    }
    Ok(Move::Stay)
}

pub(crate) fn show<'a>(scene: &Scene<'a>, id: SubjectId) -> Sketch<'a> {
    let survey = scene.survey;
    let Some(room) = survey.rooms.get(&id) else { return gone(scene, "free-room") };
    let mut sketch = sketch(scene, &Phrase::new("free-room").text("room", &room.name));
    sketch.writing(&Key::Name, &Phrase::new("free-room-name"), None, WritingKind::Name, &room.name);
    let outlets: Vec<_> =
        finder::by_tag(survey).into_iter().filter(|part| part.kind == PartKind::Outlet).collect();
    let here = outlets.iter().filter(|part| part.room == Some(id)).take(OUTLETS);
    let row = |part: &&house::record::Part| {
        sketch.row(Some(Key::Part(part.id)), &naming::of_part(survey, part), None, None)
    };
    let rows: Vec<_> = here.map(row).collect();
    let has_coax = !rows.is_empty();
    sketch.rows(&Phrase::new("free-room-outlets"), rows);
    let wish = room.wish.and_then(|wish| serde_json::to_value(wish).ok());
    let wish =
        wish.map_or_else(|| Phrase::new("free-no-wish"), |wish| story::value(survey, field::WISH, &wish));
    let row = sketch.row(Some(Key::Wish), &Phrase::new("free-wish"), Some(&wish), None);
    sketch.rows(&Phrase::new("free-wishes"), vec![row]);
    if !has_coax {
        let others = outlets.iter().filter(|part| part.room != Some(id)).take(OUTLETS);
        let mut offers = vec![Offer::new(&Key::None, Phrase::new("free-served-none"))];
        let offer =
            |part: &&house::record::Part| Offer::new(&Key::Part(part.id), naming::of_part(survey, part));
        offers.extend(others.map(offer));
        let now = [room.served_from.map_or(Key::None, Key::Part)];
        sketch.choice(&Key::Served, &Phrase::new("free-served"), false, offers, &now);
    }
    sketch.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Main);
    sketch.confirm_loss(&Key::Remove, &Phrase::new("free-remove-room").text("room", &room.name));
    sketch
}

fn edits(scene: &Scene<'_>, id: SubjectId) -> Told<Answer> {
    let mut answer = Answer::new();
    match scene.pending().written(&Key::Name) {
        Some("") => return Err(Phrase::new("free-room-no-name")),
        Some(name) => answer = answer.says(id, field::room::NAME, name),
        None => {}
    }
    match scene.pending().one(&Key::Served) {
        Some(Key::None) => answer.edits.push(field::room::SERVED_FROM.clear(id)),
        Some(Key::Part(outlet)) => answer = answer.says(id, field::room::SERVED_FROM, &outlet),
        _ => {}
    }
    Ok(answer)
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    let told = match key {
        Key::Wish => return Ok(Move::Go(Place::Ask(Question::Wish(id)))),
        Key::Save => session.with_scene(|scene| edits(scene, id))?,
        Key::Remove => {
            let edit = session.with_scene(|scene| scene.ledger.remove(id))?;
            Ok(Answer { edits: vec![edit], then: None })
        }
        key => return Ok(part::subject_place(key).map_or(Move::Stay, go)),
    };
    Ok(if write(session, told)? { Move::Back } else { Move::Stay })
}
