//! The surveys of this device.

use facts::home::Found;
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside};
use crate::screen::{PressWeight, Screen};
use crate::session::Session;
use crate::view::{Sketch, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let mut sketch = Sketch::new(session.language(), session.pending(), &Phrase::new("surveys"));
    let none = Phrase::new("surveys-none");
    let listed = survey_list::list(session, &mut sketch, session.home().list(), Key::Open, &none);
    sketch.press(&Key::New, &Phrase::new("surveys-new"), PressWeight::Main);
    sketch.press(&Key::Sent, &Phrase::new("surveys-sent"), PressWeight::Other);
    if listed > 0 {
        sketch.press(&Key::Order, &Phrase::new("surveys-order"), PressWeight::Quiet);
    }
    if session.home().set_aside_list().is_ok_and(|aside| !aside.is_empty()) {
        sketch.press(&Key::Aside, &Phrase::new("surveys-aside"), PressWeight::Quiet);
    }
    sketch.press(&Key::Device, &Phrase::new("device"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Done::Press(key) = done else { return Ok(Move::Stay) };
    if survey_list::turn(session, key) {
        return Ok(Move::Stay);
    }
    Ok(match key {
        Key::New => Move::Outside(Outside::NewSurvey),
        Key::Sent => Move::Outside(Outside::Sent),
        Key::Order => Move::Outside(Outside::Order),
        Key::Aside => Move::Outside(Outside::SetAside),
        Key::Device => Move::Outside(Outside::Device),
        key => {
            let Key::Open(name) = key else { return Ok(Move::Stay) };
            let found = session.home().list()?;
            let Some(entry) = survey_list::find(session, found, name) else { return Ok(Move::Stay) };
            match entry.found {
                Found::Survey(_) => return session.open_or_mend(&entry.folder),
                Found::Trouble(_) => Move::Outside(Outside::Survey(entry.folder)),
            }
        }
    })
}
