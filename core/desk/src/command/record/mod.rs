//! The commands of the record: photos, notes, who said what, forgetting, the list of surveys, files.

mod author_json;
mod authors;
mod copy_part;
mod disagreements;
mod forget;
mod look;
mod names;
mod note;
mod pack;
mod pattern;
mod photo;
mod photo_add;
mod photo_assign;
mod photo_json;
mod put_back;
mod removed;
mod repair;
mod said;
mod search;
mod set;
mod settle;
mod surveys;
mod take;
mod teller;
mod undo;
mod wishes;

pub use teller::{RecordTeller, ThingJson};

use std::path::{Path, PathBuf};

use facts::fact::AuthorId;
use facts::file::Consent;
use facts::home::SET_ASIDE;
use facts::store::{Store, peek};

use super::context::Context;
use crate::arguments::RecordCommand;
use crate::author;
use crate::error::DeskError;

/// A survey's folder as it is typed in a command: in quotes where it has blanks.
fn typed(folder: &Path) -> String {
    let folder = folder.display().to_string();
    if folder.contains(char::is_whitespace) { format!("\"{folder}\"") } else { folder }
}

/// Runs one of them.
///
/// # Errors
/// Whatever keeps it from its end.
pub fn run(context: &Context, command: RecordCommand) -> Result<(), DeskError> {
    match command {
        RecordCommand::Photo { what } => photo::run(context, what),
        RecordCommand::Note { survey, text: Some(text), on } => {
            note::add(context, &survey, &text, on.as_deref())
        }
        RecordCommand::Note { survey, text: None, on } => note::list(context, &survey, on.as_deref()),
        RecordCommand::Set { survey, thing, told } => set::run(context, &survey, &thing, &told),
        RecordCommand::CopyPart { survey, thing, tag } => copy_part::run(context, &survey, &thing, &tag),
        RecordCommand::Search { word, home } => search::run(context, &home, &word),
        RecordCommand::Said { survey, thing, field } => {
            said::run(context, &survey, thing.as_deref(), field.as_deref())
        }
        RecordCommand::Authors { survey, me: None } => authors::list(context, &survey),
        RecordCommand::Authors { survey, me: Some(name) } => authors::name(context, &survey, &name),
        RecordCommand::Undo { survey, act } => undo::run(context, &survey, act.as_deref()),
        RecordCommand::Disagreements { survey } => disagreements::run(context, &survey),
        RecordCommand::Settle { survey, thing, field, side } => {
            settle::run(context, &survey, &thing, &field, &side)
        }
        RecordCommand::Remove { survey, things, yes } => removed::remove(context, &survey, &things, yes),
        RecordCommand::Removed { survey } => removed::list(context, &survey),
        RecordCommand::BringBack { survey, things } => removed::bring_back(context, &survey, &things),
        RecordCommand::Forget { survey, thing, field, yes } => {
            forget::run(context, &survey, &thing, field.as_deref(), yes)
        }
        RecordCommand::Surveys { home, what: None } => surveys::list(context, &home),
        RecordCommand::Surveys { what: Some(what), .. } => surveys::run(context, what),
        RecordCommand::Pack { survey, file, without, no_report, replace } => {
            pack::run(context, &survey, &file, &without, pack::How { no_report, replace })
        }
        RecordCommand::Look { file, survey, most } => look::run(context, &file, survey.as_deref(), most),
        RecordCommand::Take { file, survey, yes, rearrange, most } => {
            take::run(context, &file, &survey, Consent { forget: yes, upheaval: rearrange }, most)
        }
        RecordCommand::PutBack { survey, yes, keep } => put_back::run(context, &survey, yes, keep),
        RecordCommand::Wishes { survey, yes, no } => wishes::run(context, &survey, yes, no),
    }
}

/// Opens a survey that nothing is written into. No author is made for that.
fn open_to_read(folder: &Path) -> Result<Store, DeskError> {
    Ok(Store::open_to_read(folder, author::known().unwrap_or_else(|| AuthorId::random().into()))?)
}

/// Opens a survey to be written in the name of this computer.
pub(in crate::command) fn open_to_write(folder: &Path) -> Result<Store, DeskError> {
    // Before an author is made: what is no survey leaves nothing behind.
    peek(folder)?;
    Ok(Store::open(folder, author::this_computer()?)?)
}

/// The folder that a survey lies in.
fn parent(folder: &Path) -> PathBuf {
    match folder.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent.to_owned(),
        _ => PathBuf::from("."),
    }
}

/// Whether a survey was set aside.
fn is_aside(folder: &Path) -> bool {
    let real = std::fs::canonicalize(folder).unwrap_or_else(|_| folder.to_owned());
    real.parent().is_some_and(|parent| parent.ends_with(SET_ASIDE))
}

/// The home folder that a survey lies in, be it set aside or not.
fn home_folder(folder: &Path) -> PathBuf {
    if !is_aside(folder) {
        return parent(folder);
    }
    let aside = parent(folder);
    if aside.ends_with(SET_ASIDE) { parent(&aside) } else { aside.join("..") }
}
