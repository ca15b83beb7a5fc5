//! Rates that were worked out to weigh changes, kept for all lists that are made of one house.
//!
//! The same changes are come to again and again: in the search, in a round of the order, for another list. They are told apart by
//! their order too, for what comes first may have a say in what the next one makes of the house.

use std::cell::RefCell;
use std::collections::BTreeMap;

use house::record::{ChangeKind, Survey};

use crate::error::AdviceError;
use crate::forecast::{Forecast, Forecaster, Options};

/// So many are kept at the most (a few kilobytes each); then all are forgotten.
const MOST_KEPT: usize = 2_000;

/// What the rooms of a house get after some changes, by these, in the order in which they were made.
#[derive(Debug)]
pub(super) struct KnownRates {
    forecaster: RefCell<Forecaster>,
    by_changes: RefCell<BTreeMap<Vec<ChangeKind>, Forecast>>,
}

impl KnownRates {
    /// Nothing is known yet.
    pub(super) fn new(screening: &Options) -> Self {
        Self { forecaster: RefCell::new(Forecaster::new(*screening)), by_changes: RefCell::default() }
    }

    /// What the rooms get in each of these houses, of which each is what these changes make of the house.
    pub(super) fn each(&self, made: &[(Vec<ChangeKind>, &Survey)]) -> Result<Vec<Forecast>, AdviceError> {
        let mut known = self.by_changes.borrow_mut();
        if known.len() + made.len() > MOST_KEPT {
            known.clear();
        }
        let new: Vec<_> = made.iter().filter(|(changes, _)| !known.contains_key(changes)).collect();
        let houses: Vec<&Survey> = new.iter().map(|(_, house)| *house).collect();
        let forecasts = self.forecaster.borrow_mut().forecast_each(&houses)?;
        known.extend(new.into_iter().map(|(changes, _)| changes.clone()).zip(forecasts));
        Ok(made.iter().filter_map(|(changes, _)| known.get(changes).cloned()).collect())
    }

    /// What they get in one.
    pub(super) fn one(&self, changes: Vec<ChangeKind>, house: &Survey) -> Result<Forecast, AdviceError> {
        self.each(&[(changes, house)])?.pop().ok_or(AdviceError::Inner("house"))
    }
}

/// Changes, and one more after them.
pub(super) fn with(changes: &[ChangeKind], one_more: ChangeKind) -> Vec<ChangeKind> {
    [changes, &[one_more]].concat()
}
