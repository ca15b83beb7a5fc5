//! One photo: what it shows, and away with it.

use facts::fact::{Edit, SubjectId};
use house::record::{PhotoRole, field};
use house::story;
use phrase::Phrase;
use serde_json::Value;

use super::assign::role_offers;
use super::{card, gone, sketch, write};
use crate::error::Result;
use crate::place::{Key, Move};
use crate::question::{Answer, not_answered};
use crate::screen::PressWeight;
use crate::session::{Scene, Session};
use crate::view::Sketch;

pub(crate) fn show<'a>(scene: &Scene<'a>, id: SubjectId) -> Sketch<'a> {
    let Some(photo) = scene.survey.photos.get(&id) else { return gone(scene, "free-photo") };
    let mut sketch = sketch(scene, &Phrase::new("free-photo"));
    let of = photo.of.map(|of| Phrase::new("free-photo-of").phrase("thing", story::thing(scene.survey, of)));
    let when =
        Phrase::new("free-photo-when").text("when", telling::words::date_and_time(card::born_ms(scene, id)));
    let lines = of.iter().chain([&when]).map(|line| sketch.say(line)).collect();
    sketch.part("", &Phrase::new(card::photo_word(photo)), lines, Some(id));
    sketch.choice(&Key::Role, &Phrase::new("free-role"), false, role_offers(), &photo.role);
    sketch.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Main);
    sketch.press(&Key::Unassign, &Phrase::new("free-photo-unassign"), PressWeight::Other);
    sketch.confirm_loss(&Key::Remove, &Phrase::new("free-remove-photo"));
    sketch
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    let told = match key {
        Key::Save => session.with_scene(|scene| {
            let role: PhotoRole = scene.pending().one(&Key::Role).ok_or_else(not_answered)?;
            Answer::new().says(id, field::ROLE, &role)
        })?,
        Key::Unassign => {
            let edits = [field::OF, field::ROLE].map(|name| Edit::new(id, name, Value::Null)).into();
            Ok(Answer { edits, then: None })
        }
        Key::Remove => {
            let edit = session.with_scene(|scene| scene.ledger.remove(id))?;
            Ok(Answer { edits: vec![edit], then: None })
        }
        _ => return Ok(Move::Stay),
    };
    Ok(if write(session, told)? { Move::Back } else { Move::Stay })
}
