//! A filter that passes one band or several and sends the rest back.

use super::entry_filter::reflecting;
use super::two_port::TwoPort;
use crate::error::{CoaxError, at_least};
use crate::lanes::Real;
use crate::look::Look;
use crate::quantity::{Decibels, Megahertz};

/// One edge of a pass band: half of the rejection, in decibels, is reached at `turnover`; `width` sets how steeply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FilterEdge {
    /// Where half of the decibels are reached.
    pub turnover: Megahertz,
    /// The width of the logistic curve.
    pub width: Megahertz,
}

impl FilterEdge {
    /// 1 above, 0 below.
    #[inline(always)]
    fn above<R: Real>(self, megahertz: R) -> R {
        ((megahertz - R::of(self.turnover.value())) / R::of(self.width.value())).logistic()
    }
}

/// A band that passes, between two edges; none: no edge on that side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PassBand {
    /// The lower edge.
    pub low: Option<FilterEdge>,
    /// The upper edge.
    pub high: Option<FilterEdge>,
}

impl PassBand {
    /// 1 inside, 0 outside.
    #[inline(always)]
    fn share<R: Real>(&self, megahertz: R) -> R {
        let mut share = R::of(1.0);
        if let Some(low) = self.low {
            share = low.above(megahertz);
        }
        if let Some(high) = self.high {
            share = share * (R::of(1.0) - high.above(megahertz));
        }
        share
    }
}

/// Band pass, band stop, comb: whatever its pass bands say. Passive as [`super::EntryFilter`] is.
#[derive(Debug, Clone, PartialEq)]
pub struct BandFilter {
    bands: Vec<PassBand>,
    pass: f64,
    stop: f64,
    dissipated: f64,
    delay_ns: f64,
}

impl BandFilter {
    /// A filter of 1 to 16 pass bands with this through loss inside and outside of them, the loss by dissipation and the
    /// delay in nanoseconds.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] for no or too many bands, [`CoaxError::BadFigure`] for a negative figure or an edge without
    /// width.
    pub fn new(
        bands: Vec<PassBand>,
        pass: Decibels,
        stop: Decibels,
        dissipated: Decibels,
        delay_ns: f64,
    ) -> Result<Self, CoaxError> {
        if !(1..=16).contains(&bands.len()) {
            return Err(CoaxError::BadCount {
                what: "the pass bands of a filter",
                given: bands.len(),
                must: "1 to 16",
            });
        }
        for edge in bands.iter().flat_map(|band| [band.low, band.high]).flatten() {
            at_least("a filter's turnover", edge.turnover.value(), 0.0, "MHz", "0 MHz or more")?;
            at_least("a filter's turnover width", edge.width.value(), 1e-6, "MHz", "above 0 MHz")?;
        }
        Ok(Self {
            bands,
            pass: at_least("a filter's pass loss", pass.value(), 0.0, "dB", "0 dB or more")?,
            stop: at_least("a filter's rejection", stop.value(), 0.0, "dB", "0 dB or more")?,
            dissipated: at_least("a filter's dissipation", dissipated.value(), 0.0, "dB", "0 dB or more")?,
            delay_ns: at_least("a filter's delay", delay_ns, 0.0, "ns", "0 ns or more")?,
        })
    }

    /// Through loss at `frequency` between matched ends.
    pub fn loss(&self, frequency: Megahertz) -> Decibels {
        Decibels(self.loss_at(frequency.value()))
    }

    #[inline(always)]
    fn loss_at<R: Real>(&self, megahertz: R) -> R {
        let mut share = R::of(0.0);
        for band in &self.bands {
            share = share.max(band.share(megahertz));
        }
        R::of(self.stop) + R::of(self.pass - self.stop) * share
    }

    #[inline(always)]
    pub(super) fn two_port<R: Real>(&self, look: &mut Look<R>) -> TwoPort<R> {
        reflecting(self.loss_at(look.megahertz), self.dissipated, self.delay_ns, look)
    }
}
