//! `legwork put-back`: undoing the last take.

use std::path::Path;

use facts::file;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::open_to_write;
use crate::command::Context;
use crate::error::DeskError;

#[derive(Serialize)]
struct PutBackJson {
    survey: String,
    facts: usize,
}

/// Puts back what the last file brought.
pub fn run(context: &Context, folder: &Path) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let returned = file::put_back(&mut store)?;
    let as_json = PutBackJson { survey: folder.display().to_string(), facts: returned.facts.len() };
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-put-back").with("facts", Arg::Count(as_json.facts as u64));
        page.paragraph(0, &context.say(&done));
    })
}
