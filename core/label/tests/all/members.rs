//! What a reading states, by the names under which it is documented.

use coax::{Decibels, Megahertz};
use label::{CableSeries, LabelReading, PartKind, PowerPass};
use serde_json::{Map, Value, json};

/// All that a reading states, without its doubts; null where it states nothing.
pub fn members(reading: &LabelReading) -> Map<String, Value> {
    let megahertz = |edge: Option<Megahertz>| json!(edge.map(Megahertz::value));
    let decibels = |figure: Option<Decibels>| json!(figure.map(Decibels::value));
    let losses: Vec<f64> = reading.leg_losses.iter().map(|loss| loss.value()).collect();
    let members = [
        ("kind", json!(reading.kind.map(PartKind::name))),
        ("low_mhz", megahertz(reading.low)),
        ("high_mhz", megahertz(reading.high)),
        ("leg_losses_db", json!((!losses.is_empty()).then_some(losses))),
        ("tap_db", decibels(reading.tap)),
        ("gain_db", decibels(reading.gain)),
        ("rejection_db", decibels(reading.rejection)),
        ("isolation_db", decibels(reading.isolation)),
        ("return_loss_db", decibels(reading.return_loss)),
        ("power_pass", json!(reading.power_pass.map(PowerPass::passes))),
        ("legs", json!(reading.legs)),
        ("stop_low_mhz", megahertz(reading.stop_low)),
        ("stop_high_mhz", megahertz(reading.stop_high)),
        ("power_pass_legs", json!(reading.power_pass.and_then(PowerPass::legs_name))),
        ("return_low_mhz", megahertz(reading.return_low)),
        ("return_high_mhz", megahertz(reading.return_high)),
        ("return_gain_db", decibels(reading.return_gain)),
        ("satellite_low_mhz", megahertz(reading.satellite_low)),
        ("satellite_high_mhz", megahertz(reading.satellite_high)),
        ("moca_bypass", json!(reading.moca_bypass)),
        ("modem_port", json!(reading.modem_port)),
        ("says_moca", json!(reading.says_moca)),
        ("indoor_only", json!(reading.indoor_only)),
        ("cable", json!(reading.cable.map(CableSeries::name))),
    ];
    members.into_iter().map(|(name, value)| (name.to_owned(), value)).collect()
}
