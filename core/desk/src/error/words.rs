//! What went wrong with a command, in words. The user typed paths and options, so that they may be told by them.

use std::io;
use std::path::Path;

use facts::error::{FactsError, SystemFault};
use guide::{GuideError, Trouble};
use house::story;
use page::PageError;
use phrase::{Arg, Phrase};
use telling::words::error::{InWords, ours};

use super::{Advice, DeskError, ListFault, Unconfirmed, WrongThing};
use crate::sheet::ValueFault;

impl InWords for DeskError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Sheet { file, problems } => {
                of_file("desk-error-sheet", file).with("count", count(problems.count()))
            }
            Self::SheetTooLong { file, bytes, most } => of_file("desk-error-sheet-too-long", file)
                .with("bytes", Arg::Count(*bytes))
                .with("most", Arg::Count(*most)),
            Self::LabelNotText { line } => {
                Phrase::new("desk-error-label-not-text").with("line", count(*line))
            }
            Self::LabelLong { found, most } => {
                Phrase::new("desk-error-label-long").with("found", count(*found)).with("most", count(*most))
            }
            Self::LabelTooLong { line, most } => {
                let phrase = Phrase::new("desk-error-label-too-long").with("line", count(*line));
                phrase.with("most", count(*most))
            }
            Self::PhotosMany { found, most } => {
                Phrase::new("desk-error-photos-many").with("found", count(*found)).with("most", count(*most))
            }
            Self::CropsOfPhotos { crops, photos } => Phrase::new("desk-error-crops-of-photos")
                .with("crops", count(*crops))
                .with("photos", count(*photos)),
            Self::CropNotRead { given } => Phrase::new("desk-error-crop").text("given", given),
            Self::CropOutside { file, size: (width, height) } => of_file("desk-error-crop-outside", file)
                .with("width", Arg::Count(u64::from(*width)))
                .with("height", Arg::Count(u64::from(*height))),
            Self::NoText { file } => of_file("desk-error-no-text", file),
            Self::PrintModel { folder, fault } => {
                // All that is said of it has a phrase; the rest never gets here.
                let why = fault.phrase().unwrap_or_else(ours);
                of_file("desk-error-print-model", folder).phrase("why", why)
            }
            Self::Exists { path, advice } => {
                of_file("desk-error-exists", path).phrase("advice", advice.phrase())
            }
            Self::Advice(error) => error.phrase(),
            Self::Facts(error) => of_facts(error),
            Self::PackedFile { path } => of_file("desk-error-packed", path),
            Self::Guide(error) => of_guide(error),
            Self::Page(error) => of_page(error),
            Self::Read { path, source } => of_file("desk-error-read", path).phrase("why", system(source)),
            Self::Write { path, source } => of_file("desk-error-write", path).phrase("why", system(source)),
            Self::Output(source) => Phrase::new("desk-error-output").phrase("why", system(source)),
            Self::NoHome => Phrase::new("desk-error-no-home"),
            Self::NoSuchThing { word, near } => match near {
                None => of_word("desk-error-no-such-thing", word),
                Some(near) => of_word("desk-error-no-such-thing-near", word).text("near", near),
            },
            Self::Ambiguous { word, count: of, found } => {
                let found = found.iter().cloned().map(|one| Arg::Phrase(Box::new(one)));
                of_word("desk-error-ambiguous", word)
                    .with("count", count(*of))
                    .with("ids", Arg::Several(found.collect()))
            }
            Self::NoSuchField { field, known } => {
                Phrase::new("desk-error-no-such-field").text("field", field).with("known", fields(known))
            }
            Self::WrongThing { word, what } => {
                of_word("desk-error-wrong-thing", word).phrase("what", what.phrase())
            }
            Self::Picture { file, fault } => {
                of_file("desk-error-picture", file).phrase("why", fault.phrase())
            }
            Self::NoPictures { path } => of_file("desk-error-no-pictures", path),
            Self::InList { list, faults } => in_list(list, faults),
            Self::EmptyList { list } => of_file("desk-error-list-empty", list),
            Self::NotSet { word, field, why } => {
                let (id, known) = match &**why {
                    ValueFault::NoField { known } if known.is_empty() => {
                        ("desk-error-not-set-thing", String::new())
                    }
                    ValueFault::NoField { known } => ("desk-error-not-set-field", known.join(", ")),
                    ValueFault::Needed => ("desk-error-not-set-needed", String::new()),
                    ValueFault::Taken => ("desk-error-not-set-taken", String::new()),
                    ValueFault::NoRun => ("desk-error-not-set-run", String::new()),
                    ValueFault::Problems(_) => ("desk-error-not-set", String::new()),
                };
                of_word(id, word).text("field", field).text("known", known)
            }
            Self::TagTwice { tag } => Phrase::new("desk-error-tag-twice").text("tag", tag),
            Self::NoTags => Phrase::new("desk-error-no-tags"),
            Self::EmptyWord => Phrase::new("desk-error-empty-word"),
            Self::PicturesPartly { done, of, why } => Phrase::new("desk-error-pictures-partly")
                .with("done", count(*done))
                .with("of", count(*of))
                .phrase("why", why.phrase()),
            Self::Stopped => Phrase::new("desk-error-stopped"),
            Self::NotConfirmed(what) => Phrase::new("desk-error-not-confirmed").phrase("what", what.phrase()),
            Self::EmptyNote => Phrase::new("desk-error-empty-note"),
            Self::NoName { found, most } => {
                Phrase::new("desk-error-no-name").with("found", count(*found)).with("most", count(*most))
            }
            Self::AsideAlready { path } => of_file("desk-error-aside-already", path),
            Self::NothingDone => Phrase::new("desk-error-nothing-done"),
            Self::NotAside { path } => {
                of_file("desk-error-not-aside", path).text("aside", facts::home::SET_ASIDE)
            }
            Self::Signals(source) => Phrase::new("desk-error-signals").phrase("why", system(source)),
            Self::Fault => ours(),
        }
    }
}

