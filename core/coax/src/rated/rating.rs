//! Any part as a rating.

use std::sync::Arc;

use super::{
    AmplifierRating, BandFilterRating, CableRating, DiplexerRating, FilterRating, JointRating,
    MismatchRating, PadRating, PassOnRating, SplitterRating, TapRating,
};
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::model::{Junction, Measured, Model};

/// A part of any kind, before its ranges are drawn.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Rating {
    /// A run of cable.
    Cable(CableRating),
    /// A splitter.
    Splitter(SplitterRating),
    /// A tap.
    Tap(TapRating),
    /// An entry filter or high-pass filter.
    Filter(FilterRating),
    /// A filter of any other bands.
    BandFilter(BandFilterRating),
    /// A satellite combiner.
    Diplexer(DiplexerRating),
    /// An amplifier.
    Amplifier(AmplifierRating),
    /// A barrel, ground block, wall plate or power inserter.
    Joint(JointRating),
    /// What sends part of a wave back and loses nothing.
    Mismatch(MismatchRating),
    /// A pad.
    Pad(PadRating),
    /// A device that passes the cable on.
    PassOn(PassOnRating),
    /// So many cables tied together with no splitter between.
    Junction(usize),
    /// A part that was measured.
    Measured(Arc<Measured>),
}

impl Rating {
    /// A concrete part.
    ///
    /// # Errors
    /// As the kind's own `draw`.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        match self {
            Self::Cable(rating) => rating.draw(dice),
            Self::Splitter(rating) => rating.draw(dice),
            Self::Tap(rating) => rating.draw(dice),
            Self::Filter(rating) => rating.draw(dice),
            Self::BandFilter(rating) => rating.draw(dice),
            Self::Diplexer(rating) => rating.draw(dice),
            Self::Amplifier(rating) => rating.draw(dice),
            Self::Joint(rating) => rating.draw(dice),
            Self::Mismatch(rating) => rating.draw(dice),
            Self::Pad(rating) => rating.draw(dice),
            Self::PassOn(rating) => rating.draw(dice),
            Self::Junction(arms) => Junction::new(*arms).map(Model::Junction),
            Self::Measured(part) => Ok(Model::Measured(Arc::clone(part))),
        }
    }
}
