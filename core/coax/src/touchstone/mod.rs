//! Parts from Touchstone files, the open format in which instruments and makers give scattering matrices ("Touchstone File
//! Format Specification", IBIS Open Forum: version 1.1, 2002, and version 2.0, 24 April 2009).
//!
//! Read are versions 1 and 2.0, any number of ports up to 16, scattering parameters as DB, MA or RI, one real reference
//! resistance or one for each port; they are turned to 75 ohm. Noise data are passed over. Not read: admittance, impedance
//! and hybrid parameters and mixed modes.

mod data;
mod error;
mod header;
mod records;
mod reference;

pub use error::TouchstoneError;

use header::{Header, Version};

use crate::model::Measured;

/// The largest file that is read: 8 MiB.
pub const MOST_BYTES: usize = 8 << 20;

/// Reads a file; the number of ports is told from its contents: in version 1 from the first record, whose further lines
/// hold whole pairs and so, unlike the line with the frequency, an even count of numbers.
///
/// # Errors
/// [`TouchstoneError`], whatever the bytes.
pub fn read(bytes: &[u8]) -> Result<Measured, TouchstoneError> {
    read_with_ports(bytes, None)
}

/// Reads a file whose name ends in `.sNp`, as a version 1 file's should: N is its number of ports.
///
/// # Errors
/// As [`read`].
pub fn read_named(name: &str, bytes: &[u8]) -> Result<Measured, TouchstoneError> {
    read_with_ports(bytes, ports_of_name(name))
}

/// The number of ports that a file's name states: 4 for `part.s4p`.
pub fn ports_of_name(name: &str) -> Option<usize> {
    let (_, ending) = name.rsplit_once('.')?;
    let ending = ending.to_ascii_lowercase();
    ending.strip_prefix('s')?.strip_suffix('p')?.parse().ok()
}

fn read_with_ports(bytes: &[u8], ports: Option<usize>) -> Result<Measured, TouchstoneError> {
    if bytes.len() > MOST_BYTES {
        return Err(TouchstoneError::TooLarge { bytes: bytes.len(), most: MOST_BYTES });
    }
    let text = String::from_utf8_lossy(bytes);
    let (header, data) = Header::and_data(text.trim_start_matches('\u{feff}'))?;
    let ports = match (header.version, header.ports) {
        (Version::Two, Some(ports)) => ports,
        (Version::Two, None) => return Err(TouchstoneError::KeywordMissing { keyword: "Number of Ports" }),
        (Version::One, _) => ports.or_else(|| data.ports()).ok_or(TouchstoneError::PortsUnclear)?,
    };
    if !(1..=Measured::MOST_PORTS).contains(&ports) {
        return Err(TouchstoneError::TooManyPorts { ports, most: Measured::MOST_PORTS });
    }
    let (frequencies, matrices) = records::matrices(&header, &data, ports)?;
    let resistances = header.resistances(ports)?;
    let matrices = reference::to_75_ohm(&frequencies, matrices, &resistances)?;
    Ok(Measured::new(&frequencies, &matrices)?)
}
