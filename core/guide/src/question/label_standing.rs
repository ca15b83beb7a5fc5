//! What was said of a part before its photo was read: it stands, and what is read otherwise is asked.

use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::field;
use phrase::Phrase;

use crate::place::{LabelFigure, TakenFigure};
use crate::session::SurveySnapshot;

/// A figure that is so near another is the same: it was written in another way.
const SAME: f64 = 1e-6;

/// What stands of a part's rating.
pub(super) struct Standing {
    /// By the text of the label that somebody typed.
    typed: PartRating,
    /// Whether that text states where the band begins; where it does not, a band that is typed begins where labels do.
    is_low_typed: bool,
    /// By what somebody said of the rating itself, beside its label.
    pub(super) said: PartRating,
    /// Outputs of the part as the survey has it, 0 while not known.
    outputs: u8,
}

impl Standing {
    /// What stands of a part, with the text of its label.
    pub(super) fn of(snapshot: &SurveySnapshot<'_>, part: SubjectId, text: &str) -> Self {
        let said = snapshot.ledger.shown(part, field::RATING).map(|fact| fact.value().clone());
        let reading = label::read(text);
        Self {
            typed: PartRating::of_reading(&reading),
            is_low_typed: reading.low.is_some(),
            said: said.and_then(|said| serde_json::from_value(said).ok()).unwrap_or_default(),
            outputs: snapshot.survey.parts.get(&part).map_or(0, |part| part.rating.legs),
        }
    }

    /// What the text that was typed says of a figure.
    pub(super) fn typed(&self, figure: LabelFigure) -> Option<f64> {
        figure.of(&self.typed).filter(|_| figure != LabelFigure::Low || self.is_low_typed)
    }

    /// How many outputs a rating has that is said now, or else the text, or else the survey; 0 while not known.
    pub(super) fn outputs(&self, rating: &PartRating) -> u8 {
        [rating.legs, self.typed.legs, self.outputs].into_iter().find(|legs| *legs > 0).unwrap_or(0)
    }

    /// What was said of the rating, its one loss for as many outputs as are counted by now; nothing where that is as it was.
    pub(super) fn with_loss_spread(&self) -> Option<PartRating> {
        let mut rating = self.said.clone();
        rating.spread_loss(self.outputs(&rating));
        (rating != self.said).then_some(rating)
    }

    /// What else stands of a figure; nothing where just that stands, or nothing.
    pub(super) fn otherwise(&self, read: TakenFigure) -> Option<Otherwise> {
        let figure = read.figure;
        let said = || figure.of(&self.said).map(Otherwise::Said);
        let stands = self.typed(figure).map(Otherwise::Typed).or_else(said)?;
        let (Otherwise::Typed(value) | Otherwise::Said(value)) = stands;
        ((value - read.value).abs() > SAME).then_some(stands)
    }
}

/// A figure that stands, and is not what was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Otherwise {
    /// In the text of the label: no photo changes that.
    Typed(f64),
    /// Beside the label: who knows better now may change it.
    Said(f64),
}

impl Otherwise {
    /// Says so.
    pub(super) fn phrase(self, figure: LabelFigure) -> Phrase {
        let (name, value) = match self {
            Self::Typed(value) => ("label-typed-otherwise", value),
            Self::Said(value) => ("label-stands-otherwise", value),
        };
        Phrase::new(name).with("value", figure.value_said(value))
    }
}
