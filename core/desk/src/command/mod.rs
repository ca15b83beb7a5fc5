//! The commands, one file each.

#[cfg(test)]
mod agreement;
pub mod context;
mod demo;
mod findings;
mod forecast;
mod in_browser;
mod json;
mod label;
mod levels;
mod manual;
mod record;
pub mod refusal;
mod report;
mod sheet;
mod sheet_onto;
mod table;
mod walk;
mod worked;
mod worklist;

use crate::arguments::Command;
use crate::error::DeskError;

use telling::report::Extent;

use context::Context;
use worked::Opened;

/// Runs a command.
///
/// # Errors
/// Whatever keeps it from its end.
pub fn run(context: &Context, command: Command) -> Result<(), DeskError> {
    match command {
        Command::Demo { out } => demo::run(context, &out),
        Command::Sheet { sheet, survey, change: true, yes } => sheet_onto::run(context, &sheet, &survey, yes),
        Command::Sheet { sheet, survey, .. } => sheet::run(context, &sheet, &survey),
        Command::Forecast { survey } => forecast::run(context, &Opened::at(context, &survey)?),
        Command::Findings { survey } => findings::run(context, &Opened::at(context, &survey)?),
        Command::Worklist { survey, without, choose } => {
            let left_out = without.iter().filter_map(|left_out| left_out.kind()).collect();
            if choose {
                worklist::choose(&survey, &left_out)?;
            }
            let opened = Opened::at(context, &survey)?;
            worklist::run(context, &if without.is_empty() { opened } else { opened.without(&left_out) })
        }
        Command::Levels { survey } => levels::run(context, &Opened::at(context, &survey)?),
        Command::Report { survey, out, replace, without, one_page } => {
            let extent = if one_page { Extent::OnePage } else { Extent::Whole };
            report::run(context, &survey, (&out, replace), &without, extent)
        }
        Command::Tags { survey, out, replace } => report::tags(context, &survey, &out, replace),
        Command::Table { survey, what, out, replace } => {
            table::run(context, &Opened::at(context, &survey)?, what, out.as_deref(), replace)
        }
        Command::Completion { shell } => manual::completion(context, shell),
        Command::Man { folder, replace } => manual::man(context, folder.as_deref(), replace),
        Command::Label { text: Some(text), .. } => label::run(context, &text),
        Command::Label { text: None, photo, crop } => label::photo::run(context, &photo, &crop),
        Command::Walk { survey, answers } => walk::run(context, survey.as_deref(), answers.as_deref()),
        Command::Page { survey, demo, no_browser } => {
            in_browser::run(context, survey.as_deref(), demo, !no_browser)
        }
        Command::Record(command) => record::run(context, command),
    }
}
