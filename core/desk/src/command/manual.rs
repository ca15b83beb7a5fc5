//! `legwork completion` and `legwork man`: what a shell completes and what `man` shows, from the arguments themselves.

use std::path::Path;

use clap::{Command, CommandFactory};
use clap_complete::Shell;
use clap_mangen::Man;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::context::Context;
use crate::arguments::Arguments;
use crate::error::DeskError;
use crate::keep::{keep, refuse_if_there};
use crate::output;

#[derive(Serialize)]
struct TextJson {
    text: String,
}

#[derive(Serialize)]
struct PagesJson {
    pages: Vec<String>,
}

/// Writes what a shell is to read so that it completes this command.
pub fn completion(context: &Context, shell: Shell) -> Result<(), DeskError> {
    let mut bytes = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "legwork", &mut bytes);
    say(context, bytes)
}

/// Writes the manual's first page, or all of its pages into a folder that is there.
pub fn man(context: &Context, folder: Option<&Path>, replace: bool) -> Result<(), DeskError> {
    let mut command = Arguments::command();
    // Gives the commands within commands their whole names.
    command.build();
    let Some(folder) = folder else { return say(context, page_of(&command)?) };
    let mut pages = Vec::new();
    collect(&command, "legwork", &mut pages)?;
    for (name, _) in &pages {
        refuse_if_there(&folder.join(name), replace)?;
    }
    for (name, bytes) in &pages {
        keep(&folder.join(name), bytes, replace)?;
    }
    let count = Arg::Count(pages.len() as u64);
    let as_json = PagesJson {
        pages: pages.into_iter().map(|(name, _)| folder.join(name).display().to_string()).collect(),
    };
    context.answer(&as_json, |page| {
        let told = Phrase::new("desk-man-written").text("folder", folder.display().to_string());
        page.paragraph(0, &context.say(&told.with("count", count)));
    })
}

fn say(context: &Context, bytes: Vec<u8>) -> Result<(), DeskError> {
    let text = String::from_utf8(bytes).map_err(|_| DeskError::Fault)?;
    if context.is_json() { context.answer(&TextJson { text }, |_| ()) } else { output::say(&text) }
}

fn page_of(command: &Command) -> Result<Vec<u8>, DeskError> {
    let mut bytes = Vec::new();
    Man::new(command.clone()).render(&mut bytes).map_err(DeskError::Output)?;
    Ok(bytes)
}

/// The page of a command and those of the commands within it, each with the name of its file.
fn collect(command: &Command, name: &str, pages: &mut Vec<(String, Vec<u8>)>) -> Result<(), DeskError> {
    pages.push((format!("{name}.1"), page_of(&command.clone().display_name(name.to_owned()))?));
    for within in command.get_subcommands().filter(|within| within.get_name() != "help") {
        collect(within, &format!("{name}-{}", within.get_name()), pages)?;
    }
    Ok(())
}
