//! A tap (directional coupler) as its label states it.

use super::{AboveSplitter, SplitterRating, at_least, draw_above};
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{AboveRating, Model, Splitter, Tap};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;

/// What is known of a tap. Port 0 is its input, port 1 its through output, ports 2 and up its taps. A tap without a
/// through output is a [`SplitterRating`].
///
/// Above its band it behaves as a splitter does: it loses more and isolates less, but never blocks.
#[derive(Debug, Clone, PartialEq)]
pub struct TapRating {
    /// Loss to the through output in dB; none: not on the label, then what the taps leave and a little more.
    pub through: Option<Span>,
    /// Loss from the input to each tap port in dB: 1 to 8 of them.
    pub taps: Vec<Span>,
    /// The band on the label; none: not readable.
    pub band: Option<(Megahertz, Megahertz)>,
    /// Loss from the through output to the first tap on the label.
    pub isolation: Option<Decibels>,
    /// Directivity on the label: isolation less tap loss. Used where no isolation is stated.
    pub directivity: Option<Decibels>,
    /// Return loss on the label.
    pub return_loss: Option<Decibels>,
    /// Whether the label says that it is made for MoCA (`Some(true)`) or for something else (`Some(false)`); `None` where it
    /// names neither.
    pub for_moca: Option<bool>,
}

impl TapRating {
    /// A concrete tap.
    ///
    /// # Errors
    /// [`CoaxError`] for no or more than 8 taps, a negative figure or a band without width.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        if !(1..=8).contains(&self.taps.len()) {
            return Err(CoaxError::BadCount {
                what: "the ports of a tap",
                given: self.taps.len(),
                must: "1 to 8",
            });
        }
        let through = self.through.unwrap_or(Span::exact(0.0));
        at_least("a tap's through loss", through, 0.0, "dB", "0 dB or more")?;
        for &tap in &self.taps {
            at_least("a tap's loss", tap, 0.0, "dB", "0 dB or more")?;
        }
        let directivity = self.directivity.unwrap_or(Decibels(dice.span(parts::TAP_DIRECTIVITY.span)));
        let excess = dice.span(parts::TAP_THROUGH_EXCESS.span);
        let through = dice.span(through);
        let taps: Vec<f64> = self.taps.iter().map(|&tap| dice.span(tap)).collect();
        let AboveSplitter { above, slope, return_loss } = draw_above(self.band, dice)?;
        let return_loss = self.return_loss.unwrap_or(return_loss);

        let (arm, behind) = arm_and_legs(&taps);
        let through = match self.through {
            Some(_) => through,
            None => -Decibels::of_power((1.0 - (-Decibels(arm)).power()).max(0.1)).value() + excess,
        };
        let first_leg = behind.first().copied().unwrap_or(0.0);
        let isolation = match self.isolation {
            Some(isolation) => (isolation.value() - first_leg).max(0.0),
            None => arm + directivity.value(),
        };
        let coupler = Splitter::new(&[Decibels(through), Decibels(arm)], Decibels(isolation), return_loss)?
            .with_slope(slope)?
            // The label's isolation counts from the arm; above the band at least the arm's own loss is left.
            .with_above_rating(AboveRating {
                isolation: Decibels(above.isolation.value().max(arm)),
                ..above
            })?;
        let mut delays: Vec<f64> = (0..6).map(|_| dice.span(parts::SPLITTER_DELAY.span)).collect();
        let coupler = coupler.with_phases(|| dice.phase(), || delays.pop().unwrap_or(0.0))?;
        let behind = if behind.len() > 1 {
            let legs = behind.into_iter().map(Span::exact).collect();
            // Extra loss above the band is counted once, in the coupler.
            let rating = SplitterRating {
                legs,
                band: self.band,
                isolation: None,
                return_loss: None,
                for_moca: self.for_moca,
            };
            Some(rating.draw_splitter(dice, Some(Decibels(0.0)))?)
        } else {
            None
        };
        Tap::new(coupler, behind).map(|tap| Model::Tap(Box::new(tap)))
    }
}

/// The loss to the arm and the losses behind it: a splitter whose legs lose a little more a stage than the ideal.
fn arm_and_legs(taps: &[f64]) -> (f64, Vec<f64>) {
    let power: f64 = taps.iter().map(|&tap| (-Decibels(tap)).power()).sum();
    let stages = (taps.len() as f64).log2();
    let arm =
        (-Decibels::of_power(power).value() - parts::SPLITTER_STAGE_EXCESS.span.likely * stages).max(0.0);
    (arm, taps.iter().map(|tap| (tap - arm).max(0.0)).collect())
}
