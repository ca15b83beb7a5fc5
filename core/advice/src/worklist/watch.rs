//! How far a work list is, and stopping it.

use house::record::Survey;

use crate::error::AdviceError;
use crate::forecast::{Forecast, Options, forecast_watched};

/// Counts what is done and asks whoever watches whether to go on.
///
/// How many steps a list will have is known only when it is done: after each round the candidates that were worth their
/// work are taken as the rounds still to come. What is told only ever rises.
pub(super) struct Meter<'a> {
    watch: &'a mut dyn FnMut(f64) -> bool,
    /// Forecasts made.
    done: f64,
    /// Forecasts still to make in this round.
    of_round: f64,
    /// Forecasts that the rounds after this one will make, as far as can be told.
    later: f64,
    told: f64,
}

/// A forecast that states a result is this many times the work of one that weighs a candidate: 128 draws at 111
/// frequencies against 16 at 28.
const STATING: f64 = 32.0;

impl<'a> Meter<'a> {
    pub(super) fn new(watch: &'a mut dyn FnMut(f64) -> bool) -> Self {
        Self { watch, done: 0.0, of_round: STATING, later: 4.0 * STATING, told: 0.0 }
    }

    /// Makes a forecast that states a result, counted draw by draw.
    pub(super) fn stated(&mut self, house: &Survey, options: &Options) -> Result<Forecast, AdviceError> {
        let of_draw = STATING / f64::from(options.draws.max(1));
        let mut left = STATING;
        let mut one_more = || {
            let work = of_draw.min(left);
            left -= work;
            self.count(work).is_ok()
        };
        let stated = forecast_watched(house, options, &mut one_more)?;
        // Fewer draws may do, and where nothing is worked out there are none.
        self.count(left)?;
        Ok(stated)
    }

    /// A candidate is weighed.
    pub(super) fn weighed(&mut self) -> Result<(), AdviceError> {
        self.count(1.0)
    }

    /// A round begins.
    pub(super) fn round(&mut self, candidates: usize) {
        self.of_round = candidates as f64;
    }

    /// A round ends: so many candidates were worth their work.
    pub(super) fn rounds_left(&mut self, worth: usize, candidates: usize) {
        self.of_round = 0.0;
        self.later = worth as f64 * 0.5 * candidates as f64;
    }

    fn count(&mut self, work: f64) -> Result<(), AdviceError> {
        self.done += work;
        self.of_round = (self.of_round - work).max(0.0);
        let share = self.done / (self.done + self.of_round + self.later);
        self.told = self.told.max(share.min(1.0));
        if (self.watch)(self.told) { Ok(()) } else { Err(AdviceError::Stopped) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_told_only_rises_and_a_no_stops() {
        let mut told = Vec::new();
        let mut watch = |share: f64| {
            told.push(share);
            told.len() < 40
        };
        let mut meter = Meter::new(&mut watch);
        let mut rounds = (0..5).rev();
        let stopped = rounds.any(|left| {
            meter.round(7);
            let stopped = (0..7).any(|_| meter.weighed().is_err());
            meter.rounds_left(left, 7);
            stopped || (0..10).any(|_| meter.count(STATING / 10.0).is_err())
        });
        assert!(stopped);
        assert_eq!(told.len(), 40);
        assert!(told.windows(2).all(|pair| pair[0] <= pair[1]));
        assert!(told.iter().all(|share| (0.0..=1.0).contains(share)));
    }
}
