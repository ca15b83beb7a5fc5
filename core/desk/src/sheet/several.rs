//! What tables of several kinds tell in the same way.

use phrase::Phrase;

use super::quantity::{measured_rate, rate};
use super::table::{Field, Section};

/// The most nodes of one network, or of several on one wire, that a sheet takes.
pub const MOST_NODES: u8 = 255;

/// The notes of a table: one text or a list.
pub fn notes(section: &Section<'_>) -> Vec<String> {
    let fields = section.field("note").map_or_else(Vec::new, |field| field.each());
    fields.iter().filter_map(Field::long_text).map(str::to_owned).collect()
}

/// Rates towards the house or room and from it: a table of two, or one rate for both.
pub fn both_ways(section: &Section<'_>, name: &'static str) -> Option<(f64, f64)> {
    both_ways_of(section, name, rate)
}

/// The same of what was measured, which may be nothing at all.
pub fn both_ways_measured(section: &Section<'_>, name: &'static str) -> Option<(f64, f64)> {
    both_ways_of(section, name, measured_rate)
}

fn both_ways_of(
    section: &Section<'_>,
    name: &'static str,
    rate: fn(&str) -> Result<f64, Phrase>,
) -> Option<(f64, f64)> {
    let field = section.field(name)?;
    if !field.is_table() {
        return field.parse(rate).map(|rate| (rate, rate));
    }
    let ways = field.table(Phrase::new("sheet-both-ways"))?;
    let down = ways.required("down").and_then(|field| field.parse(rate));
    let up = ways.required("up").and_then(|field| field.parse(rate));
    ways.finish();
    Some((down?, up?))
}

/// The rate of an Ethernet port, Mb/s.
///
/// # Errors
/// The rates there are.
pub fn ethernet(text: &str) -> Result<u32, Phrase> {
    let mbps = rate(text).ok();
    let ports = [100_u32, 1000, 2500, 10_000];
    let found = ports.into_iter().find(|port| mbps.is_some_and(|mbps| (mbps - f64::from(*port)).abs() < 0.5));
    found.ok_or_else(|| Phrase::new("sheet-ethernet"))
}
