//! Numbers held against what such labels usually carry.

use std::collections::BTreeSet;

use super::number::{SeenNumber, SeenUnit};
use super::unsure::Unsure;
use crate::usual;

/// Adds what is unusual about numbers.
pub(super) fn doubt(numbers: &mut [SeenNumber]) {
    let lower = lower_edges(numbers);
    for (at, number) in numbers.iter_mut().enumerate() {
        if !is_usual(number) {
            number.doubt(Unsure::Unusual);
        }
        let may_be_torn = number.unit == SeenUnit::Megahertz && !lower.contains(&at);
        if let Some(perhaps) = usual::longer_edge(number.value).filter(|_| may_be_torn) {
            number.doubt(Unsure::PerhapsLonger { perhaps });
        }
    }
}

/// Which numbers are the lower edge of a range: in a row the next frequency is larger, and is its upper one. That one is the lower edge
/// of none, however large a frequency follows: of `54-100 950-2150` the 100 may be torn.
fn lower_edges(numbers: &[SeenNumber]) -> BTreeSet<usize> {
    let mut edges: Vec<(usize, &SeenNumber)> = numbers.iter().enumerate().collect();
    edges.retain(|(_, number)| number.unit == SeenUnit::Megahertz);
    edges.sort_by_key(|(_, number)| (number.place.row, number.place.letters.start));
    let mut lower = BTreeSet::new();
    let mut rest = edges.as_slice();
    while let [(at, edge), after @ ..] = rest {
        let is_lower =
            |(_, next): &&(usize, &SeenNumber)| next.place.row == edge.place.row && next.value > edge.value;
        rest = match after.first().filter(is_lower) {
            Some(_) => {
                lower.insert(*at);
                after.get(1..).unwrap_or_default()
            }
            None => after,
        };
    }
    lower
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
