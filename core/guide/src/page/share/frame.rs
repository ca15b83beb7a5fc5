//! What all screens of this folder have alike: the way to the overview, and pages of long lists.

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place};
use crate::session::Session;
use crate::view::paging;

/// Does what is done on all of them alike; `own` does what a deed of the screen's own does.
pub(crate) fn take(
    session: &mut Session,
    deed: &Deed,
    own: impl FnOnce(&mut Session) -> Result<Move>,
) -> Result<Move> {
    if let Deed::Press { key } = deed {
        if key == "overview" {
            return Ok(Move::Go(Place::Overview));
        }
        let pending = &mut session.open_survey()?.memory.pending;
        if let Some(turned) = paging::turned(pending, key) {
            pending.keep(&turned);
            return Ok(Move::Stay);
        }
    }
    own(session)
}
