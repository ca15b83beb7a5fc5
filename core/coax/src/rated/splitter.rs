//! A splitter as its label states it.

use super::at_least;
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{AboveRating, Model, Splitter};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;

/// The band top from which a splitter may be made for MoCA (its upper edge by the SCTE 235 announcement,
/// broadbandtechreport.com, 14 March 2017; some labels say 1650).
const MOCA_TOP_MHZ: f64 = 1650.0;

/// What is known of a splitter.
#[derive(Debug, Clone, PartialEq)]
pub struct SplitterRating {
    /// Loss from the input to each leg in dB, as positive numbers.
    pub legs: Vec<Span>,
    /// The band on the label; none: not readable.
    pub band: Option<(Megahertz, Megahertz)>,
    /// Leg to leg loss on the label.
    pub isolation: Option<Decibels>,
    /// Return loss on the label.
    pub return_loss: Option<Decibels>,
    /// Whether the label says that it is made for MoCA (`Some(true)`) or for something else (`Some(false)`); `None` where it
    /// names neither.
    pub for_moca: Option<bool>,
}

impl SplitterRating {
    /// The isolation that is usual where the label states none: the word on it decides, and where it only reaches over the
    /// MoCA band, it may be either.
    pub fn usual_isolation(&self) -> Span {
        let reaches = self.band.is_some_and(|(_, top)| top.value() >= MOCA_TOP_MHZ);
        match self.for_moca {
            Some(true) => parts::SPLITTER_ISOLATION_RATED_FOR_MOCA.span,
            None if reaches => parts::SPLITTER_ISOLATION_WIDE.span,
            Some(false) | None => parts::SPLITTER_ISOLATION.span,
        }
    }

    /// A concrete splitter.
    ///
    /// # Errors
    /// [`CoaxError`] for no or too many legs, a negative loss or a band without width.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        self.draw_splitter(dice, None).map(Model::Splitter)
    }

    /// With `extra_above` instead of the drawn extra loss above the band.
    pub(super) fn draw_splitter(
        &self,
        dice: &mut Dice,
        extra_above: Option<Decibels>,
    ) -> Result<Splitter, CoaxError> {
        for &leg in &self.legs {
            at_least("a leg's loss", leg, 0.0, "dB", "0 dB or more")?;
        }
        let drawn_isolation = dice.span(self.usual_isolation());
        let AboveSplitter { mut above, slope, return_loss } = draw_above(self.band, dice)?;
        above.extra_loss = extra_above.unwrap_or(above.extra_loss);
        let delays: Vec<f64> =
            (0..2 * self.legs.len() + 2).map(|_| dice.span(parts::SPLITTER_DELAY.span)).collect();
        let legs: Vec<Decibels> = self.legs.iter().map(|&leg| Decibels(dice.span(leg))).collect();
        let isolation = self.isolation.unwrap_or(Decibels(drawn_isolation));
        let mut delays = delays.into_iter();
        Splitter::new(&legs, isolation, self.return_loss.unwrap_or(return_loss))?
            .with_slope(slope)?
            .with_above_rating(above)?
            .with_phases(|| dice.phase(), || delays.next().unwrap_or(0.0))
    }
}

/// What splitters and taps share: how they behave above their band, and what of it the label leaves open.
pub(super) struct AboveSplitter {
    /// The behaviour above the band.
    pub above: AboveRating,
    /// Slope in dB/GHz.
    pub slope: f64,
    /// Return loss in the band.
    pub return_loss: Decibels,
}

/// Draws it. The band, if any, must have a width.
pub(super) fn draw_above(
    band: Option<(Megahertz, Megahertz)>,
    dice: &mut Dice,
) -> Result<AboveSplitter, CoaxError> {
    if let Some((low, top)) = band {
        crate::error::at_least("a splitter's lower edge", low.value(), 0.0, "MHz", "0 MHz or more")?;
        let width = (top - low).value();
        crate::error::at_least("the width of a splitter's band", width, 1e-3, "MHz", "above 0 MHz")?;
    }
    let return_loss = Decibels(dice.span(parts::SPLITTER_RETURN_LOSS.span));
    let slope = dice.span(parts::SPLITTER_SLOPE.span);
    let drawn_top = dice.span(parts::SPLITTER_UNKNOWN_TOP.span);
    let usual = dice.span(parts::SPLITTER_EXTRA_ABOVE.span);
    let is_heavy = dice.chance(parts::SPLITTER_HEAVY_ABOVE_ODDS.span.likely);
    let heavy = dice.span(parts::SPLITTER_HEAVY_ABOVE.span);
    let above = AboveRating {
        top: band.map_or(Megahertz(drawn_top), |(_, top)| top),
        extra_loss: Decibels(if is_heavy { heavy } else { usual }),
        isolation: Decibels(dice.span(parts::SPLITTER_ISOLATION_ABOVE.span)),
        return_loss: Decibels(dice.span(parts::SPLITTER_RETURN_LOSS_ABOVE.span)),
        ramp: Megahertz(dice.span(parts::SPLITTER_RAMP.span)),
    };
    Ok(AboveSplitter { above, slope, return_loss })
}
