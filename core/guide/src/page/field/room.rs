//! All rooms, and one room: its name, what is wished for, from where it is served.

use facts::fact::SubjectId;
use house::record::{Is, PartKind, Room, field};
use house::{naming, story};
use phrase::Phrase;

use super::{builder, clear, finder, go, gone, part, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place, Question};
use crate::question::{Answer, Told, not_answered};
use crate::screen::{PressWeight, WritingKind};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// The most rooms that are listed, and the most outlets that may serve one.
const MOST: usize = 150;
const OUTLETS: usize = 60;

pub(crate) fn show_all<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let mut builder = builder(snapshot, &Phrase::new("free-rooms"));
    let mut rooms: Vec<_> = survey.rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let row = |room: &&Room| {
        let wish = room.wish.and_then(|wish| serde_json::to_value(wish).ok());
        let wish = wish.map(|wish| story::value(survey, field::WISH, &wish));
        builder.row(Some(Key::Room(room.id)), &naming::of_room(survey, room), wish.as_ref(), None)
    };
    let rows = rooms.iter().take(MOST).map(row).collect();
    builder.rows(&Phrase::new("free-rooms-rows"), rows);
    builder.writing(&Key::Name, &Phrase::new("free-room-new"), None, WritingKind::Name, "");
    builder.press(&Key::Add, &Phrase::new("free-room-add"), PressWeight::Main);
    builder
}

pub(crate) fn pressed_all(session: &mut Session, key: &Key) -> Result<Move> {
    match key {
        Key::Room(room) => return Ok(go(FieldPlace::Room(*room))),
        Key::Add => {}
        _ => return Ok(Move::Stay),
    }
    let told = session.with_snapshot(|snapshot| -> Told<Answer> {
        let name = snapshot.pending().written(&Key::Name).filter(|name| !name.is_empty());
        let name = name.ok_or_else(not_answered)?;
        let id = SubjectId::random();
        Ok(Answer::new().is(id, Is::Room).says(id, field::room::NAME, name))
    })?;
    if write(session, told)? {
        clear(session)?;
    }
    Ok(Move::Stay)
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let Some(room) = survey.rooms.get(&id) else { return gone(snapshot, "free-room") };
    let mut builder =
        builder(snapshot, &Phrase::new("free-room").phrase("room", naming::of_room(survey, room)));
    builder.writing(&Key::Name, &Phrase::new("free-room-name"), None, WritingKind::Name, &room.name);
    let outlets: Vec<_> =
        finder::by_tag(survey).into_iter().filter(|part| part.kind == PartKind::Outlet).collect();
    let here = outlets.iter().filter(|part| part.room == Some(id)).take(OUTLETS);
    let row = |part: &&house::record::Part| {
        builder.row(Some(Key::Part(part.id)), &naming::of_part(survey, part), None, None)
    };
    let rows: Vec<_> = here.map(row).collect();
    let has_coax = !rows.is_empty();
    builder.rows(&Phrase::new("free-room-outlets"), rows);
    let wish = room.wish.and_then(|wish| serde_json::to_value(wish).ok());
    let wish =
        wish.map_or_else(|| Phrase::new("free-no-wish"), |wish| story::value(survey, field::WISH, &wish));
    let row = builder.row(Some(Key::Wish), &Phrase::new("free-wish"), Some(&wish), None);
    builder.rows(&Phrase::new("free-wishes"), vec![row]);
    if !has_coax {
        let others = outlets.iter().filter(|part| part.room != Some(id)).take(OUTLETS);
        let mut offers = vec![Offer::new(&Key::None, Phrase::new("free-served-none"))];
        let offer =
            |part: &&house::record::Part| Offer::new(&Key::Part(part.id), naming::of_part(survey, part));
        offers.extend(others.map(offer));
        let now = [room.served_from.map_or(Key::None, Key::Part)];
        builder.choice(&Key::Served, &Phrase::new("free-served"), false, offers, &now);
    }
    builder.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Main);
    let remove = Phrase::new("free-remove-room").phrase("room", naming::of_room(survey, room));
    let remove = remove.phrase("hangs", naming::Hanging::on(survey, id).phrase());
    builder.confirm_loss(&Key::Remove, &remove);
    builder
}

fn edits(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Told<Answer> {
    let mut answer = Answer::new();
    match snapshot.pending().written(&Key::Name) {
        Some("") => return Err(Phrase::new("free-room-no-name")),
        Some(name) => answer = answer.says(id, field::room::NAME, name),
        None => {}
    }
    match snapshot.pending().one(&Key::Served) {
        Some(Key::None) => answer.edits.push(field::room::SERVED_FROM.clear(id)),
        Some(Key::Part(outlet)) => answer = answer.says(id, field::room::SERVED_FROM, &outlet),
        _ => {}
    }
    Ok(answer)
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    let told = match key {
        Key::Wish => return Ok(Move::Go(Place::Ask(Question::Wish(id)))),
        Key::Save => session.with_snapshot(|snapshot| edits(snapshot, id))?,
        Key::Remove => {
            let edit = session.with_snapshot(|snapshot| snapshot.ledger.remove(id))?;
            Ok(Answer { edits: vec![edit], then: None })
        }
        key => return Ok(part::subject_place(key).map_or(Move::Stay, go)),
    };
    Ok(if write(session, told)? { Move::Back } else { Move::Stay })
}
