//! A file that somebody sent: what is in it, and taking it in as a survey of its own.

use std::path::{Path, PathBuf};
use std::time::Duration;

use facts::file::{self, Limits, Taken};
use facts::home::Found;
use phrase::{Arg, Phrase};

use super::share::{self, Looked, SharePlace};
use super::surveys;
use crate::deed::Deed;
use crate::errand::{After, Doing};
use crate::error::Result;
use crate::guide::Guide;
use crate::place::{Move, Outside, Place};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

/// What a process left that died while it took a file in goes after this time.
const STALE: Duration = Duration::from_secs(24 * 3600);

pub(super) fn show(guide: &Guide) -> Screen {
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "sent", &Phrase::new("sent"));
    sketch.able(Ability::ChooseFile);
    let choose = FileAsked::ToRead.key();
    match &guide.looked {
        None => {
            sketch.words(WordsRole::Lead, &Phrase::new("sent-lead"));
            sketch.press(&choose, &Phrase::new("share-choose"), PressWeight::Main);
        }
        Some(looked) => {
            share::tell_look(&mut sketch, &looked.look, guide.author(), None);
            match here(guide) {
                Some(entry) => {
                    let Found::Survey(look) = &entry.found else { return sketch.screen };
                    let name = surveys::named(&look.summary, &entry.folder);
                    sketch.words(WordsRole::Lead, &Phrase::new("sent-is-here").phrase("survey", name));
                    sketch.press("there", &Phrase::new("sent-take-there"), PressWeight::Main);
                }
                None => sketch.press("take", &Phrase::new("sent-take"), PressWeight::Main),
            }
            sketch.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

/// The survey of this device that the file belongs to.
fn here(guide: &Guide) -> Option<facts::home::Entry> {
    let id = guide.looked.as_ref()?.look.survey;
    let found = guide.home().list().ok()?;
    found.into_iter().find(|entry| matches!(&entry.found, Found::Survey(look) if look.survey == id))
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::File { key, file } if FileAsked::of(key) == Some(FileAsked::ToRead) => {
            guide.looked = None;
            let file = PathBuf::from(file);
            guide.send(Doing::Look, move |work| {
                let looked = Looked::into(&file, work)?;
                Ok(After::new(move |guide| {
                    guide.looked = Some(looked.clone());
                    Ok(Move::Stay)
                }))
            });
            Ok(Move::Stay)
        }
        Deed::Press { key } => match key.as_str() {
            "take" => take_in(guide),
            "there" => there(guide),
            "out" => Ok(Move::Outside(Outside::Surveys)),
            key if FileAsked::of(key).is_some() => {
                guide.tell(Phrase::new("share-needs-file"));
                Ok(Move::Stay)
            }
            _ => Ok(Move::Stay),
        },
        _ => Ok(Move::Stay),
    }
}

/// Sends the errand that takes the file in that was looked into.
fn take_in(guide: &mut Guide) -> Result<Move> {
    let Some(looked) = guide.looked.clone() else { return Ok(Move::Stay) };
    if here(guide).is_some() {
        return Ok(Move::Stay);
    }
    // What others left that died; that it cannot be removed hinders nothing.
    let _ = guide.home().sweep(STALE);
    let stem = || looked.file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let name = looked.look.name.clone().filter(|name| !name.trim().is_empty()).unwrap_or_else(stem);
    let (folder, author) = (guide.free_folder(&name)?, guide.author());
    guide.send(Doing::TakeNew, move |work| {
        let (store, taken) =
            file::take_as_new(&looked.file, &folder, author, Limits::default(), &mut work.watch_file())?;
        drop(store);
        Ok(After::new(move |guide| was_taken(guide, &folder, &taken)))
    });
    Ok(Move::Stay)
}

fn was_taken(guide: &mut Guide, folder: &Path, taken: &Taken) -> Result<Move> {
    guide.open(folder)?;
    guide.tell_done(
        Phrase::new("sent-taken")
            .with("facts", Arg::Count(taken.facts.len() as u64))
            .with("photos", Arg::Count(taken.photos.len() as u64)),
    );
    guide.looked = None;
    Ok(Move::Go(Place::Overview))
}

/// Opens the survey that the file belongs to and looks at it from there.
fn there(guide: &mut Guide) -> Result<Move> {
    let (Some(looked), Some(entry)) = (guide.looked.clone(), here(guide)) else { return Ok(Move::Stay) };
    if let step @ Move::Outside(_) = surveys::open(guide, &entry.folder)? {
        return Ok(step);
    }
    guide.looked = None;
    share::look(guide, looked.file)?;
    Ok(Move::Go(Place::Share(SharePlace::TakeIn)))
}
