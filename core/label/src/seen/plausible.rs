//! Numbers held against what such labels usually carry.

use super::number::{SeenNumber, SeenUnit};
use super::unsure::Unsure;
use crate::usual;

/// Adds what is unusual about numbers.
pub(super) fn doubt(numbers: &mut [SeenNumber]) {
    // Frequencies by row: the lower edge of a range stands before its upper one.
    let edges: Vec<(usize, f64)> = numbers
        .iter()
        .filter(|number| number.unit == SeenUnit::Megahertz)
        .map(|number| (number.place.row, number.value))
        .collect();
    for number in numbers {
        if !is_usual(number) {
            number.doubt(Unsure::Unusual);
        }
        let is_lower = edges.iter().any(|(row, edge)| *row == number.place.row && *edge > number.value);
        let may_be_torn = number.unit == SeenUnit::Megahertz && !is_lower;
        if let Some(perhaps) = usual::longer_edge(number.value).filter(|_| may_be_torn) {
            number.doubt(Unsure::PerhapsLonger { perhaps });
        }
    }
}

/// No figure on these labels is larger, in decibels, but for a rejection or a shield's.
const MOST_DECIBELS: f64 = 60.0;

/// Whether it is a figure of whole tenths.
pub(super) fn has_tenths(value: f64) -> bool {
    (value * 10.0 - (value * 10.0).round()).abs() < 1e-6
}

fn is_usual(number: &SeenNumber) -> bool {
    match number.unit {
        SeenUnit::Megahertz => usual::is_edge(number.value),
        // A tenth of a decibel is as fine as labels are.
        SeenUnit::Decibels => number.value > 0.0 && number.value <= MOST_DECIBELS && has_tenths(number.value),
        SeenUnit::Outputs => (2.0..=16.0).contains(&number.value),
        SeenUnit::Volts => (3.0..=60.0).contains(&number.value),
        SeenUnit::Feet | SeenUnit::Metres => number.value.fract() == 0.0,
    }
}
