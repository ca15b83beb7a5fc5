//! Whether everything else on the coax is still fine: the one answer of two screens.

use phrase::Phrase;

use crate::place::{Key, replies};
use crate::view::{Offer, ScreenBuilder};

replies! {
    /// Whether everything else on the coax is still fine.
    StillFine {
        /// It is.
        Yes = Yes,
        /// Something is not.
        No = No,
        /// There is nothing else.
        Nothing = Nothing,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

impl StillFine {
    /// Asks for it.
    pub(super) fn ask(builder: &mut ScreenBuilder<'_>, name: &Phrase, now: Option<Self>) {
        let offer = |fine: &Self| match fine {
            Self::Unsure => Offer::unsure(fine),
            fine => Offer::new(fine, Phrase::new(format!("after-{}", fine.word()))),
        };
        builder.choice(&Key::Fine, name, false, Self::ALL.iter().map(offer).collect(), &now);
    }

    /// What was picked, of the keys of the options.
    pub(super) fn picked(picked: &[String]) -> Option<Self> {
        <Self as crate::place::Choice>::of(picked.first()?)
    }
}
