//! Whether everything else on the coax is still fine: the one answer of two screens.

use phrase::Phrase;

use crate::place::{Key, choices};
use crate::view::{Offer, Sketch};

choices! {
    /// Whether everything else on the coax is still fine.
    StillFine {
        /// It is.
        Yes "yes",
        /// Something is not.
        No "no",
        /// There is nothing else.
        Nothing "nothing",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl StillFine {
    /// Asks for it.
    pub(super) fn ask(sketch: &mut Sketch<'_>, name: &Phrase, now: Option<Self>) {
        let offer = |fine: &Self| match fine {
            Self::Unsure => Offer::unsure(fine),
            fine => Offer::new(fine, Phrase::new(format!("after-{}", fine.word()))),
        };
        sketch.choice(&Key::Fine, name, false, Self::ALL.iter().map(offer).collect(), &now);
    }

    /// What was picked, of the keys of the options.
    pub(super) fn picked(picked: &[String]) -> Option<Self> {
        <Self as crate::place::Choice>::of(picked.first()?)
    }
}
