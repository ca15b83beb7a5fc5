//! The commands, one file each.

mod demo;
mod findings;
mod forecast;
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
use phrase::Phrase;
use serde::Serialize;
use telling::words::{Language, LengthUnit};

use crate::arguments::{Arguments, Command};
use crate::error::DeskError;
use crate::output;
use crate::page::Page;
use crate::speak;

/// What every command needs: how to answer, and in which words.
pub struct Context {
    json: bool,
    language: Language,
}

impl Context {
    /// The context that the arguments ask for.
    pub fn new(arguments: &Arguments) -> Self {
        let length_unit = if arguments.feet { LengthUnit::Feet } else { LengthUnit::Metres };
        Self { json: arguments.json, language: speak::english(length_unit) }
    }

    /// A phrase in words.
    pub fn say(&self, phrase: &Phrase) -> String {
        self.language.say(phrase)
    }

    /// A message without arguments, in words.
    pub fn word(&self, id: &str) -> String {
        self.say(&Phrase::new(id))
    }

    /// Writes an answer: as JSON if that was asked for, else as a page.
    fn answer(&self, as_json: &impl Serialize, as_page: impl FnOnce(&mut Page)) -> Result<(), DeskError> {
        if self.json {
            let mut text = serde_json::to_string_pretty(as_json).map_err(|_| DeskError::Fault)?;
            text.push('\n');
            return output::say(&text);
        }
        let mut page = Page::for_output();
        as_page(&mut page);
        output::say(&page.into_text())
    }
}

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
        Command::Report { survey, out, replace } => report::run(context, &open(&survey)?, &out, replace),
        Command::Label { text } => label::run(context, &text),
        Command::Walk { survey, answers } => {
            walk::run(survey.as_deref(), answers.as_deref(), context.language.figures())
        }
        Command::Record(command) => record::run(context, command),
    }
}

/// The records of a survey's folder. Reading needs no author, so none is made.
fn open(folder: &Path) -> Result<Survey, DeskError> {
    let store = Store::open(folder, AuthorId::random())?;
    Ok(fold(store.ledger(), store.survey_id())?)
}
