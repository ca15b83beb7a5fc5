//! A satellite combiner (diplexer) as its label states it.

use super::at_least;
use super::filter::WIDTHS_TO_EDGE;
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{Diplexer, Model};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;
use crate::trade::SATELLITE_LOW;

/// What is known of a satellite combiner. Port 0 is the common port, port 1 the lower band's (antenna or cable TV), port 2
/// the satellite's. The MoCA band lies in the satellite band: a node behind the lower port is cut off.
#[derive(Debug, Clone, PartialEq)]
pub struct DiplexerRating {
    /// Top of the lower band.
    pub low_top: Megahertz,
    /// Bottom of the satellite band.
    pub satellite_bottom: Megahertz,
    /// Loss to the lower band's port in dB; none: not on the label.
    pub low_loss: Option<Span>,
    /// Loss to the satellite port in dB; none: not on the label.
    pub satellite_loss: Option<Span>,
    /// Loss of either band to the other's port; none: not on the label.
    pub isolation: Option<Decibels>,
}

impl Default for DiplexerRating {
    /// One whose label cannot be read.
    fn default() -> Self {
        Self {
            low_top: Megahertz(parts::COMBINER_LOW_TOP.span.likely),
            satellite_bottom: SATELLITE_LOW,
            low_loss: None,
            satellite_loss: None,
            isolation: None,
        }
    }
}

impl DiplexerRating {
    /// A concrete combiner.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        let low = self.low_loss.unwrap_or(parts::COMBINER_LOW_LOSS.span);
        let satellite = self.satellite_loss.unwrap_or(parts::COMBINER_SATELLITE_LOSS.span);
        at_least("a combiner's loss", low, 0.0, "dB", "0 dB or more")?;
        at_least("a combiner's loss", satellite, 0.0, "dB", "0 dB or more")?;
        crate::error::at_least("a combiner's lower band", self.low_top.value(), 1.0, "MHz", "1 MHz or more")?;
        let losses = [Decibels(dice.span(low)), Decibels(dice.span(satellite))];
        let drawn = dice.span(parts::COMBINER_ISOLATION.span);
        let return_loss = Decibels(dice.span(parts::COMBINER_RETURN_LOSS.span));
        let delay = dice.span(parts::FILTER_DELAY.span);
        let phases = [dice.phase(), dice.phase(), dice.phase()];
        let isolation = self.isolation.unwrap_or(Decibels(drawn));
        let least_gap = parts::COMBINER_LEAST_GAP.span.likely * self.low_top.value();
        let gap = (self.satellite_bottom - self.low_top).value().max(least_gap);
        let turnover = f64::midpoint(self.low_top.value(), self.satellite_bottom.value());
        let width = gap / (2.0 * WIDTHS_TO_EDGE);
        Diplexer::new(losses, isolation, return_loss, Megahertz(turnover), Megahertz(width), delay, phases)
            .map(Model::Diplexer)
    }
}
