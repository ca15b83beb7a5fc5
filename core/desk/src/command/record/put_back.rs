//! `legwork put-back`: undoing the last take.

use std::path::Path;

use facts::file;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::open_to_write;
use crate::command::context::Context;
use crate::error::{DeskError, Unconfirmed};

#[derive(Serialize)]
struct PutBackJson {
    survey: String,
    facts: usize,
    without_trace: bool,
    kept: bool,
}

/// Puts back what the last file brought.
pub fn run(context: &Context, folder: &Path, yes: bool, keep: bool) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let brought = store.can_put_back()?;
    if keep {
        store.keep_what_was_taken()?;
    } else {
        if !brought.without_trace && !yes {
            return Err(DeskError::NotConfirmed(Unconfirmed::PutBack));
        }
        file::put_back(&mut store)?;
    }
    let as_json = PutBackJson {
        survey: folder.display().to_string(),
        facts: brought.facts,
        without_trace: brought.without_trace,
        kept: keep,
    };
    context.answer(&as_json, |page| {
        let message = match (keep, as_json.without_trace) {
            (true, _) => "desk-put-back-kept",
            (false, true) => "desk-put-back",
            (false, false) => "desk-put-back-later",
        };
        let done = Phrase::new(message).with("facts", Arg::Count(as_json.facts as u64));
        page.paragraph(0, &context.say(&done));
    })
}
