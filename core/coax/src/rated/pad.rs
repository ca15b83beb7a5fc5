//! A pad (attenuator): made to lose.

use super::at_least;
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{Link, Model};
use crate::quantity::Decibels;
use crate::span::Span;

/// What is known of a pad.
#[derive(Debug, Clone, PartialEq)]
pub struct PadRating {
    /// Its loss in dB, both ways.
    pub loss: Span,
    /// Its return loss; none: not on the label.
    pub return_loss: Option<Decibels>,
}

impl PadRating {
    /// A concrete pad.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        at_least("a pad's loss", self.loss, 0.0, "dB", "0 dB or more")?;
        let loss = dice.span(self.loss);
        let drawn = dice.span(parts::PAD_RETURN_LOSS.span);
        Link::new(Decibels(loss), self.return_loss.unwrap_or(Decibels(drawn)), 0.0).map(Model::Link)
    }
}
