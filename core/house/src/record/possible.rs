//! What can be. A value beyond it is kept as it was told, and nothing is worked out from it: a file may say anything.
//!
//! Each figure is bounded by the unit that its name ends with, so that a new field is bounded by its name. The bounds are
//! generous: what is merely odd is for findings to tell.

use std::ops::RangeInclusive;

use serde_json::{Map, Value};

/// The longest run that can be told, metres: a house has none longer.
pub const MOST_METRES: f64 = label::seen::LONGEST_CABLE_METRES;
/// The highest frequency, MHz: well above all that coax of a house carries.
pub const MOST_MHZ: f64 = 10_000.0;
/// The highest rate, Mb/s.
pub const MOST_MBPS: f64 = 100_000.0;
/// The highest loss, gain or isolation, dB.
pub const MOST_DB: f64 = 150.0;
/// The highest and, below zero, the lowest level, dBmV.
pub const MOST_DBMV: f64 = 100.0;
/// The highest and, below zero, the lowest power, dBm.
pub const MOST_DBM: f64 = 150.0;
/// The longest time, ms.
pub const MOST_MS: f64 = 60_000.0;
/// The most outputs of a part.
pub const MOST_OUTPUTS: u8 = 64;

/// The range of a length that was told may reach half beyond it ([`RunLength::stated`](super::RunLength::stated)).
const MOST_REACHED_METRES: f64 = 1.5 * MOST_METRES;

/// Whether the value of a field can be: every figure in it within its bounds, every range the right way round.
pub fn can_be(field: &str, value: &Value) -> bool {
    match value {
        Value::Number(number) => {
            let bounds = bounds(field).zip(number.as_f64());
            bounds.is_none_or(|(bounds, figure)| bounds.contains(&figure))
        }
        Value::Array(values) => values.iter().all(|value| can_be(field, value)),
        Value::Object(members) => {
            members.iter().all(|(name, value)| can_be(name, value)) && is_in_order(members)
        }
        Value::Null | Value::Bool(_) | Value::String(_) => true,
    }
}

/// The bounds of a figure; of one without a unit in its name, none.
pub(super) fn bounds(name: &str) -> Option<RangeInclusive<f64>> {
    let both = |most: f64| -most..=most;
    Some(match (name, name.rsplit('_').next().unwrap_or(name)) {
        // What takes something off cannot add.
        ("leg_losses_db" | "rejection_db" | "tap_db" | "isolation_db" | "return_loss_db", _) => 0.0..=MOST_DB,
        ("legs", _) => 0.0..=f64::from(MOST_OUTPUTS),
        (_, "metres") => 0.0..=MOST_REACHED_METRES,
        (_, "mhz") => 0.0..=MOST_MHZ,
        (_, "mbps") => 0.0..=MOST_MBPS,
        (_, "db") => both(MOST_DB),
        (_, "dbmv") => both(MOST_DBMV),
        (_, "dbm") => both(MOST_DBM),
        (_, "ms") => 0.0..=MOST_MS,
        (_, "percent") => 0.0..=100.0,
        _ => return None,
    })
}

/// Whether no lower edge lies above its upper one, and what is likely lies between.
fn is_in_order(members: &Map<String, Value>) -> bool {
    let figure = |name: &str| members.get(name).and_then(Value::as_f64);
    members.keys().filter_map(|name| name.strip_prefix("low_")).all(|unit| {
        let edges = [figure(&format!("low_{unit}")), figure(unit), figure(&format!("high_{unit}"))];
        edges.into_iter().flatten().is_sorted()
    })
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::super::{LengthKnown, RunLength};
    use super::*;

    #[test]
    fn what_no_house_has_cannot_be() {
        for (field, value) in [
            ("length", json!({"high_metres": -9, "known": "guessed", "low_metres": -9, "metres": -9})),
            ("length", json!({"high_metres": 1e308, "known": "guessed", "low_metres": 1, "metres": 2})),
            ("length", json!({"high_metres": 2, "known": "guessed", "low_metres": 3, "metres": 2.5})),
            ("length", json!({"high_metres": 3, "known": "guessed", "low_metres": 2, "metres": 4})),
            ("top_mhz", json!(1e308)),
            ("top_mhz", json!(-5)),
            ("rating", json!({"band": {"high_mhz": 5, "low_mhz": 1000}})),
            ("rating", json!({"leg_losses_db": [3.5, -7]})),
            ("rating", json!({"legs": 255})),
            ("rating", json!({"gain_db": 1000})),
            ("wish", json!({"down_mbps": -1, "up_mbps": 1})),
            ("measured", json!({"what": "level", "mhz": 603, "dbmv": 1e9})),
            ("measured", json!({"what": "packet_loss", "percent": 101, "under_load": true})),
            ("measured", json!({"what": "swings", "low_mbps": 9, "high_mbps": 1, "with_heat_or_hour": true})),
            ("other_network", json!({"bands": [{"low_mhz": 1400, "high_mhz": 1e20}]})),
        ] {
            assert!(!can_be(field, &value), "{field} {value}");
        }
    }

    #[test]
    fn what_is_merely_long_weak_or_new_can_be() {
        for known in [LengthKnown::Measured, LengthKnown::Paced, LengthKnown::Guessed] {
            let length = serde_json::to_value(RunLength::stated(MOST_METRES, known)).unwrap();
            assert!(can_be("length", &length), "{length}");
        }
        for (field, value) in [
            ("rating", json!({"return_gain_db": -6, "gain_db": 0, "legs": 64, "leg_losses_db": []})),
            ("measured", json!({"what": "level", "mhz": 5, "dbmv": -60})),
            ("measured", json!({"what": "power", "sent_dbm": 3, "received_dbm": -75})),
            ("image", json!({"bytes": 30_000_000, "width": 12_000, "height": 9_000})),
            ("of_a_later_release", json!({"figure": 1e300})),
            ("tag", json!("-9 m")),
        ] {
            assert!(can_be(field, &value), "{field} {value}");
        }
    }
}
