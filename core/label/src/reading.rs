//! What was read off a label.

use coax::{Decibels, Megahertz};

use super::doubt::Doubt;
use super::kind::{CableSeries, PartKind, PowerPass};

/// What a label states. Nothing is filled in that the text does not state; what is read but may be wrong, and
/// what was left out because it could not be read safely, is told in [`doubts`](Self::doubts).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LabelReading {
    /// The kind of part.
    pub kind: Option<PartKind>,
    /// Lower edge of the band the part is rated for: a filter's pass band, an amplifier's forward band, a
    /// diplexer's band below the satellite band. 0 where the label says that it begins at direct current ("DC-1000MHz").
    pub low: Option<Megahertz>,
    /// Upper edge of that band.
    pub high: Option<Megahertz>,
    /// Loss from the input to each output, positive, in the order of the outputs. A figure that the label
    /// states once for all legs is repeated. A tap: the through loss alone. A part with one way through: its
    /// insertion loss, an attenuator's value. Empty where not stated.
    pub leg_losses: Vec<Decibels>,
    /// Loss from the input to a tap output, positive.
    pub tap: Option<Decibels>,
    /// An amplifier's forward gain.
    pub gain: Option<Decibels>,
    /// A filter's loss in its stop band, positive.
    pub rejection: Option<Decibels>,
    /// Isolation between outputs, positive.
    pub isolation: Option<Decibels>,
    /// Return loss, positive.
    pub return_loss: Option<Decibels>,
    /// Whether direct current passes, and where.
    pub power_pass: Option<PowerPass>,
    /// Outputs the label counts ("4-WAY"): of a splitter its legs, of an amplifier its outputs, of a tap its
    /// tap outputs.
    pub legs: Option<u8>,
    /// Lower edge of a filter's stop band.
    pub stop_low: Option<Megahertz>,
    /// Upper edge of a filter's stop band.
    pub stop_high: Option<Megahertz>,
    /// Lower edge of an amplifier's return band.
    pub return_low: Option<Megahertz>,
    /// Upper edge of an amplifier's return band.
    pub return_high: Option<Megahertz>,
    /// Gain in the return band; below zero it is a loss.
    pub return_gain: Option<Decibels>,
    /// Lower edge of a diplexer's satellite band.
    pub satellite_low: Option<Megahertz>,
    /// Upper edge of a diplexer's satellite band.
    pub satellite_high: Option<Megahertz>,
    /// Whether an amplifier lets the home network's band by.
    pub moca_bypass: Option<bool>,
    /// Whether an amplifier has an output that is not amplified, for a modem or voice.
    pub modem_port: Option<bool>,
    /// Whether the label says that the part is made for MoCA.
    pub says_moca: Option<bool>,
    /// Whether the label says "Indoor use only".
    pub indoor_only: Option<bool>,
    /// A cable's series, from its jacket print.
    pub cable: Option<CableSeries>,
    /// What in this reading is doubtful, and what was left out.
    pub doubts: Vec<Doubt>,
}

impl LabelReading {
    /// Whether nothing was read.
    pub fn is_blank(&self) -> bool {
        *self == Self { doubts: self.doubts.clone(), ..Self::default() }
    }
}
