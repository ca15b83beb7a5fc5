//! Surveys that lie where nothing can be written: on a stick that is locked, in a folder of somebody else's. They are read
//! all the same, and whoever reads them is told.

use std::path::Path;

use phrase::Phrase;

use crate::command::context::Context;
use crate::output;

/// Says on standard error, in words, that nothing can be written in a survey's folder, where that is so.
pub fn tell(context: &Context, folder: &Path) {
    if !context.is_json() && !can_be_written(folder) {
        let note = Phrase::new("desk-read-only").text("path", folder.display().to_string());
        output::complain(&format!("legwork: {}\n", context.say(&note)));
    }
}

#[cfg(unix)]
fn can_be_written(folder: &Path) -> bool {
    rustix::fs::access(folder, rustix::fs::Access::WRITE_OK).is_ok()
}

/// Elsewhere whoever writes finds out.
#[cfg(not(unix))]
fn can_be_written(_: &Path) -> bool {
    true
}
