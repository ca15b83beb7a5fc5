//! What all screens of field work have alike: what is typed or chosen is kept, the last act of this device can be taken
//! back, and there is a way to the overview.

use house::record::PhotoRole;
use phrase::Phrase;

use super::{part, undo};
use crate::done::Done;
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place};
use crate::question::about;
use crate::screen::{PressWeight, Screen};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, paging};

/// A screen with what stands on all of them.
pub(crate) fn show(snapshot: &SurveySnapshot<'_>, mut builder: ScreenBuilder<'_>) -> Screen {
    undo::offer(snapshot, &mut builder);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Does what is done on all of them alike; `pressed` does what a press of the screen's own does.
pub(crate) fn take(
    session: &mut Session,
    place: &FieldPlace,
    done: &Done,
    pressed: impl FnOnce(&mut Session, &Key) -> Result<Move>,
) -> Result<Move> {
    if let (Done::Press(key), FieldPlace::Part(about) | FieldPlace::Run(about)) = (done, place)
        && !matches!(key, Key::AddNote | Key::Undo)
    {
        part::keep_note(session, *about)?;
    }
    match done {
        Done::Press(key) => match key {
            Key::Overview => Ok(Move::Go(Place::Overview)),
            Key::Undo => undo::take(session),
            key if paging::turn(&mut session.open_survey()?.memory.pending, key) => Ok(Move::Stay),
            key => pressed(session, key),
        },
        Done::Pick(..) | Done::Measure(..) => {
            session.open_survey()?.memory.pending.keep(done);
            Ok(Move::Stay)
        }
        Done::Write(key, _) => {
            let pending = &mut session.open_survey()?.memory.pending;
            pending.keep(done);
            if *key == Key::Find {
                // What is looked for stands on the first page.
                pending.write(&Key::Page, "");
            }
            Ok(Move::Stay)
        }
        Done::Photo(Key::PhotoSlot, file) => photographed(session, place, file),
        Done::Photo(..) | Done::Touch(..) | Done::File(..) | Done::Back => Ok(Move::Stay),
    }
}

/// Keeps a photo that was taken on one of these screens.
fn photographed(session: &mut Session, place: &FieldPlace, file: &str) -> Result<Move> {
    let (of, role) = match place {
        FieldPlace::Burst | FieldPlace::Assign => (None, None),
        FieldPlace::Part(part) => {
            let prints = |snapshot: &SurveySnapshot<'_>| {
                snapshot.survey.parts.get(part).is_some_and(about::is_printed)
            };
            let role = if session.with_snapshot(prints)? { PhotoRole::Label } else { PhotoRole::Place };
            (Some(*part), Some(role))
        }
        FieldPlace::Run(run) => (Some(*run), Some(PhotoRole::Place)),
        _ => return Ok(Move::Stay),
    };
    session.add_photo(file, of, role)?;
    Ok(Move::Stay)
}
