//! `legwork walk`: the whole guide in a terminal, as plain text.

use std::io::{self, BufRead, IsTerminal};
use std::path::{Path, PathBuf};
use std::time::Duration;

use crate::plain::{self, Typed};
use guide::{Deed, Guide};
use phrase::Phrase;
use telling::words::error::InWords;

use crate::author;
use crate::error::DeskError;
use crate::output;

/// No line is longer, however wide the terminal.
const WIDEST: usize = 80;

/// Leads through a survey, or through the surveys of a folder. Lines come from `answers`, else from the keyboard.
///
/// # Errors
/// If the survey cannot be opened or the answers cannot be read. What was answered is kept.
pub fn run(
    named: Option<&Path>,
    answers: Option<&Path>,
    figures: telling::words::Figures,
) -> Result<(), DeskError> {
    let mut guide = guide_at(named, figures)?;
    // A terminal draws nothing meanwhile.
    guide.wait_for_long_work(Duration::MAX);
    let mut lines = Lines::of(answers)?;
    let mut walker = Walker { language: guide::english(figures), shown: None, echo: !lines.is_keyboard };
    loop {
        guide.settle_long_work();
        let screen = guide.screen();
        let (text, numbered) = plain::show(&screen, &walker.language);
        walker.show(&text)?;
        let Some(line) = lines.next("> ")? else { break };
        if walker.echo {
            output::say(&format!("> {line}\n"))?;
        }
        if matches!(line.trim(), "quit" | "q!") {
            break;
        }
        if line.trim() == plain::CAUTIONS
            && let Some(cautions) = plain::cautions(&screen)
        {
            output::say(&wrapped(&cautions))?;
            continue;
        }
        match plain::read(&line, &screen, &numbered) {
            Typed::Blank => {}
            Typed::NotUnderstood(id) => walker.say(id)?,
            Typed::Deeds(deeds) => {
                walker.shown = None;
                walker.act(&mut guide, &deeds)?;
            }
            Typed::AskAgain(deed, question) => {
                output::say(&format!("{question}\n"))?;
                walker.say("plain-yes-or-no")?;
                let Some(line) = lines.next("> ")? else { break };
                walker.shown = None;
                if walker.word("plain-yes").split(' ').any(|yes| yes == line.trim().to_lowercase()) {
                    walker.act(&mut guide, &[deed])?;
                }
            }
        }
    }
    guide.close()?;
    walker.say("plain-kept")
}

/// The guide over the surveys of a folder, with one of them open if it is named.
///
/// # Errors
/// If it cannot be opened.
pub(super) fn guide_at(named: Option<&Path>, figures: telling::words::Figures) -> Result<Guide, DeskError> {
    let home = match named {
        Some(folder) => {
            folder.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."))
        }
        None => Path::new("."),
    };
    let mut guide = Guide::at(home, author::this_computer()?, guide::english(figures))?;
    if let Some(folder) = named {
        if facts::file::recognise(folder) {
            return Err(DeskError::PackedFile { path: folder.to_owned() });
        }
        guide.open(folder)?;
    }
    Ok(guide)
}

struct Walker {
    language: telling::words::Language,
    /// The screen that was shown last: the same one is not shown again.
    shown: Option<String>,
    echo: bool,
}

impl Walker {
    fn word(&self, id: &str) -> String {
        self.language.say(&Phrase::new(id))
    }

    fn say(&self, id: &str) -> Result<(), DeskError> {
        output::say(&format!("{}\n", self.word(id)))
    }

    fn show(&mut self, text: &str) -> Result<(), DeskError> {
        if self.shown.as_deref() != Some(text) {
            output::say(&format!("\n{}\n", wrapped(text)))?;
            self.shown = Some(text.to_owned());
        }
        Ok(())
    }

    /// What cannot be done the screen says. A fault of the program is said here, and the walk goes on.
    fn act(&self, guide: &mut Guide, deeds: &[Deed]) -> Result<(), DeskError> {
        for deed in deeds {
            if let Err(error) = guide.act(deed) {
                let what = self.language.say(&error.phrase());
                output::say(&format!("{} {what}\n", self.word("plain-problem")))?;
                break;
            }
        }
        Ok(())
    }
}

/// Each line broken at the width of the terminal, its rest set in.
fn wrapped(text: &str) -> String {
    let width =
        terminal_size::terminal_size().map_or(WIDEST, |(width, _)| usize::from(width.0).clamp(24, WIDEST));
    let mut page = String::new();
    for line in text.lines() {
        let indent = line.chars().take_while(|sign| *sign == ' ').count();
        let rest = " ".repeat((indent + 2).min(width / 2));
        page.push_str(&textwrap::fill(line, textwrap::Options::new(width).subsequent_indent(&rest)));
        page.push('\n');
    }
    page
}

struct Lines {
    from: Box<dyn BufRead>,
    is_keyboard: bool,
    path: PathBuf,
}

impl Lines {
    fn of(answers: Option<&Path>) -> Result<Self, DeskError> {
        match answers {
            None => Ok(Self {
                from: Box::new(io::BufReader::new(io::stdin())),
                is_keyboard: io::stdin().is_terminal(),
                path: PathBuf::from("-"),
            }),
            Some(path) => {
                let file = std::fs::File::open(path)
                    .map_err(|source| DeskError::Read { path: path.to_owned(), source })?;
                Ok(Self {
                    from: Box::new(io::BufReader::new(file)),
                    is_keyboard: false,
                    path: path.to_owned(),
                })
            }
        }
    }

    fn next(&mut self, prompt: &str) -> Result<Option<String>, DeskError> {
        if self.is_keyboard {
            output::ask(prompt)?;
        }
        let mut line = String::new();
        let read = self
            .from
            .read_line(&mut line)
            .map_err(|source| DeskError::Read { path: self.path.clone(), source })?;
        Ok((read > 0).then(|| line.trim_end_matches(['\r', '\n']).to_owned()))
    }
}
