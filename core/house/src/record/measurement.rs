//! The measurement of a part by an instrument: a Touchstone file, kept as text in facts of its own.
//!
//! The text lies in the survey itself, cut to what one fact holds, so that a copy of the survey is whole. The record is
//! named by the text's digest: the same file taken in twice is the same record.

use std::sync::Arc;

use coax::model::Measured;
use coax::{TouchstoneError, touchstone};
use facts::fact::{Edit, MAX_VALUE_BYTES, SubjectId};
use sha2::{Digest, Sha256};
use uuid::{Uuid, uuid};

use super::field;

/// The longest text that is kept, bytes: 801 frequencies of a four-way splitter.
pub const MOST_MEASUREMENT_BYTES: usize = 1 << 20;

/// The most characters of one fact: each takes at most two bytes as JSON, quotes not counted.
const PIECE: usize = MAX_VALUE_BYTES / 2 - 8;

/// The name space of measurements: a random UUID, made once.
const MEASUREMENTS: Uuid = uuid!("a1a1d0d4-0a52-4f5c-b9a1-6a5e0f8f3d2e");

/// A file taken in: what it measured, and what writes it.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasurementIntake {
    /// The record's identity.
    pub id: SubjectId,
    /// The part as measured.
    pub part: Arc<Measured>,
    /// The edits that write the record.
    pub edits: Vec<Edit>,
}

/// Takes in a Touchstone file of this name (`part.s3p` says that it has three ports). Comments are left out: they name
/// people and instruments.
///
/// # Errors
/// What is wrong with the file, or that it is longer than [`MOST_MEASUREMENT_BYTES`].
pub fn take_in(name: &str, bytes: &[u8]) -> Result<MeasurementIntake, TouchstoneError> {
    let ports = touchstone::read_named(name, bytes)?.ports();
    let text = without_comments(&String::from_utf8_lossy(bytes));
    if text.len() > MOST_MEASUREMENT_BYTES {
        return Err(TouchstoneError::TooLarge { bytes: text.len(), most: MOST_MEASUREMENT_BYTES });
    }
    let part = touchstone::read_named(&name_for(ports), text.as_bytes())?;
    let digest = digest_of(&text);
    let id = SubjectId::from_uuid(Uuid::new_v5(&MEASUREMENTS, digest.as_bytes()));
    let mut edits = vec![
        Edit::new(id, field::IS, "measurement"),
        Edit::new(id, field::PORTS, u64::try_from(ports).unwrap_or_default()),
        Edit::new(id, field::DIGEST, digest),
    ];
    let letters: Vec<char> = text.chars().collect();
    edits.extend(
        letters.chunks(PIECE).enumerate().map(|(number, piece)| {
            Edit::new(id, field::text_field(number), piece.iter().collect::<String>())
        }),
    );
    Ok(MeasurementIntake { id, part: Arc::new(part), edits })
}

/// The part that a record's text measured; `None` if the text is not the one that its digest names.
pub(super) fn put_together(ports: usize, digest: &str, text: &str) -> Option<Arc<Measured>> {
    let whole = text.len() <= MOST_MEASUREMENT_BYTES && digest_of(text) == digest;
    whole.then(|| touchstone::read_named(&name_for(ports), text.as_bytes()).ok()).flatten().map(Arc::new)
}

/// A name that tells a reader of the format how many ports there are.
fn name_for(ports: usize) -> String {
    format!(".s{ports}p")
}

fn digest_of(text: &str) -> String {
    let digits = Sha256::digest(text.as_bytes()).into_iter().flat_map(|byte| [byte >> 4, byte & 0xF]);
    digits.filter_map(|digit| char::from_digit(digit.into(), 16)).collect()
}

/// The lines that count, in plain letters: everything else is a blank to the format.
fn without_comments(text: &str) -> String {
    let lines = text.trim_start_matches('\u{feff}').lines();
    let lines = lines.map(|line| line.split('!').next().unwrap_or_default().trim());
    lines.filter(|line| !line.is_empty()).fold(String::new(), |mut all, line| {
        all.extend(line.chars().map(|c| if c.is_ascii_graphic() { c } else { ' ' }));
        all.push('\n');
        all
    })
}