/// The most lines of a list that are told of.
const MOST_LINES: usize = 20;

/// All lines that cannot be done, one below the other.
fn in_list(list: &Path, faults: &[(u64, ListFault)]) -> Phrase {
    let one = |(line, why): &(u64, ListFault)| {
        let phrase = of_file("desk-error-list", list).text("line", line.to_string());
        phrase.phrase("why", why.phrase())
    };
    let below = |before: Phrase, next: Phrase| {
        Phrase::new("desk-error-list-and").phrase("before", before).phrase("next", next)
    };
    let more = faults.len().saturating_sub(MOST_LINES);
    let told = faults.iter().take(MOST_LINES).map(one).reduce(below);
    let told = told.unwrap_or_else(|| of_file("desk-error-list-empty", list));
    if more == 0 {
        return told;
    }
    below(told, Phrase::new("desk-error-list-more").with("count", count(more)))
}

impl InWords for ListFault {
    fn phrase(&self) -> Phrase {
        match self {
            Self::NoPhoto { word } => of_word("desk-error-list-no-photo", word),
            Self::Words { found } => Phrase::new("desk-error-list-line").text("found", found.to_string()),
            Self::Role { word } => of_word("desk-error-list-role", word),
            Self::Twice { word, first } => {
                of_word("desk-error-list-twice", word).text("first", first.to_string())
            }
            Self::NotText => Phrase::new("desk-error-list-text"),
            Self::Thing(error) => error.phrase(),
        }
    }
}

impl InWords for Advice {
    fn phrase(&self) -> Phrase {
        Phrase::new(match self {
            Self::OtherOut => "desk-error-other-out",
            Self::Replace => "desk-error-replace",
        })
    }
}

impl InWords for WrongThing {
    fn phrase(&self) -> Phrase {
        Phrase::new(match self {
            Self::NotForPhotos => "desk-error-not-for-photos",
            Self::RoomForPhotos => "desk-error-room-for-photos",
            Self::NotAPhoto => "desk-error-not-a-photo",
            Self::NotAPart => "desk-error-not-a-part",
            Self::WholeSurvey => "desk-error-whole-survey",
            Self::NotRemoved => "desk-error-not-removed",
            Self::RemovedAlready => "desk-error-removed-already",
            Self::ForgottenAlready => "desk-error-forgotten-already",
            Self::NoSide => "desk-error-no-side",
        })
    }
}

