//! The surveys of this device.

use facts::home::Found;
use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, Screen};
use crate::session::Session;
use crate::view::{Sketch, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let mut sketch = Sketch::new(session.language(), session.pending(), &Phrase::new("surveys"));
    let none = Phrase::new("surveys-none");
    let listed = survey_list::list(session, &mut sketch, session.home().list(), "open", &none);
    sketch.press("new", &Phrase::new("surveys-new"), PressWeight::Main);
    sketch.press("sent", &Phrase::new("surveys-sent"), PressWeight::Other);
    if listed > 0 {
        sketch.press("order", &Phrase::new("surveys-order"), PressWeight::Quiet);
    }
    if session.home().set_aside_list().is_ok_and(|aside| !aside.is_empty()) {
        sketch.press("aside", &Phrase::new("surveys-aside"), PressWeight::Quiet);
    }
    sketch.press("device", &Phrase::new("device"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, deed: &Deed) -> Result<Move> {
    let Deed::Press { key } = deed else { return Ok(Move::Stay) };
    if survey_list::turn(session, key) {
        return Ok(Move::Stay);
    }
    Ok(match key.as_str() {
        "new" => Move::Outside(Outside::NewSurvey),
        "sent" => Move::Outside(Outside::Sent),
        "order" => Move::Outside(Outside::Order),
        "aside" => Move::Outside(Outside::Aside),
        "device" => Move::Outside(Outside::Device),
        key => {
            let Some(name) = key.strip_prefix("open:") else { return Ok(Move::Stay) };
            let found = session.home().list()?;
            let Some(entry) = survey_list::find(session, found, name) else { return Ok(Move::Stay) };
            match entry.found {
                Found::Survey(_) => return session.open_or_mend(&entry.folder),
                Found::Trouble(_) => Move::Outside(Outside::Survey(entry.folder)),
            }
        }
    })
}
