//! The `legwork` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    desk::run(std::env::args_os())
}