impl InWords for Unconfirmed {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Forget { records } => {
                Phrase::new("desk-error-would-forget").with("records", count(*records))
            }
            Self::Remove { hanging } => {
                Phrase::new("desk-error-would-remove").with("things", Arg::Several(hanging.clone()))
            }
            Self::Delete => Phrase::new("desk-error-would-delete"),
            Self::PutBack => Phrase::new("desk-error-would-put-back"),
        }
    }
}

/// Why the system did not read or write, as part of a sentence.
pub fn system(error: &io::Error) -> Phrase {
    system_fault(error.into())
}

fn system_fault(fault: SystemFault) -> Phrase {
    Phrase::new(match fault {
        SystemFault::Full => "desk-system-full",
        SystemFault::NotAllowed => "desk-system-not-allowed",
        SystemFault::Busy => "desk-system-busy",
        SystemFault::Missing => "desk-system-missing",
        SystemFault::AlreadyThere => "desk-system-there",
        SystemFault::TooLong => "desk-system-too-long",
        SystemFault::Other => "desk-system-other",
    })
}

/// With the path of the survey or the file, where the error is about one.
fn of_facts(error: &FactsError) -> Phrase {
    let phrase = error.phrase();
    match error {
        FactsError::NotASurvey { folder: path, .. }
        | FactsError::Newer { folder: path, .. }
        | FactsError::Damaged { folder: path, .. }
        | FactsError::Inaccessible { folder: path, .. }
        | FactsError::DiskFull { folder: path }
        | FactsError::Busy { folder: path }
        | FactsError::Database { folder: path, .. }
        | FactsError::File { file: path, .. }
        | FactsError::OtherEnding { file: path, .. }
        | FactsError::OtherKindThere { file: path, .. }
        | FactsError::OtherSurvey { file: path } => of_file("desk-error-at", path).phrase("what", phrase),
        FactsError::AlreadyThere { folder: path } => {
            of_file("desk-error-exists", path).phrase("advice", Phrase::new("desk-error-other-name"))
        }
        FactsError::FileThere { file: path } => {
            of_file("desk-error-exists", path).phrase("advice", Advice::Replace.phrase())
        }
        _ => phrase,
    }
}

fn of_guide(error: &GuideError) -> Phrase {
    match error {
        GuideError::Trouble(Trouble::File { file, fault }) => {
            of_file("desk-error-read", file).phrase("why", system_fault(*fault))
        }
        other => other.phrase(),
    }
}

fn of_file(id: &str, path: &Path) -> Phrase {
    Phrase::new(id).text("path", path.display().to_string())
}

fn of_word(id: &str, word: &str) -> Phrase {
    Phrase::new(id).text("word", word)
}

fn count(of: usize) -> Arg {
    Arg::Count(u64::try_from(of).unwrap_or(u64::MAX))
}

fn of_page(error: &PageError) -> Phrase {
    match error {
        PageError::Port(source) | PageError::Server(source) => {
            Phrase::new("desk-error-page").phrase("why", system(source))
        }
        PageError::Folder(source) => Phrase::new("desk-error-page-folder").phrase("why", system(source)),
        PageError::Random(_) => Phrase::new("desk-error-page-random"),
        PageError::Guide(error) => of_guide(error),
    }
}

/// Fields as the command takes them, each with its words.
fn fields(known: &[String]) -> Arg {
    if known.is_empty() {
        return Arg::Phrase(Box::new(Phrase::new("value-empty")));
    }
    let one = |name: &String| {
        let told =
            Phrase::new("desk-field-known").text("name", name).phrase("field", story::field_name(name));
        Arg::Phrase(Box::new(told))
    };
    Arg::Several(known.iter().map(one).collect())
}
