//! The surveys of this device.

use facts::home::Found;
use phrase::Phrase;

use crate::deed::Deed;
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Session;
use crate::view::{Sketch, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let mut sketch = Sketch::new(session.language(), session.pending(), &Phrase::new("surveys"));
    let none = Phrase::new("surveys-none");
    let listing = &session.listing;
    if let Some(damaged) = session.device().set_aside() {
        sketch.words(WordsRole::Problem, &Phrase::new("device-was-damaged").text("file", damaged));
    }
    survey_list::list(session, &mut sketch, &listing.surveys, "open", &none);
    sketch.press("new", &Phrase::new("surveys-new"), PressWeight::Main);
    sketch.press("sent", &Phrase::new("surveys-sent"), PressWeight::Other);
    if !listing.surveys.is_empty() {
        sketch.press("order", &Phrase::new("surveys-order"), PressWeight::Quiet);
    }
    if !listing.set_aside.is_empty() {
        sketch.press("aside", &Phrase::new("surveys-aside"), PressWeight::Quiet);
    }
    sketch.press("device", &Phrase::new("device"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, deed: &Deed) -> Move {
    let Deed::Press { key } = deed else { return Move::Stay };
    if survey_list::turn(session, key) {
        return Move::Stay;
    }
    match key.as_str() {
        "new" => Move::Outside(Outside::NewSurvey),
        "sent" => Move::Outside(Outside::Sent),
        "order" => Move::Outside(Outside::Order),
        "aside" => Move::Outside(Outside::Aside),
        "device" => Move::Outside(Outside::Device),
        key => {
            let name = key.strip_prefix("open:");
            match name.and_then(|name| survey_list::find(&session.listing.surveys, name)) {
                None => Move::Stay,
                Some(entry) => {
                    let folder = entry.folder.clone();
                    if matches!(entry.found, Found::Trouble(_)) {
                        return Move::Outside(Outside::Survey(folder));
                    }
                    session.send_open(folder, |_| Ok(Move::Stay));
                    Move::Stay
                }
            }
        }
    }
}
