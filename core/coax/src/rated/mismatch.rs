//! What sends part of a wave back and loses nothing: an adapter that is not 75 ohm, the street behind an entry.

use super::at_least;
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::{house, link};
use crate::model::{Link, Model};
use crate::quantity::Decibels;
use crate::span::Span;

/// What is known of a mismatch. Port 0 is its near side, port 1 what lies behind. What it sends back is missing behind it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MismatchRating {
    /// Return loss in dB.
    pub return_loss: Span,
    /// Delay from its near side to what sends the wave back, ns.
    pub delay_ns: Span,
}

impl MismatchRating {
    /// A node of the network in its band.
    pub fn adapter() -> Self {
        Self { return_loss: link::ADAPTER_RETURN_LOSS.span, delay_ns: link::ADAPTER_DELAY.span }
    }

    /// What stands behind an entry.
    pub fn street() -> Self {
        Self { return_loss: house::ENTRY_RETURN_LOSS.span, delay_ns: house::ENTRY_DELAY.span }
    }

    /// A concrete mismatch.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative return loss or delay.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        at_least("a mismatch's return loss", self.return_loss, 0.0, "dB", "0 dB or more")?;
        at_least("a mismatch's delay", self.delay_ns, 0.0, "ns", "0 ns or more")?;
        let return_loss = dice.span(self.return_loss);
        let delay_ns = dice.span(self.delay_ns);
        Link::reflecting(Decibels(return_loss))?.with_delay(delay_ns).map(Model::Link)
    }
}
