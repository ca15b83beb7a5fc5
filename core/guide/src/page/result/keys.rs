//! Keys that several screens of this folder share.

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::session::Session;
use crate::view::paging;

/// Where a key leads that means the same on all of them.
fn place(key: &Key) -> Option<Place> {
    Some(match key {
        Key::Ask(question) => Place::Ask(question.clone()),
        Key::Overview => Place::Overview,
        key => Place::Result(match key {
            Key::Finding(name) => ResultPlace::Finding(name.clone()),
            Key::Room(outlet) => ResultPlace::Room(*outlet),
            Key::Part(part) => ResultPlace::Part(*part),
            Key::Test(outlet) => ResultPlace::Test(*outlet),
            Key::Reading(reading) => ResultPlace::Reading(*reading),
            Key::Ended(work) => ResultPlace::Ended(*work),
            key => ResultPlace::of_key(key)?,
        }),
    })
}

/// Does what such a key asks for; `own` does what only the screen itself has.
pub(crate) fn take(
    session: &mut Session,
    done: &Done,
    own: impl FnOnce(&mut Session) -> Result<Move>,
) -> Result<Move> {
    let Done::Press(key) = done else { return own(session) };
    if let Some(place) = place(key) {
        return Ok(Move::Go(place));
    }
    match key {
        Key::Stop => session.open_survey()?.results.stop(),
        Key::WorkOut => session.begin_long_work(),
        key if paging::turn(&mut session.open_survey()?.memory.pending, key) => {}
        _ => return own(session),
    }
    Ok(Move::Stay)
}
