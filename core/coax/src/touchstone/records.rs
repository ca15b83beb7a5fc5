//! The numbers: one record for each frequency.

use num_complex::Complex64;

use super::data::Data;
use super::error::TouchstoneError;
use super::header::{Format, Header, Layout, Version};
use crate::model::Measured;
use crate::quantity::{Decibels, Megahertz};
use crate::scatter::ScatterMatrix;

/// The largest amplitude that is taken for a measurement: 120 dB.
const MOST_AMPLITUDE: f64 = 1e6;

/// How many numbers a line of a version 1 file's noise data has.
const NOISE_LINE: usize = 5;

/// The frequencies and their matrices, as written (not yet at 75 ohm).
pub(super) fn matrices(
    header: &Header,
    data: &Data,
    ports: usize,
) -> Result<(Vec<Megahertz>, Vec<ScatterMatrix>), TouchstoneError> {
    let places = places(header, ports);
    let needed = 1 + 2 * places.len();
    let records = data.numbers.len() / needed;
    if records.saturating_mul(ports * ports) > Measured::MOST_ENTRIES {
        return Err(TouchstoneError::TooManyValues { most: Measured::MOST_ENTRIES });
    }
    let mut frequencies: Vec<Megahertz> = Vec::with_capacity(records);
    let mut matrices = Vec::with_capacity(records);
    for (index, record) in data.numbers.chunks(needed).enumerate() {
        let begins = data.line_of(index * needed);
        let line = begins.map_or(0, |line| line.number);
        let Some((&frequency, values)) = record.split_first() else { break };
        let megahertz = Megahertz(frequency * header.to_megahertz);
        if frequencies.last().is_some_and(|&last| megahertz <= last) {
            // Noise data of a version 1 two-port follow without a mark, from a lower frequency on (specification, noise data).
            let is_noise = header.version == Version::One
                && ports == 2
                && begins.is_some_and(|line| line.count == NOISE_LINE && line.first == index * needed);
            if is_noise {
                break;
            }
            return Err(TouchstoneError::NotRising { line, megahertz: megahertz.value() });
        }
        if !(megahertz.value().is_finite() && megahertz.value() >= 0.0) {
            return Err(TouchstoneError::NotRising { line, megahertz: megahertz.value() });
        }
        if record.len() < needed {
            return Err(TouchstoneError::CutShort { line, given: record.len(), needed, ports });
        }
        let mut matrix = ScatterMatrix::new(ports);
        for (&(to, from), pair) in places.iter().zip(values.chunks_exact(2)) {
            let &[a, b] = pair else { continue };
            let value = complex(header.format, a, b);
            if !value.is_finite() || value.norm() > MOST_AMPLITUDE {
                return Err(TouchstoneError::BadNumber { line, text: format!("{a} {b}") });
            }
            if header.layout == Layout::Full {
                matrix.set(to, from, value);
            } else {
                matrix.set_both(to, from, value);
            }
        }
        frequencies.push(megahertz);
        matrices.push(matrix);
    }
    if matrices.is_empty() {
        return Err(TouchstoneError::NoData);
    }
    match header.frequencies {
        Some(announced) if announced != matrices.len() => {
            Err(TouchstoneError::WrongCount { announced, given: matrices.len() })
        }
        _ => Ok((frequencies, matrices)),
    }
}

/// The entries of a record in the order in which they are written.
fn places(header: &Header, ports: usize) -> Vec<(usize, usize)> {
    let all = (0..ports).flat_map(|row| (0..ports).map(move |column| (row, column)));
    match header.layout {
        // A two-port's S21 stands before its S12, all others go row by row (specification, two-port data order).
        Layout::Full if ports == 2 && header.second_is_21 => vec![(0, 0), (1, 0), (0, 1), (1, 1)],
        Layout::Full => all.collect(),
        Layout::Lower => all.filter(|(row, column)| column <= row).collect(),
        Layout::Upper => all.filter(|(row, column)| column >= row).collect(),
    }
}

fn complex(format: Format, a: f64, b: f64) -> Complex64 {
    match format {
        Format::Real => Complex64::new(a, b),
        Format::Magnitude => Complex64::from_polar(a, b.to_radians()),
        Format::Decibels => Complex64::from_polar(Decibels(a).amplitude(), b.to_radians()),
    }
}
