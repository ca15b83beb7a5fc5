//! `legwork walk`: the whole guide in a terminal, as plain text.

use std::io::{self, BufRead, IsTerminal};
use std::path::{Path, PathBuf};
use std::time::Duration;

use crate::plain::{self, Typed};
use guide::{Deed, Guide};
use phrase::Phrase;
use telling::words::error::InWords;

use super::context::Context;
use crate::author;
use crate::error::DeskError;
use crate::given::{self, Given};
use crate::output;
use crate::print_model;
use crate::progress::{Line, Stopped};

/// No line is longer, however wide the terminal.
const WIDEST: usize = 80;

/// Leads through a survey, or through the surveys of a folder. Lines come from `answers`, else from the keyboard.
///
/// # Errors
/// If the survey cannot be opened or the answers cannot be read. What was answered is kept.
pub fn run(context: &Context, named: Option<&Path>, answers: Option<&Path>) -> Result<(), DeskError> {
    let figures = context.language.figures();
    let mut guide = guide_at(named, figures)?;
    // Long work is waited for here, with a line that says how far it is.
    guide.wait_for_long_work(Duration::ZERO);
    let mut lines = Lines::of(answers)?;
    let mut walker = Walker { language: guide::english(figures), shown: None, echo: !lines.is_keyboard };
    loop {
        settle(context, &mut guide);
        let screen = guide.screen();
        let (text, marked) = plain::show(&screen, &walker.language);
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
        match plain::read(&line, &screen, &marked) {
            Typed::Blank => {}
            Typed::NotUnderstood(id) => walker.say(id)?,
            Typed::Deeds(deeds) => {
                walker.shown = None;
                walker.act(context, &mut guide, &deeds)?;
            }
            Typed::AskAgain(deed, question) => {
                output::say(&format!("{question}\n"))?;
                walker.say("plain-yes-or-no")?;
                let Some(line) = lines.next("> ")? else { break };
                walker.shown = None;
                if walker.word("plain-yes").split(' ').any(|yes| yes == line.trim().to_lowercase()) {
                    walker.act(context, &mut guide, &[deed])?;
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
    guide.read_print_with(&print_model::folder());
    if let Some(folder) = named {
        if facts::file::recognise(folder) {
            return Err(DeskError::PackedFile { path: folder.to_owned() });
        }
        guide.open(folder)?;
    }
    Ok(guide)
}

/// A deed with the files that were meant: a name as a terminal pastes it, of photos also a folder or a pattern.
fn with_files(deed: &Deed) -> Vec<Deed> {
    match deed {
        Deed::Photo { key, file } => {
            let of = |files: Vec<PathBuf>| -> Vec<Deed> {
                let photo =
                    |file: PathBuf| Deed::Photo { key: key.clone(), file: file.display().to_string() };
                files.into_iter().map(photo).collect()
            };
            if let Some(files) = pictures(file) {
                of(files)
            } else {
                // Several in one line, where each of them is there.
                let each = given::parted(file).iter().map(|word| pictures(word)).collect::<Option<Vec<_>>>();
                each.filter(|each| each.len() > 1)
                    .map_or_else(|| vec![deed.clone()], |each| of(each.concat()))
            }
        }
        Deed::File { key, file } => {
            let there = given::pasted(file).into_iter().find(|path| path.exists());
            let file = there.map_or_else(|| file.clone(), |path| path.display().to_string());
            vec![Deed::File { key: key.clone(), file }]
        }
        other => vec![other.clone()],
    }
}

/// The pictures that a word means and that are there.
fn pictures(word: &str) -> Option<Vec<PathBuf>> {
    match given::files(Path::new(word), given::PICTURES) {
        Ok(Given::Files(files)) => files.iter().all(|file| file.exists()).then_some(files),
        Ok(Given::Nothing) | Err(_) => None,
    }
}

/// Waits until no long work is going on: a terminal draws nothing meanwhile but how far it is.
fn settle(context: &Context, guide: &mut Guide) {
    const LOOK_EVERY: Duration = Duration::from_millis(50);
    const THOUSAND: u64 = 1000;
    let mut line = Line::new(&context.language, Stopped::EndsTheWalk);
    let what = context.word("desk-doing-walk");
    while let Some(work) = guide.long_work() {
        if work.wait_at_most(LOOK_EVERY) {
            // One may send the next.
            guide.settle_long_work();
        } else {
            line.show(&what, work.progress().unwrap_or_default().into(), THOUSAND);
        }
    }
    guide.settle_long_work();
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
        output::say(&wrapped(&self.word(id)))
    }

    fn show(&mut self, text: &str) -> Result<(), DeskError> {
        if self.shown.as_deref() != Some(text) {
            output::say(&format!("\n{}\n", wrapped(text)))?;
            self.shown = Some(text.to_owned());
        }
        Ok(())
    }

    /// What cannot be done the screen says. A fault of the program is said here, and the walk goes on.
    fn act(&self, context: &Context, guide: &mut Guide, deeds: &[Deed]) -> Result<(), DeskError> {
        for deed in &deeds.iter().flat_map(with_files).collect::<Vec<_>>() {
            let done = guide.act(deed);
            settle(context, guide);
            if let Err(error) = done {
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
