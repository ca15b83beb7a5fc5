//! What all screens of this folder have alike: the way to the overview, and pages of long lists.

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place};
use crate::session::Session;
use crate::view::paging;

/// Does what is done on all of them alike; `own` does what a done of the screen's own does.
pub(crate) fn take(
    session: &mut Session,
    done: &Done,
    own: impl FnOnce(&mut Session) -> Result<Move>,
) -> Result<Move> {
    if let Done::Press(key) = done {
        if *key == Key::Overview {
            return Ok(Move::Go(Place::Overview));
        }
        let pending = &mut session.open_survey()?.memory.pending;
        if paging::turn(pending, key) {
            return Ok(Move::Stay);
        }
    }
    own(session)
}
