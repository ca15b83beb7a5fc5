//! A house amplifier as its label states it.

use super::{SplitterRating, at_least};
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{Amplifier, AmplifierCore, Model};
use crate::quantity::{Decibels, Megahertz};
use crate::span::Span;

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
    /// Loss from the input to the first output of a by-pass in 1125 to 1675 MHz, in dB, if it has one.
    pub bypass: Option<Span>,
}

/// The band for which the splitters in an amplifier's housing are taken to be made.
const HOUSING_BAND: (Megahertz, Megahertz) = (Megahertz(5.0), Megahertz(1675.0));

impl AmplifierRating {
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
        let stage = dice.span(parts::AMPLIFIER_STAGE.span);
        let opaque = dice.span(parts::AMPLIFIER_OPAQUE.span);
        let return_loss = dice.span(parts::AMPLIFIER_RETURN_LOSS.span);
        let delay = dice.span(parts::AMPLIFIER_DELAY.span);
        let phases = [dice.phase(), dice.phase()];
        let return_gain = dice.span(self.return_gain);
        let bypass = dice.span(self.bypass.unwrap_or(Span::exact(0.0)));
        let modem = dice.span(self.modem_port.unwrap_or(Span::exact(stage)));
        let gains: Vec<f64> = self.outputs.iter().map(|&gain| dice.span(gain)).collect();
        // The strongest output's share of the splitter behind: a balanced split's loss.
        let strongest = gains.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let power: f64 = gains.iter().map(|gain| Decibels(gain - strongest).power()).sum();
        let excess = if gains.len() > 1 { 0.5 * (gains.len() as f64).log2() } else { 0.0 };
        let split_loss = Decibels::of_power(power).value() + excess;
        let before = if self.modem_port.is_some() { stage } else { 0.0 };
        let core = AmplifierCore {
            forward_gain: Decibels(strongest + split_loss + before),
            return_gain: Decibels(return_gain + first_loss(&gains, strongest, split_loss) + before),
            split: self.split,
            forward_top: self.forward_top,
            opaque_loss: Decibels(opaque),
            bypass_loss: self
                .bypass
                .map(|_| Decibels((bypass - first_loss(&gains, strongest, split_loss) - before).max(0.0))),
            return_loss: Decibels(return_loss),
            delay_ns: delay,
            phases,
        };
        let housing = |legs: Vec<Span>| SplitterRating {
            legs,
            band: Some(HOUSING_BAND),
            isolation: None,
            return_loss: None,
            // Nobody says how well its outputs are kept apart in the MoCA band.
            for_moca: None,
        };
        let in_front = match self.modem_port {
            Some(_) => Some(
                housing(vec![Span::exact(stage), Span::exact(modem.max(0.0))]).draw_splitter(dice, None)?,
            ),
            None => None,
        };
        let behind = if gains.len() > 1 {
            let legs = gains.iter().map(|gain| Span::exact(strongest - gain + split_loss)).collect();
            Some(housing(legs).draw_splitter(dice, None)?)
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
