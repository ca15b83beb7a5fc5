//! A file with everything in it, for other programs to read.

use std::path::Path;

use facts::file::PackOptions;

use crate::Outcome;
use crate::merge::{History, go_on, report};

/// Packs an invented survey with a random history into `path`.
pub fn run(path: &Path, seed: u64) -> Outcome {
    let mut history = History::begin(seed)?;
    for _ in 0..120 {
        history.step()?;
    }
    history.exchange()?;
    let copy = history.copies.first_mut().ok_or("no copy")?;
    let options = PackOptions { replace: true, ..PackOptions::default() };
    let packed = house::document::pack(&mut copy.store, &options, &report, path, &mut go_on)?;
    eprintln!("{}: {} facts, {} photos, {} bytes", path.display(), packed.facts, packed.photos, packed.bytes);
    Ok(())
}
