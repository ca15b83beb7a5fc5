//! The surveys of this device.

use facts::home::Found;
use phrase::Phrase;

use crate::done::Done;
use crate::place::{Key, Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Session;
use crate::view::{ScreenBuilder, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("surveys"));
    let none = Phrase::new("surveys-none");
    let listing = &session.listing;
    if let Some(damaged) = session.device().set_aside() {
        builder.words(WordsRole::Problem, &Phrase::new("device-was-damaged").text("file", damaged));
    }
    survey_list::list(session, &mut builder, &listing.surveys, Key::Open, &none);
    builder.press(&Key::New, &Phrase::new("surveys-new"), PressWeight::Main);
    builder.press(&Key::Sent, &Phrase::new("surveys-sent"), PressWeight::Other);
    if !listing.surveys.is_empty() {
        builder.press(&Key::Order, &Phrase::new("surveys-order"), PressWeight::Quiet);
    }
    if !listing.set_aside.is_empty() {
        builder.press(&Key::Aside, &Phrase::new("surveys-aside"), PressWeight::Quiet);
    }
    builder.press(&Key::Device, &Phrase::new("device"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Move {
    let Done::Press(key) = done else { return Move::Stay };
    if survey_list::turn(session, key) {
        return Move::Stay;
    }
    match key {
        Key::New => Move::Outside(Outside::NewSurvey),
        Key::Sent => Move::Outside(Outside::Sent),
        Key::Order => Move::Outside(Outside::Order),
        Key::Aside => Move::Outside(Outside::SetAside),
        Key::Device => Move::Outside(Outside::Device),
        Key::Open(name) => match survey_list::find(&session.listing.surveys, name) {
            None => Move::Stay,
            Some(entry) => {
                let folder = entry.folder.clone();
                if matches!(entry.found, Found::Trouble(_)) {
                    return Move::Outside(Outside::Survey(folder));
                }
                session.send_open(folder, |_| Ok(Move::Stay));
                Move::Stay
            }
        },
        _ => Move::Stay,
    }
}
