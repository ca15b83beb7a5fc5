//! Joints without length: barrels, ground blocks, wall plates, power inserters.

use super::{Condition, at_least};
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{Link, Model};
use crate::quantity::Decibels;
use crate::span::Span;

/// What is known of a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct JointRating {
    /// Its loss in dB when sound.
    pub loss: Span,
    /// Its state.
    pub condition: Condition,
}

impl JointRating {
    /// A barrel that couples two cables.
    pub fn barrel(condition: Condition) -> Self {
        Self { loss: parts::BARREL_LOSS.span, condition }
    }

    /// A ground block.
    pub fn ground_block(condition: Condition) -> Self {
        Self { loss: parts::GROUND_BLOCK_LOSS.span, condition }
    }

    /// A wall plate.
    pub fn wall_plate(condition: Condition) -> Self {
        Self { loss: parts::WALL_PLATE_LOSS.span, condition }
    }

    /// A power inserter on the way of the signals; its power port carries none of them.
    pub fn power_inserter(condition: Condition) -> Self {
        Self { loss: parts::POWER_INSERTER_LOSS.span, condition }
    }

    /// A concrete joint.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative loss.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        at_least("a joint's loss", self.loss, 0.0, "dB", "0 dB or more")?;
        let loss = dice.span(self.loss) + dice.span(self.condition.loss());
        let return_loss = dice.span(self.condition.return_loss());
        Link::new(Decibels(loss), Decibels(return_loss), 0.0).map(Model::Link)
    }
}
