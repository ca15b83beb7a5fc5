//! `legwork` on a computer: a survey in, and what gets through, what is wrong and what to do out.
//!
//! This crate reads arguments and sheets, and writes for a terminal or as JSON. It knows no physics and judges no
//! wiring: that is for `house` and `advice`.

mod arguments;
mod author;
mod clean;
mod command;
mod error;
mod given;
mod keep;
mod output;
mod plain;
mod print_model;
mod printed;
mod progress;
mod read_only;
pub mod sheet;
mod speak;
mod stop;

use std::ffi::OsString;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;

use clap::Parser;

use arguments::Arguments;
use command::context::Context;
use error::{DeskError, WRONG_USE};

/// Runs one command: reads the arguments (the program's name first), writes to standard output and standard error.
///
/// No panic gets out: one inside becomes a sentence and the exit code of a failure.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(error) => {
            // Help and version are no mistakes and come here too.
            let code = if error.use_stderr() { WRONG_USE } else { 0 };
            // In colour where it repeats nothing that steers a terminal.
            let told = error.render().to_string();
            if clean::lines(&told) == told {
                let _ = error.print();
            } else {
                output::complain(&told);
            }
            return ExitCode::from(code);
        }
    };
    let json = arguments.json;
    let context = Context::new(&arguments);
    // The sentence below says what a user needs; the place in the code stands there for whoever reports it.
    std::panic::set_hook(Box::new(|panic| {
        let place = panic.location().map(ToString::to_string).unwrap_or_default();
        output::complain(&format!("fault at {place}\n"));
    }));
    let done = catch_unwind(AssertUnwindSafe(|| command::run(&context, arguments.command)))
        .unwrap_or(Err(DeskError::Fault));
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) if error.is_broken_pipe() => ExitCode::SUCCESS,
        Err(error) => {
            output::complain(&command::refusal::tell(&error, &context, json));
            ExitCode::from(error.exit_code())
        }
    }
}
