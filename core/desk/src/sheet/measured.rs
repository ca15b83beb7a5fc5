//! The Touchstone files that the parts of a sheet name.

use std::io::Read;
use std::path::{Component, Path};

use house::record::{MOST_MEASUREMENT_BYTES, MeasurementIntake, PartKind, take_in};
use phrase::{Arg, Phrase};
use telling::words::error::InWords;

use super::draft::PartDraft;
use super::table::Field;
use crate::error::system;

/// The most bytes that are read of a file: comments are not kept, so it may be longer than what is.
const MOST_BYTES: u64 = 4 * MOST_MEASUREMENT_BYTES as u64;

/// Takes in the file that a part with this many outputs names; `folder` is the sheet's. What is wrong is noted.
pub fn load(part: &PartDraft<'_>, outputs: u8, folder: Option<&Path>) -> Option<MeasurementIntake> {
    let field = part.measured.as_ref()?;
    let taken = read(field, folder)?;
    let ports = usize::from(outputs) + 1;
    if taken.part.ports() != ports {
        let count = |ports: usize| Arg::Count(u64::try_from(ports).unwrap_or_default());
        let expected = Phrase::new("sheet-measured-ports").with("ports", count(ports));
        field.refuse(expected.with("found", count(taken.part.ports())));
        return None;
    }
    if part.row.kind != PartKind::Amplifier && !taken.part.is_passive() {
        field.refuse(Phrase::new("sheet-measured-lifts"));
        return None;
    }
    Some(taken)
}

fn read(field: &Field<'_>, folder: Option<&Path>) -> Option<MeasurementIntake> {
    let name = Path::new(field.text()?);
    // A sheet from somebody else must not reach beyond its own folder.
    let beside = name.components().all(|step| matches!(step, Component::Normal(_)));
    let Some(folder) = folder.filter(|_| beside) else {
        field.refuse(Phrase::new("sheet-measured-beside"));
        return None;
    };
    let wrong = |reason| field.refuse(Phrase::new("sheet-measured").phrase("reason", reason));
    let bytes = bytes_of(&folder.join(name)).map_err(|error| wrong(system(&error))).ok()?;
    take_in(&name.to_string_lossy(), &bytes).map_err(|error| wrong(error.phrase())).ok()
}

fn bytes_of(file: &Path) -> std::io::Result<Vec<u8>> {
    // Asked before it is opened: opening a pipe waits for ever.
    if !file.metadata()?.is_file() {
        return Err(std::io::ErrorKind::InvalidInput.into());
    }
    let mut bytes = Vec::new();
    std::fs::File::open(file)?.take(MOST_BYTES + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > MOST_BYTES { Err(std::io::ErrorKind::FileTooLarge.into()) } else { Ok(bytes) }
}
