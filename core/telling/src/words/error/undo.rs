//! Why something cannot be taken back.

use facts::error::{CannotPutBack, UndoFault};
use phrase::Phrase;

use super::InWords;

impl InWords for UndoFault {
    fn phrase(&self) -> Phrase {
        Phrase::new(match self {
            Self::Nothing => "error-undo-nothing",
            Self::ReplacedSince => "error-undo-replaced",
            Self::ChangedSince => "error-undo-changed",
            Self::Forgets => "error-undo-forgets",
            Self::Forgotten => "error-undo-forgotten",
        })
    }
}

impl InWords for CannotPutBack {
    fn phrase(&self) -> Phrase {
        Phrase::new(match self {
            Self::NothingTaken => "error-put-back-nothing",
        })
    }
}
