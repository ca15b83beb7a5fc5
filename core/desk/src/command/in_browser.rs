//! `legwork page`: the whole guide as a page in the browser of this computer.

use std::path::Path;
use std::time::Duration;

use phrase::Phrase;
use serde::Serialize;

use super::context::Context;
use super::{demo, walk};
use crate::error::DeskError;
use crate::stop::Stop;

/// So often it is asked whether the user wants the page to end.
const LOOK: Duration = Duration::from_millis(100);
/// The name of the invented house's survey.
const INVENTED: &str = "demo.legwork";

#[derive(Serialize)]
struct PageJson {
    address: String,
}

/// Serves the page until it is stopped.
///
/// # Errors
/// If the survey cannot be opened, or nothing can be served.
pub fn run(context: &Context, named: Option<&Path>, invented: bool, browser: bool) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    let home = invented.then(tempfile::tempdir).transpose();
    let home = home.map_err(|source| DeskError::Write { path: std::env::temp_dir(), source })?;
    let made = match &home {
        Some(home) => {
            let folder = home.path().join(INVENTED);
            demo::survey(&folder)?;
            Some(folder)
        }
        None => None,
    };
    let figures = context.language.figures();
    let guide = walk::guide_at(named.or(made.as_deref()), figures)?;
    let served = page::serve(guide, page::english(figures))?;
    let address = PageJson { address: served.address().to_owned() };
    context.answer(&address, |text| {
        text.paragraph(0, &context.word("desk-page-at"));
        text.gap();
        // On a line of its own, unbroken, however narrow the terminal is.
        text.whole(served.address());
        text.gap();
        if home.is_some() {
            text.paragraph(0, &context.word("desk-page-demo"));
        }
        text.paragraph(0, &context.word("desk-page-secret"));
        text.paragraph(0, &context.word("desk-page-end"));
    })?;
    if browser {
        // Where there is none, the address stands in the terminal.
        let _ = open::that_detached(served.address_once());
    }
    while !stop.is_asked() {
        std::thread::sleep(LOOK);
    }
    served.stop()?;
    let ended = if home.is_some() { "desk-page-demo-ended" } else { "desk-page-ended" };
    if context.json {
        return Ok(());
    }
    crate::output::say(&format!("\n{}\n", context.say(&Phrase::new(ended))))
}
