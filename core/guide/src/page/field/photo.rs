//! One photo: what it shows, and away with it.

use facts::fact::SubjectId;
use house::record::{PhotoRole, field};
use house::story;
use phrase::Phrase;

use super::assign::role_offers;
use super::{builder, card, gone, write};
use crate::error::Result;
use crate::place::{Key, Move};
use crate::question::{Answer, not_answered};
use crate::screen::PressWeight;
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_name};

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let Some(photo) = snapshot.survey.photos.get(&id) else { return gone(snapshot, "free-photo") };
    let mut builder = builder(snapshot, &Phrase::new("free-photo"));
    let of =
        photo.of.map(|of| Phrase::new("free-photo-of").phrase("thing", story::thing(snapshot.survey, of)));
    let when = Phrase::new("free-photo-when")
        .text("when", telling::words::date_and_time(card::born_ms(snapshot, id)));
    let taken = photo.taken.map(|taken| Phrase::new("free-photo-taken").text("taken", taken.to_minute()));
    let file = photo.file_name.as_ref().map(|name| Phrase::new("free-photo-file").text("name", name));
    let told = of.iter().chain(&taken).chain([&when]).chain(&file);
    let lines = told.map(|line| builder.say(line)).collect();
    builder.part("", &photo_name(snapshot.survey, photo), lines, Some(id));
    builder.choice(&Key::Role, &Phrase::new("free-role"), false, role_offers(), &photo.role);
    builder.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Main);
    builder.press(&Key::Unassign, &Phrase::new("free-photo-unassign"), PressWeight::Other);
    builder.confirm_loss(&Key::Remove, &Phrase::new("free-remove-photo"));
    builder
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    let told = match key {
        Key::Save => session.with_snapshot(|snapshot| {
            let role: PhotoRole = snapshot.pending().one(&Key::Role).ok_or_else(not_answered)?;
            Ok(Answer::new().says(id, field::photo::ROLE, &role))
        })?,
        Key::Unassign => {
            let edits = vec![field::photo::OF.clear(id), field::photo::ROLE.clear(id)];
            Ok(Answer { edits, then: None })
        }
        Key::Remove => {
            let edit = session.with_snapshot(|snapshot| snapshot.ledger.remove(id))?;
            Ok(Answer { edits: vec![edit], then: None })
        }
        _ => return Ok(Move::Stay),
    };
    Ok(if write(session, told)? { Move::Back } else { Move::Stay })
}
