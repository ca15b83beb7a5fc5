//! Whose the wiring is, and whether others share it.

use house::record::{Building, Ownership, field};
use phrase::Phrase;

use crate::place::{Key, choices};
use crate::question::answer::{Answer, Told, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// Whose the wiring is.
    WhoseAnswer {
        /// One's own.
        Own "own",
        /// The landlord's.
        Rented "rented",
        /// Of several homes.
        Shared "shared",
    }
}

impl WhoseAnswer {
    fn of_building(building: Building) -> Self {
        match (building.ownership, building.shared) {
            (_, true) => Self::Shared,
            (Ownership::Own, false) => Self::Own,
            (Ownership::Rented, false) => Self::Rented,
        }
    }

    fn building(self) -> Building {
        match self {
            Self::Own => Building { ownership: Ownership::Own, shared: false },
            Self::Rented => Building { ownership: Ownership::Rented, shared: false },
            Self::Shared => Building { ownership: Ownership::Rented, shared: true },
        }
    }

    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offers = Self::ALL
            .iter()
            .map(|whose| Offer::new(whose, Phrase::new(format!("whose-{}", whose.word()))))
            .collect();
        let now = snapshot.survey.building.map(Self::of_building);
        builder.choice(&Key::Whose, &Phrase::new("ask-whose"), false, offers, &now);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Whose).ok_or_else(not_answered)
    }

    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        Answer::new().says(snapshot.survey.id, field::survey::BUILDING, &self.building())
    }
}
