//! Writes every file that is made from the tokens and the signs.

use std::path::Path;
use std::process::ExitCode;

use look::{LookError, Tokens, made, signs_of_project};

fn main() -> ExitCode {
    match write() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn write() -> Result<(), LookError> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"));
    for file in made(&Tokens::of_project()?, &signs_of_project()?) {
        let path = folder.join(file.path);
        let written = path.parent().map_or(Ok(()), std::fs::create_dir_all);
        written
            .and_then(|()| std::fs::write(&path, &file.text))
            .map_err(|error| LookError::File { path: path.clone(), error })?;
        println!("{}", path.display());
    }
    Ok(())
}
