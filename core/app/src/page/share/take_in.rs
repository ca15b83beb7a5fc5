//! Taking in a file that somebody sent: a look first, then taking it in, then perhaps putting it back.

use std::path::PathBuf;

use facts::error::CannotPutBack;
use facts::file::{self, Limits, Taken};
use facts::store::Store;
use phrase::{Arg, Phrase};

use super::teller::Teller;
use super::{Looked, SharePlace, brings};
use crate::deed::Deed;
use crate::errand::{After, Doing};
use crate::error::Result;
use crate::guide::{Guide, OpenSurvey};
use crate::place::{Move, Outside, Place};
use crate::scene::Scene;
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show(open: &OpenSurvey, scene: &Scene<'_>) -> Screen {
    let title = Phrase::new("share-take-in");
    let mut sketch = Sketch::new(scene.language, scene.pending(), "share-take-in", &title);
    sketch.able(Ability::ChooseFile);
    let choose = FileAsked::ToRead.key();
    match open.looked.as_ref() {
        None => {
            sketch.words(WordsRole::Lead, &Phrase::new("share-take-in-lead"));
            sketch.press(&choose, &Phrase::new("share-choose"), PressWeight::Main);
        }
        Some(looked) if looked.revision != open.revision => {
            sketch.words(WordsRole::Lead, &Phrase::new("share-look-is-old"));
            sketch.press("again", &Phrase::new("share-look-again"), PressWeight::Main);
            sketch.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
        Some(looked) => {
            let look = &looked.look;
            let teller = Teller::of(scene);
            brings::tell(&mut sketch, look, scene.me, Some(&teller).filter(|_| look.same_survey));
            if !look.same_survey {
                sketch.words(WordsRole::Lead, &Phrase::new("share-other-survey"));
                sketch.press("apart", &Phrase::new("share-take-apart"), PressWeight::Main);
            } else if look.new_facts + look.new_photos + look.forgotten.len() == 0 {
                sketch.words(WordsRole::Lead, &Phrase::new("share-nothing-new"));
            } else {
                sketch.words(WordsRole::Aside, &Phrase::new("share-look-only"));
                let id = if look.forgotten.is_empty() { "share-take" } else { "share-take-and-forget" };
                sketch.confirm("take", &Phrase::new(id));
            }
            sketch.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    if open.looked.is_none() {
        put_back_block(open, &mut sketch);
    }
    if !scene.ledger.disagreements().is_empty() {
        sketch.press("settle", &Phrase::new("share-go-settle"), PressWeight::Other);
    }
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// Putting back what the last file brought, or why that cannot be.
fn put_back_block(open: &OpenSurvey, sketch: &mut Sketch<'_>) {
    match open.returnable {
        Ok(facts) => {
            let phrase = Phrase::new("share-put-back").with("count", Arg::Count(facts as u64));
            sketch.confirm("put-back", &phrase);
        }
        Err(CannotPutBack::WrittenSince) => {
            sketch.words(WordsRole::Aside, &Phrase::new("share-written-since"));
            sketch.press("acts", &Phrase::new("share-acts"), PressWeight::Other);
        }
        Err(CannotPutBack::Forgotten) => {
            sketch.words(WordsRole::Aside, &Phrase::new("share-took-forgetting"));
        }
        Err(_) => {}
    }
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::File { key, file } if FileAsked::of(key) == Some(FileAsked::ToRead) => {
            guide.open_survey()?.looked = None;
            look(guide, file.into())?;
            Ok(Move::Stay)
        }
        Deed::Press { key } => match key.as_str() {
            "again" => {
                if let Some(looked) = &guide.open_survey()?.looked {
                    let file = looked.file.clone();
                    look(guide, file)?;
                }
                Ok(Move::Stay)
            }
            "take" => take_in(guide),
            "put-back" => put_back(guide),
            "apart" => {
                // The file goes along to the screen outside.
                guide.looked = guide.open_survey()?.looked.take();
                Ok(Move::Outside(Outside::Sent))
            }
            "settle" => Ok(Move::Go(Place::Share(SharePlace::Disagreements))),
            "acts" => Ok(Move::Go(Place::Share(SharePlace::Acts))),
            key if FileAsked::of(key).is_some() => {
                guide.tell(Phrase::new("share-needs-file"));
                Ok(Move::Stay)
            }
            _ => Ok(Move::Stay),
        },
        _ => Ok(Move::Stay),
    }
}

/// Sends the errand that looks what a file would bring to the open survey. What other programs wrote meanwhile is read
/// first.
pub(in crate::page) fn look(guide: &mut Guide, file: PathBuf) -> Result<()> {
    let open = guide.open_survey()?;
    open.refresh()?;
    let (folder, author, revision) = (open.store.folder().to_owned(), open.store.author(), open.revision);
    guide.send(Doing::Look, move |work| {
        let mut store = Store::open(&folder, author)?;
        let looked = Looked::against(&mut store, revision, &file, work)?;
        Ok(After::new(move |guide| {
            let open = guide.open_survey()?;
            open.refresh()?;
            open.looked = Some(looked.clone());
            Ok(Move::Stay)
        }))
    });
    Ok(())
}

/// Sends the errand that takes the file in that was looked into.
fn take_in(guide: &mut Guide) -> Result<Move> {
    let open = guide.open_survey()?;
    let Some(looked) = open.looked.clone() else { return Ok(Move::Stay) };
    if looked.revision != open.revision || !looked.look.same_survey {
        return Ok(Move::Stay);
    }
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    guide.send(Doing::Take, move |work| {
        let mut store = Store::open(&folder, author)?;
        let taken = file::take(&looked.file, &mut store, Limits::default(), &mut work.watch_file())?;
        Ok(After::new(move |guide| was_taken(guide, &taken)))
    });
    Ok(Move::Stay)
}

fn was_taken(guide: &mut Guide, taken: &Taken) -> Result<Move> {
    let open = guide.open_survey()?;
    open.looked = None;
    open.store.refresh()?;
    open.read()?;
    guide.tell_done(
        Phrase::new("share-taken")
            .with("facts", Arg::Count(taken.facts.len() as u64))
            .with("photos", Arg::Count(taken.photos.len() as u64)),
    );
    Ok(Move::Stay)
}

fn put_back(guide: &mut Guide) -> Result<Move> {
    let open = guide.open_survey()?;
    let returned = file::put_back(&mut open.store)?;
    open.last_act = None;
    open.read()?;
    guide.tell_done(Phrase::new("share-was-put-back").with("count", Arg::Count(returned.facts.len() as u64)));
    Ok(Move::Stay)
}
