//! A filter of one pass band or several, known by their edges.

use super::at_least;
use super::filter::{WIDTHS_TO_EDGE, dissipation};
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::lanes::Real;
use crate::model::{BandFilter, FilterEdge, Model, PassBand};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;

/// What is known of a filter that passes some bands and stops the rest, sending it back.
#[derive(Debug, Clone, PartialEq)]
pub struct BandFilterRating {
    /// The pass bands in MHz, rising and apart from each other. A band that begins at 0 has no lower edge, one that ends
    /// at infinity no upper edge.
    pub passes: Vec<(Megahertz, Megahertz)>,
    /// Loss inside the pass bands in dB; none: not on the label.
    pub pass_loss: Option<Span>,
    /// The least rejection between them; none: not on the label.
    pub rejection: Option<Decibels>,
}

impl BandFilterRating {
    /// A filter that passes only what lies between these edges.
    pub fn band_pass(low: Megahertz, high: Megahertz) -> Self {
        Self { passes: vec![(low, high)], pass_loss: None, rejection: None }
    }

    /// A filter that stops only what lies between these edges of the pass bands around it.
    pub fn band_stop(passes_to: Megahertz, passes_from: Megahertz) -> Self {
        let passes = vec![(Megahertz(0.0), passes_to), (passes_from, Megahertz(f64::INFINITY))];
        Self { passes, pass_loss: None, rejection: None }
    }

    /// A concrete filter.
    ///
    /// # Errors
    /// [`CoaxError`] for no bands, more than 16 or bands that overlap, or a negative figure.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        let pass_loss = self.pass_loss.unwrap_or(parts::BAND_FILTER_LOSS.span);
        at_least("a filter's pass loss", pass_loss, 0.0, "dB", "0 dB or more")?;
        let gap = dice.span(parts::FILTER_GAP.span);
        let pass = dice.span(pass_loss);
        let drawn = dice.span(parts::FILTER_REJECTION.span);
        let rejection = self.rejection.map_or(drawn, Decibels::value);
        crate::error::at_least("a filter's rejection", rejection, 0.0, "dB", "0 dB or more")?;
        let return_loss = Decibels(dice.span(parts::FILTER_RETURN_LOSS.span));
        let delay = dice.span(parts::FILTER_DELAY.span);
        let mut last = 0.0;
        let mut bands = Vec::with_capacity(self.passes.len().min(17));
        for (index, &(low, high)) in self.passes.iter().enumerate().take(17) {
            crate::error::at_least(
                "a pass band's lower edge",
                low.value(),
                last,
                "MHz",
                "above the band below",
            )?;
            let open_above = high.value() == f64::INFINITY;
            let width = if open_above { f64::MAX } else { (high - low).value() };
            crate::error::at_least("the width of a pass band", width, 1e-3, "MHz", "above 0 MHz")?;
            last = if open_above { f64::MAX } else { high.value() };
            // No turnover reaches half way into the neighbouring pass band.
            let below =
                index.checked_sub(1).and_then(|k| self.passes.get(k)).map(|band| (low - band.1).value());
            let above = self.passes.get(index + 1).map(|band| (band.0 - high).value());
            let edge = |at: f64, away: f64, room: Option<f64>| {
                let reach = (at * gap).min(room.map_or(f64::INFINITY, |room| room / 2.0)).max(2e-3);
                FilterEdge {
                    turnover: Megahertz((at + away * reach / 2.0).max(0.0)),
                    width: Megahertz(reach / (2.0 * WIDTHS_TO_EDGE)),
                }
            };
            bands.push(PassBand {
                low: (low.value() > 0.0).then(|| edge(low.value(), -1.0, below)),
                high: (!open_above).then(|| edge(high.value(), 1.0, above)),
            });
        }
        let stop = Decibels(pass + (rejection - pass).max(0.0) / WIDTHS_TO_EDGE.logistic());
        BandFilter::new(bands, Decibels(pass), stop, dissipation(pass, return_loss), delay)
            .map(Model::BandFilter)
    }
}
