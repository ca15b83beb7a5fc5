//! Putting a change back: the record of the house becomes what it was, where nobody wrote over it since.

use house::record::{Outcome, OutcomeKind, Work};
use phrase::Phrase;

use crate::error::Result;
use crate::session::Session;

/// Says that a change was put back.
pub(super) fn put_back(session: &mut Session, work: &Work) -> Result<()> {
    let open = session.open_survey()?;
    let others_fine = work.outcome.others_fine;
    if let Some(edits) = work.put_back(&open.survey, open.store.ledger(), others_fine)? {
        open.write(&edits)?;
    } else {
        open.write(&[work.ended_as(Outcome { end: OutcomeKind::PutBack, others_fine })?])?;
        session.tell(Phrase::new("put-back-by-hand"));
    }
    Ok(())
}
