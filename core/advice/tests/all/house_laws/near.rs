//! Two forecasts of one house. Houses forecast together and one by one are worked out in another order: the last digits may differ.

use advice::forecast::Forecast;
use serde_json::Value;

/// Whether two forecasts say the same, but for the last digits.
pub(super) fn is_near(one: &Forecast, other: &Forecast) -> bool {
    let value = |of: &Forecast| serde_json::to_value(of).expect("a forecast is data");
    is_near_value(&value(one), &value(other))
}

fn is_near_value(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Number(one), Value::Number(other)) => {
            let [one, other] = [one, other].map(|number| number.as_f64().expect("a number"));
            (one - other).abs() <= 1e-9 * one.abs().max(1.0)
        }
        (Value::Array(one), Value::Array(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| is_near_value(one, other))
        }
        (Value::Object(one), Value::Object(other)) => {
            let has = |(name, one): (&String, &Value)| {
                other.get(name).is_some_and(|other| is_near_value(one, other))
            };
            one.len() == other.len() && one.iter().all(has)
        }
        (one, other) => one == other,
    }
}
