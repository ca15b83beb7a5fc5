//! What one draw shows, thrown once for all who ask for it.

use std::cell::RefCell;
use std::collections::HashMap;

use coax::estimates::house::MODEL_ERROR;
use coax::link::LinkDraw;
use coax::{Decibels, Dice};
use foldhash::fast::FixedState;

use super::circuit::variant;

/// Sets the dice of a room's model error apart from those of all else at its outlet.
const MODEL_ERROR_KEY: u8 = 9;

/// The dice of one draw, keyed by where in a house something stands.
#[derive(Debug)]
pub(super) struct Throws {
    seed: u64,
    draw: u64,
    links: RefCell<HashMap<[u8; 16], LinkDraw, FixedState>>,
    errors: RefCell<HashMap<[u8; 16], f64, FixedState>>,
}

impl Throws {
    pub(super) fn of(seed: u64, draw: u64) -> Self {
        Self { seed, draw, links: RefCell::default(), errors: RefCell::default() }
    }

    /// The dice of whatever stands at a place.
    pub(super) fn dice(&self, key: [u8; 16]) -> Dice {
        Dice::thrown(self.seed, self.draw, key)
    }

    /// What is not known of the adapter at an outlet.
    pub(super) fn link(&self, outlet: [u8; 16]) -> LinkDraw {
        let mut links = self.links.borrow_mut();
        *links.entry(outlet).or_insert_with(|| LinkDraw::draw(&mut self.dice(outlet)))
    }

    /// By what share of the power the way to an outlet differs from what the model makes of it.
    pub(super) fn model_error(&self, outlet: [u8; 16]) -> f64 {
        let mut errors = self.errors.borrow_mut();
        *errors.entry(outlet).or_insert_with(|| {
            (-Decibels(self.dice(variant(outlet, MODEL_ERROR_KEY)).span(MODEL_ERROR.span))).power()
        })
    }
}
