//! An entry filter or high-pass filter as its label or data sheet states it.

use super::at_least;
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{EntryFilter, Model};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;
use crate::trade::{EXTENDED_D_HIGH, EXTENDED_D_LOW, FILTERS_PASS, LABELS_BEGIN};

/// From its middle to a band edge the turnover runs over this many widths: at the edge of the stop band 98.5 % of the
/// decibels are reached, at the edge of the pass band 1.5 %. The filter of 40 dB whose data sheet is named at
/// [`FILTERS_PASS`] has 0.5 dB typical to 750 MHz and 1.2 dB typical to 1002 MHz before a stop band from 1125 MHz: 0.5 + 1.5 % of 40 = 1.1.
pub(super) const WIDTHS_TO_EDGE: f64 = 4.2;

/// What is known of a filter.
#[derive(Debug, Clone, PartialEq)]
pub struct FilterRating {
    /// Lower edge of the pass band.
    pub pass_low: Megahertz,
    /// Upper edge of the pass band.
    pub pass_high: Megahertz,
    /// Lower edge of the stop band.
    pub stop_low: Megahertz,
    /// Upper edge of the stop band.
    pub stop_high: Megahertz,
    /// Loss inside the pass band in dB.
    pub pass_loss: Span,
    /// The least rejection in the stop band.
    pub rejection: Decibels,
}

impl FilterRating {
    /// A high-pass filter that passes the MoCA band and sends the TV and modem band back, with what its label states.
    pub fn high_pass(pass_loss: Option<Span>, rejection: Option<Decibels>) -> Self {
        Self {
            pass_low: EXTENDED_D_LOW,
            pass_high: EXTENDED_D_HIGH,
            stop_low: LABELS_BEGIN,
            stop_high: FILTERS_PASS,
            pass_loss: pass_loss.unwrap_or(parts::BAND_FILTER_LOSS.span),
            rejection: rejection.unwrap_or(Decibels(parts::FILTER_REJECTION.span.low)),
        }
    }

    /// A concrete filter.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure or bands that overlap.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        at_least("a filter's pass loss", self.pass_loss, 0.0, "dB", "0 dB or more")?;
        let rejection = self.rejection.value();
        crate::error::at_least("a filter's rejection", rejection, 0.0, "dB", "0 dB or more")?;
        // A stop band below the pass band turns over the other way.
        let upwards = self.stop_low.value() >= self.pass_high.value();
        let (near, far, sign) = if upwards {
            (self.pass_high.value(), self.stop_low.value(), 1.0)
        } else {
            (self.stop_high.value(), self.pass_low.value(), -1.0)
        };
        let gap = far - near;
        crate::error::at_least("the gap between a filter's bands", gap, 1e-3, "MHz", "above 0 MHz")?;
        let pass = dice.span(self.pass_loss);
        let margin = dice.span(parts::FILTER_MARGIN.span);
        let return_loss = Decibels(dice.span(parts::FILTER_RETURN_LOSS.span));
        let delay = dice.span(parts::FILTER_DELAY.span);
        let share = crate::lanes::Real::logistic(WIDTHS_TO_EDGE);
        let stop = pass + (rejection + margin - pass).max(0.0) / share;
        let turnover = f64::midpoint(near, far);
        let width = sign * gap / (2.0 * WIDTHS_TO_EDGE);
        EntryFilter::new(
            Decibels(pass),
            Decibels(stop),
            Megahertz(turnover),
            Megahertz(width),
            dissipation(pass, return_loss),
            delay,
        )
        .map(Model::EntryFilter)
    }
}

/// The loss by dissipation that leaves a filter of this pass loss this return loss in its pass band.
pub(super) fn dissipation(pass: f64, return_loss: Decibels) -> Decibels {
    let kept = ((-Decibels(pass)).power() + (-return_loss).power()).min(1.0);
    Decibels((-Decibels::of_power(kept)).value().max(0.0))
}
