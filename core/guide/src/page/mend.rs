//! Mending a damaged survey: from what can still be read, or with a file of it.

use std::path::{Path, PathBuf};

use facts::error::{FactsError, NotASurvey};
use facts::fact::Writer;
use facts::file::{self, Consent, Limits};
use facts::home::Repaired;
use facts::store::{Rebuilt, Salvage, Store, peek, salvage};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::place::{Key, Move, Outside};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::session::{After, LongWork, Looked, Session, WorkKind, name_of};
use crate::view::{ScreenBuilder, tell_look};

/// `has_lost` if what is here was found not to be enough: only then is there anything to give up.
pub(crate) fn show(session: &Session, has_lost: bool) -> Screen {
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("mend"));
    builder.able(Ability::ChooseFile);
    let choose = Key::File(FileAsked::ToRead);
    match &session.looked {
        None => {
            builder.words(WordsRole::Lead, &Phrase::new("mend-lead"));
            builder.words(WordsRole::Plain, &Phrase::new("mend-how"));
            builder.press(&Key::Mend, &Phrase::new("mend-from-itself"), PressWeight::Main);
            builder.press(&choose, &Phrase::new("mend-from-file"), PressWeight::Other);
            if has_lost {
                builder.confirm_loss(&Key::MendWithoutLost, &Phrase::new("mend-without-lost"));
            }
        }
        Some(looked) => {
            // Where too little can be read to tell one survey from another, only its user can.
            tell_look(&mut builder, &looked.look, looked.look.author_of(session.author()));
            builder.confirm(&Key::MendWithFile, &Phrase::new("mend-with-this-file"));
            builder.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    builder.press(&Key::Not, &Phrase::new("survey-leave"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(
    session: &mut Session,
    folder: &Path,
    (found_damaged, has_lost): (bool, bool),
    done: &Done,
) -> Move {
    match done {
        Done::Press(key) => match key {
            Key::Mend => {
                send(session, folder.to_owned(), found_damaged, None);
                Move::Stay
            }
            Key::MendWithoutLost if has_lost => {
                send_without_lost(session, folder.to_owned());
                Move::Stay
            }
            Key::MendWithFile => {
                if let Some(looked) = &session.looked {
                    let file = looked.file.clone();
                    send(session, folder.to_owned(), found_damaged, Some(file));
                }
                Move::Stay
            }
            Key::Not => Move::Outside(Outside::Survey(folder.to_owned())),
            Key::File(_) => {
                session.tell(Phrase::new("share-needs-file"));
                Move::Stay
            }
            _ => Move::Stay,
        },
        Done::File(Key::File(FileAsked::ToRead), file) => {
            look(session, folder.to_owned(), file.into());
            Move::Stay
        }
        _ => Move::Stay,
    }
}

/// A survey that can be read now, and what was done for that.
struct Mended {
    rebuilt: Option<Rebuilt>,
    with_file: bool,
    facts: usize,
    missing_photos: usize,
    /// Records that are lost for good, unless a file brings them later.
    lost: usize,
}

impl Mended {
    fn of(store: &Store, rebuilt: Option<Rebuilt>, with_file: bool) -> std::result::Result<Self, FactsError> {
        let missing_photos = store.lacking_photos()?.len();
        Ok(Self { rebuilt, with_file, facts: store.ledger().len(), missing_photos, lost: 0 })
    }
}

/// Sends the long work that mends a survey: from what can be read of it, or with a file.
fn send(session: &mut Session, folder: PathBuf, found_damaged: bool, file: Option<PathBuf>) {
    let author = session.author();
    session.send(WorkKind::Mend, move |work| {
        let mended = match &file {
            None => from_itself(&folder, author, found_damaged)?
                .map(|(store, rebuilt)| Mended::of(&store, rebuilt, false))
                .transpose()?,
            Some(file) => Some(with_file(&folder, author, found_damaged, file, work)?),
        };
        let has_lost = mended.is_none() && readable(&folder)?.survey.is_some();
        Ok(After::new(move |session| {
            let Some(mended) = &mended else {
                session.tell(Phrase::new("home-needs-file"));
                return Ok(Move::Outside(Outside::Mend { folder: folder.clone(), found_damaged, has_lost }));
            };
            tell(session, mended);
            Ok(Move::Outside(Outside::Survey(folder.clone())))
        }))
    });
}

/// Sends the long work that mends a survey and gives up what is lost.
fn send_without_lost(session: &mut Session, folder: PathBuf) {
    let author = session.author();
    session.send(WorkKind::Mend, move |_| {
        let repaired = Repaired::open_without_lost(&folder, author)?;
        let mended = Mended::of(&repaired.store, repaired.rebuilt, false)?;
        let mended = Mended { lost: repaired.lost.len(), ..mended };
        Ok(After::new(move |session| {
            tell(session, &mended);
            Ok(Move::Outside(Outside::Survey(folder.clone())))
        }))
    });
}

/// Mends a survey from what can be read of it; nothing if too little can.
fn from_itself(
    folder: &Path,
    author: Writer,
    found_damaged: bool,
) -> std::result::Result<Option<(Store, Option<Rebuilt>)>, FactsError> {
    if !found_damaged {
        return match Repaired::open(folder, author) {
            Ok(repaired) => Ok(Some((repaired.store, repaired.rebuilt))),
            Err(error) if is_damage(&error) => Ok(None),
            Err(error) => Err(error),
        };
    }
    // What showed the damage may not show it twice: the log that a crash left is gone after the first opening.
    let found = readable(folder)?;
    let Some(survey) = found.survey.filter(|_| found.is_complete) else {
        // A copy of it on this device may have what is lost here.
        return match Repaired::open(folder, author) {
            Ok(repaired) => Ok(Some((repaired.store, repaired.rebuilt))),
            Err(error) if is_damage(&error) => Ok(None),
            Err(error) => Err(error),
        };
    };
    let repaired = Repaired::open_with_facts(folder, author, survey, found.facts)?;
    Ok(Some((repaired.store, repaired.rebuilt)))
}

fn with_file(
    folder: &Path,
    author: Writer,
    found_damaged: bool,
    file: &Path,
    work: &LongWork,
) -> std::result::Result<Mended, FactsError> {
    let Some((mut store, rebuilt)) = from_itself(folder, author, found_damaged)? else {
        let watch = &mut work.watch_file();
        let repaired = Repaired::open_with_file(folder, author, file, Limits::default(), watch)?;
        return Mended::of(&repaired.store, repaired.rebuilt, true);
    };
    // Brings the photos too.
    match file::take(file, &mut store, Consent::NONE, Limits::default(), &mut work.watch_file()) {
        // It is mended already; what the file brings beside can be taken in later.
        Err(FactsError::Stopped) if rebuilt.is_some() => Mended::of(&store, rebuilt, false),
        Err(error) => Err(error),
        Ok(_) => Mended::of(&store, rebuilt, true),
    }
}

/// What can still be read of a survey; nothing where its database is gone.
fn readable(folder: &Path) -> std::result::Result<Salvage, FactsError> {
    match salvage(folder) {
        Err(error) if is_damage(&error) => Ok(Salvage::default()),
        found => found,
    }
}

/// Whether a survey cannot be read from its own folder, but perhaps with a file's help.
fn is_damage(error: &FactsError) -> bool {
    let is_lost = |why: &NotASurvey| matches!(why, NotASurvey::NotSqlite | NotASurvey::NoDatabase);
    match error {
        FactsError::Damaged { .. } => true,
        FactsError::NotASurvey { why, .. } => is_lost(why),
        _ => false,
    }
}

fn tell(session: &mut Session, mended: &Mended) {
    let done = match &mended.rebuilt {
        None => Phrase::new("mend-whole"),
        Some(rebuilt) => match rebuilt.damaged.as_deref().map(name_of) {
            None if rebuilt.damaged_is_forgotten => Phrase::new("home-repaired-and-forgotten"),
            None => Phrase::new("mend-mended-from-nothing"),
            Some(damaged) if mended.with_file => {
                Phrase::new("mend-mended-with-file").text("damaged", damaged)
            }
            Some(damaged) => Phrase::new("home-repaired").text("damaged", damaged),
        },
    };
    session.tell_done(done.with("facts", Arg::Count(mended.facts as u64)));
    if mended.lost > 0 {
        session.tell(Phrase::new("mend-lost").with("count", Arg::Count(mended.lost as u64)));
    }
    if mended.missing_photos > 0 {
        let missing = Arg::Count(mended.missing_photos as u64);
        session.tell(Phrase::new("photo-missing").with("count", missing));
    }
}

/// Sends the long work that looks into a file that may help.
fn look(session: &mut Session, folder: PathBuf, file: PathBuf) {
    session.looked = None;
    session.send(WorkKind::Look, move |work| {
        let looked = Looked::into(&file, work)?;
        let known = match peek(&folder) {
            Ok(look) => Some(look.survey),
            Err(_) => readable(&folder)?.survey,
        };
        if known.is_some_and(|survey| survey != looked.look.survey) {
            return Err(FactsError::OtherSurveyInFile.into());
        }
        Ok(After::new(move |session| {
            session.looked = Some(looked.clone());
            Ok(Move::Stay)
        }))
    });
}
