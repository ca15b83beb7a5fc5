//! What was read off a label.

use coax::{Decibels, Megahertz};
use serde::ser::{Serialize, SerializeMap, Serializer};

use super::doubt::Doubt;
use super::kind::{CableSeries, PartKind, PowerPass};
use crate::words::Language;

/// What a label states. Nothing is filled in that the text does not state; what is read but may be wrong, and
/// what was left out because it could not be read safely, is told in [`doubts`](Self::doubts).
///
/// As JSON (one object) the members are, in this order: `kind`, `low_mhz`, `high_mhz`, `leg_losses_db`,
/// `tap_db`, `gain_db`, `rejection_db`, `isolation_db`, `return_loss_db`, `power_pass`, `doubts` (sentences),
/// then `legs`, `stop_low_mhz`, `stop_high_mhz`, `power_pass_legs`, `return_low_mhz`, `return_high_mhz`,
/// `return_gain_db`, `satellite_low_mhz`, `satellite_high_mhz`, `network_bypass`, `passive_port`,
/// `rated_for_moca`, `indoor_only`, `cable_series`. A member is null where the label does not state it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LabelReading {
    /// The kind of part.
    pub kind: Option<PartKind>,
    /// Lower edge of the band the part is rated for: a filter's pass band, an amplifier's forward band, a
    /// diplexer's band below the satellite band. Absent also where the label says "DC".
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
    pub network_bypass: Option<bool>,
    /// Whether an amplifier has an output that is not amplified, for a modem or voice.
    pub passive_port: Option<bool>,
    /// Whether the label says that the part is made for MoCA.
    pub rated_for_moca: Option<bool>,
    /// Whether the label says "Indoor use only".
    pub indoor_only: Option<bool>,
    /// A cable's series, from its jacket print.
    pub cable_series: Option<CableSeries>,
    /// What in this reading is doubtful, and what was left out.
    pub doubts: Vec<Doubt>,
}

impl LabelReading {
    /// Whether nothing was read.
    pub fn is_blank(&self) -> bool {
        *self == Self { doubts: self.doubts.clone(), ..Self::default() }
    }

    /// The doubts as English sentences, in the order they arose.
    pub fn doubts_in_english(&self) -> Vec<String> {
        super::speak::in_english(&self.doubts)
    }

    /// The doubts as sentences of a language, in the order they arose.
    pub fn doubts_in(&self, language: &Language) -> Vec<String> {
        super::speak::in_language(&self.doubts, language)
    }

    /// This reading as a JSON object. Whether the object keeps the documented order of members depends on
    /// how `serde_json` is built; [`json_line`](Self::json_line) always does.
    pub fn to_json(&self) -> serde_json::Value {
        serde_json::to_value(self).unwrap_or_default()
    }

    /// This reading as one line of JSON, members in the documented order.
    pub fn json_line(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }
}

impl Serialize for LabelReading {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let megahertz = |edge: Option<Megahertz>| edge.map(Megahertz::value);
        let decibels = |figure: Option<Decibels>| figure.map(Decibels::value);
        let losses: Vec<f64> = self.leg_losses.iter().map(|loss| loss.value()).collect();

        let mut members = serializer.serialize_map(Some(25))?;
        members.serialize_entry("kind", &self.kind.map(PartKind::name))?;
        members.serialize_entry("low_mhz", &megahertz(self.low))?;
        members.serialize_entry("high_mhz", &megahertz(self.high))?;
        members.serialize_entry("leg_losses_db", &(!losses.is_empty()).then_some(losses))?;
        members.serialize_entry("tap_db", &decibels(self.tap))?;
        members.serialize_entry("gain_db", &decibels(self.gain))?;
        members.serialize_entry("rejection_db", &decibels(self.rejection))?;
        members.serialize_entry("isolation_db", &decibels(self.isolation))?;
        members.serialize_entry("return_loss_db", &decibels(self.return_loss))?;
        members.serialize_entry("power_pass", &self.power_pass.map(PowerPass::passes))?;
        members.serialize_entry("doubts", &self.doubts_in_english())?;
        members.serialize_entry("legs", &self.legs)?;
        members.serialize_entry("stop_low_mhz", &megahertz(self.stop_low))?;
        members.serialize_entry("stop_high_mhz", &megahertz(self.stop_high))?;
        members.serialize_entry("power_pass_legs", &self.power_pass.and_then(PowerPass::legs_name))?;
        members.serialize_entry("return_low_mhz", &megahertz(self.return_low))?;
        members.serialize_entry("return_high_mhz", &megahertz(self.return_high))?;
        members.serialize_entry("return_gain_db", &decibels(self.return_gain))?;
        members.serialize_entry("satellite_low_mhz", &megahertz(self.satellite_low))?;
        members.serialize_entry("satellite_high_mhz", &megahertz(self.satellite_high))?;
        members.serialize_entry("network_bypass", &self.network_bypass)?;
        members.serialize_entry("passive_port", &self.passive_port)?;
        members.serialize_entry("rated_for_moca", &self.rated_for_moca)?;
        members.serialize_entry("indoor_only", &self.indoor_only)?;
        members.serialize_entry("cable_series", &self.cable_series.map(CableSeries::name))?;
        members.end()
    }
}
