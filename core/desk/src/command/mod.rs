//! The commands, one file each.

#[cfg(test)]
mod agreement;
mod context;
mod demo;
mod findings;
mod forecast;
mod in_browser;
mod json;
mod label;
mod levels;
mod record;
pub mod refusal;
mod report;
mod sheet;
mod walk;
mod worklist;

use std::path::Path;

use facts::fact::AuthorId;
use facts::store::Store;
use house::record::{Survey, fold};

use crate::arguments::Command;
use crate::error::DeskError;

pub use context::Context;

/// Runs a command.
///
/// # Errors
/// Whatever keeps it from its end.
pub fn run(context: &Context, command: Command) -> Result<(), DeskError> {
    match command {
        Command::Demo { out } => demo::run(context, &out),
        Command::Sheet { sheet, survey } => sheet::run(context, &sheet, &survey),
        Command::Forecast { survey } => forecast::run(context, &open(&survey)?),
        Command::Findings { survey } => findings::run(context, &open(&survey)?),
        Command::Worklist { survey } => worklist::run(context, &open(&survey)?),
        Command::Levels { survey } => levels::run(context, &open(&survey)?),
        Command::Report { survey, out, replace } => report::run(context, &survey, &out, replace),
        Command::Label { text } => label::run(context, &text),
        Command::Walk { survey, answers } => {
            walk::run(survey.as_deref(), answers.as_deref(), context.language.figures())
        }
        Command::Page { survey, demo, no_browser } => {
            in_browser::run(context, survey.as_deref(), demo, !no_browser)
        }
        Command::Record(command) => record::run(context, command),
    }
}

/// The records of a survey's folder. Reading needs no author, so none is made.
fn open(folder: &Path) -> Result<Survey, DeskError> {
    let store = Store::open_to_read(folder, AuthorId::random())?;
    Ok(fold(store.ledger(), store.survey_id())?)
}
