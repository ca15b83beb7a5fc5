//! Prints the table of estimates as JSON, by name: what is guessed, from where to where. Read by `tests/peer/forecast`, so that it
//! follows when a range changes.

use coax::estimates;
use serde_json::{Map, json};

fn main() {
    let table: Map<_, _> = estimates::ALL
        .iter()
        .flat_map(|section| section.iter())
        .map(|estimate| {
            let span = estimate.span;
            (
                estimate.name.to_owned(),
                json!({ "low": span.low, "likely": span.likely, "high": span.high, "unit": estimate.unit }),
            )
        })
        .collect();
    println!("{}", serde_json::Value::Object(table));
}
