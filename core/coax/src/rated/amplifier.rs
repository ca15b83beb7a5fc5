//! A house amplifier as its label states it.

use super::{SplitterRating, at_least};
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{Amplifier, AmplifierCore, Model};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;
use crate::trade::{EXTENDED_D_HIGH, LABELS_BEGIN};

/// What is known of an amplifier. Port 0 is its input, then its outputs in order, then the output that is not amplified.
///
/// A port that only takes power carries no signal, so it is no port here; where an output takes the power too it is an
/// output like the others, and a power inserter stands further down as a [`super::JointRating`].
#[derive(Debug, Clone, PartialEq)]
pub struct AmplifierRating {
    /// Forward gain from the input to each output in dB.
    pub outputs: Vec<Span>,
    /// Loss from the input to an output that is not amplified (for a modem or voice), in dB.
    pub modem_port: Option<Span>,
    /// Top of the return band (42, 65, 85 or 204 MHz are usual).
    pub split: Megahertz,
    /// Top of the forward band.
    pub forward_top: Megahertz,
    /// Return gain from the first output to the input in dB (0: passive return without loss).
    pub return_gain: Span,
    /// Its by-pass in 1125 to 1675 MHz.
    pub bypass: ByPass,
}

/// What is known of an amplifier's by-pass: a passive way round its core, both ways. Losses are its own in dB; what the
/// splitters in the housing take comes on top.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ByPass {
    /// There is none.
    None,
    /// There is one of this loss.
    There(Span),
    /// Nobody knows: two worlds.
    Perhaps {
        /// Its loss, if there is one.
        loss: Span,
        /// The chance that there is one, 0 to 1.
        odds: f64,
    },
}

impl ByPass {
    /// The same in the world in which it is there, or in the one in which it is not; what is known stays.
    #[must_use]
    pub fn in_world(self, there: bool) -> Self {
        match self {
            Self::Perhaps { loss, .. } if there => Self::There(loss),
            Self::Perhaps { .. } => Self::None,
            known => known,
        }
    }

    /// Its loss, if there is one.
    fn loss(self) -> Option<Span> {
        match self {
            Self::There(loss) | Self::Perhaps { loss, .. } => Some(loss),
            Self::None => None,
        }
    }

    /// Whether the dice show one.
    fn is_shown(self, dice: &Dice) -> bool {
        match self {
            Self::There(_) => true,
            Self::Perhaps { odds, .. } => dice.beside().chance(odds),
            Self::None => false,
        }
    }
}

/// The band for which the splitters in an amplifier's housing are taken to be made. That behind the core has no use for
/// more than the core gives it: without a by-pass its band ends with the amplifier's.
const HOUSING_BAND: (Megahertz, Megahertz) = (LABELS_BEGIN, EXTENDED_D_HIGH);

impl AmplifierRating {
    /// Whether these dice show a by-pass; [`draw`](Self::draw) with the same dice gives an amplifier with one, or without.
    pub fn shows_by_pass(&self, dice: &Dice) -> bool {
        self.bypass.is_shown(dice)
    }

    /// A concrete amplifier.
    ///
    /// # Errors
    /// [`CoaxError`] for no or too many outputs, a gain that is not finite, or a forward band that does not lie above the
    /// split.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        for &gain in &self.outputs {
            at_least("an amplifier's gain", gain, -60.0, "dB", "-60 dB or more")?;
        }
        at_least("an amplifier's return gain", self.return_gain, -60.0, "dB", "-60 dB or more")?;
        if !(1..=16).contains(&self.outputs.len()) {
            return Err(CoaxError::BadCount {
                what: "the outputs of an amplifier",
                given: self.outputs.len(),
                must: "1 to 16",
            });
        }
        let has_by_pass = self.bypass.is_shown(dice);
        let stage = dice.span(parts::AMPLIFIER_STAGE.span);
        let opaque = dice.span(parts::AMPLIFIER_OPAQUE.span);
        let return_loss = dice.span(parts::AMPLIFIER_RETURN_LOSS.span);
        let delay = dice.span(parts::AMPLIFIER_DELAY.span);
        let phases = [dice.phase(), dice.phase()];
        let return_gain = dice.span(self.return_gain);
        let loss = dice.span(self.bypass.loss().unwrap_or(Span::exact(0.0)));
        let bypass = has_by_pass.then_some(loss);
        let modem = dice.span(self.modem_port.unwrap_or(Span::exact(stage)));
        let gains: Vec<f64> = self.outputs.iter().map(|&gain| dice.span(gain)).collect();
        // The strongest output's share of the splitter behind: a balanced split's loss.
        let strongest = gains.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let power: f64 = gains.iter().map(|gain| Decibels(gain - strongest).power()).sum();
        let a_stage = parts::SPLITTER_STAGE_EXCESS.span.likely;
        let excess = if gains.len() > 1 { a_stage * (gains.len() as f64).log2() } else { 0.0 };
        let split_loss = Decibels::of_power(power).value() + excess;
        let before = if self.modem_port.is_some() { stage } else { 0.0 };
        let core = AmplifierCore {
            forward_gain: Decibels(strongest + split_loss + before),
            return_gain: Decibels(return_gain + first_loss(&gains, strongest, split_loss) + before),
            split: self.split,
            forward_top: self.forward_top,
            opaque_loss: Decibels(opaque),
            bypass_loss: bypass.map(|loss| Decibels(loss.max(0.0))),
            return_loss: Decibels(return_loss),
            delay_ns: delay,
            phases,
        };
        let housing = |legs: Vec<Span>, top: Megahertz| SplitterRating {
            legs,
            band: Some((HOUSING_BAND.0, top)),
            isolation: None,
            return_loss: None,
            // Nobody says how well its outputs are kept apart in the MoCA band.
            for_moca: None,
        };
        let in_front = match self.modem_port {
            Some(_) => Some(
                housing(vec![Span::exact(stage), Span::exact(modem.max(0.0))], HOUSING_BAND.1)
                    .draw_splitter(dice, None)?,
            ),
            None => None,
        };
        let behind = if gains.len() > 1 {
            let legs = gains.iter().map(|gain| Span::exact(strongest - gain + split_loss)).collect();
            let top = if bypass.is_some() { HOUSING_BAND.1 } else { self.forward_top };
            Some(housing(legs, top).draw_splitter(dice, None)?)
        } else {
            None
        };
        Amplifier::new(core, in_front, behind).map(|amplifier| Model::Amplifier(Box::new(amplifier)))
    }
}

/// Loss of the splitter behind to the first output.
fn first_loss(gains: &[f64], strongest: f64, split_loss: f64) -> f64 {
    gains.first().map_or(0.0, |gain| strongest - gain + split_loss)
}
