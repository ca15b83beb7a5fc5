//! A law over all kinds of errors: each has its message, with all that the message speaks of, in every language.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::path::PathBuf;

use advice::AdviceError;
use coax::{CoaxError, LinkError, Megahertz, TouchstoneError};
use facts::error::{
    CannotPutBack, FactsError, FileFault, NotASurvey, OtherKind, PictureFault, SystemFault, UndoFault,
};
use facts::fact::{FactFault, FactId};

use super::super::{Figures, Language};
use phrase::Phrase;

use super::{InWords, system};

const WORDS: &str = include_str!("../../../words/en/errors.ftl");

/// What stands in errors for logs only, and may never be said.
const SECRET: &str = "os error 13 in rusqlite::Connection at /srv/walls";

fn folder() -> PathBuf {
    PathBuf::from("/srv/walls/Mill.legwork")
}

fn file() -> PathBuf {
    PathBuf::from("/srv/walls/Mill.lwk")
}

fn an_id() -> FactId {
    let uuid: uuid::Uuid = "0192f3a0-0000-7000-8000-000000000000".parse().unwrap();
    FactId::try_from(uuid).unwrap()
}

fn of_facts() -> Vec<FactsError> {
    use {NotASurvey as Not, UndoFault as Undo};
    let id = an_id();
    let secret = SECRET.to_owned();
    let mut all = vec![
        FactsError::Inner(SECRET),
        FactsError::TooManyParts { found: 9, most: 8 },
        FactsError::FactDiffers { id },
        FactsError::ReplacesUnknown { id, missing: id },
        FactsError::ReplacesElsewhere { id, other: id },
        FactsError::FromTheFuture { id },
        FactsError::AlreadyThere { folder: folder() },
        FactsError::Newer { folder: folder(), found: 9, known: 1 },
        FactsError::Damaged { folder: folder(), report: secret.clone() },
        FactsError::DiskFull { folder: folder() },
        FactsError::Busy { folder: folder() },
        FactsError::FolderName,
        FactsError::FolderNameTooLong { found: 9, most: 8 },
        FactsError::OtherSurveyInFile,
        FactsError::DraftTooLong { bytes: 9, limit: 8 },
        FactsError::TooManyPhotos { most: 8 },
        FactsError::NoSuchPhoto,
        FactsError::PhotoLost,
        FactsError::NothingToSettle,
        FactsError::Database {
            folder: folder(),
            source: rusqlite::Error::InvalidParameterName(secret.clone()),
        },
        FactsError::OtherSurvey { file: file() },
        FactsError::Upheaval { file: file(), things: 9, gone: 8, parts: 5, parts_changed: 4 },
        FactsError::DoesNotFit { what: SECRET, most: 8 },
        FactsError::TooManyFacts { found: 9, most: 8 },
        FactsError::FileThere { file: file() },
        FactsError::OtherEnding { file: file(), ending: "html" },
        FactsError::OtherKindThere { file: file(), ending: "lwk" },
        FactsError::Stopped,
    ];
    let not = [Not::Missing, Not::AFile, Not::Name, Not::NoDatabase, Not::NotSqlite, Not::OtherProgram];
    all.extend(not.map(|why| FactsError::NotASurvey { folder: folder(), why }));
    all.extend(of_system().map(|why| FactsError::Inaccessible {
        folder: folder(),
        why,
        reason: secret.clone(),
    }));
    all.push(FactsError::CannotPutBack(CannotPutBack::NothingTaken));
    let undo = [Undo::Nothing, Undo::ReplacedSince, Undo::ChangedSince, Undo::Forgets, Undo::Forgotten];
    all.extend(undo.map(FactsError::Undo));
    all.extend(of_files().into_iter().map(|fault| FactsError::File { file: file(), fault }));
    all.extend(of_pictures().into_iter().map(FactsError::Picture));
    all.extend(of_records().into_iter().map(FactsError::Fact));
    all
}

fn of_system() -> [SystemFault; 7] {
    use SystemFault as S;
    [S::Full, S::NotAllowed, S::Busy, S::Missing, S::AlreadyThere, S::TooLong, S::Other]
}

fn of_files() -> Vec<FileFault> {
    let what = || SECRET.to_owned();
    vec![
        FileFault::NotAZip,
        FileFault::Zip(SECRET),
        FileFault::NoSurvey,
        FileFault::Newer { found: 9, known: 1 },
        FileFault::StrangeEntry,
        FileFault::Twice { what: what() },
        FileFault::Missing { what: what() },
        FileFault::TooLarge { what: SECRET, most: 8 },
        FileFault::TotalTooLarge { most: 8 },
        FileFault::Damaged { what: what() },
        FileFault::Altered { what: what() },
        FileFault::TagFile { what: what(), why: SECRET },
        FileFault::Header(SECRET),
        FileFault::Line { number: 7, fault: FactFault::LineNotCanonical },
        FileFault::Order { number: 7, why: SECRET },
        FileFault::StrangePhoto,
        FileFault::NoPicture,
        FileFault::Changed,
    ]
}

fn of_pictures() -> Vec<PictureFault> {
    use OtherKind as Kind;
    let mut all = vec![
        PictureFault::Empty,
        PictureFault::TooLong { limit: 8 << 20 },
        PictureFault::TooManyPixels { width: 9, height: 9, pixels: 8_000_000, side: 8 },
        PictureFault::Heic,
        PictureFault::NotAPicture,
        PictureFault::Unusual { kind: "PNG", what: SECRET },
        PictureFault::CutShort,
        PictureFault::NothingThere,
        PictureFault::Damaged { what: SECRET },
    ];
    let kinds = [Kind::Avif, Kind::Film, Kind::WebP, Kind::Gif, Kind::Tiff, Kind::Bmp, Kind::Pdf];
    all.extend(kinds.map(|found| PictureFault::OtherKind { found }));
    all
}

fn of_records() -> Vec<FactFault> {
    let id = an_id();
    vec![
        FactFault::TooLong { field: SECRET.into(), bytes: 9, limit: 8 },
        FactFault::TooDeep { limit: 8 },
        FactFault::NotJson,
        FactFault::NumberInexact { number: "9007199254740993".into() },
        FactFault::FieldName { limit: 8 },
        FactFault::IdVersion { id: id.uuid() },
        FactFault::ReplacesLater { id, later: id },
        FactFault::ForgottenForget,
        FactFault::Line { reason: SECRET, column: 7 },
        FactFault::LineNotCanonical,
        FactFault::ExtraTooLong { bytes: 9, limit: 8 },
    ]
}

fn of_wiring() -> Vec<CoaxError> {
    vec![
        CoaxError::BadFrequency { why: SECRET.into() },
        CoaxError::BadFigure { what: SECRET, value: 7.0, unit: SECRET, must: SECRET },
        CoaxError::BadCount { what: SECRET, given: 9, must: SECRET },
        CoaxError::NoSuchPart { part: 9, parts: 8 },
        CoaxError::NoSuchPort { part: 9, port: 9, ports: 8 },
        CoaxError::PortUsedTwice { part: 9, port: 9 },
        CoaxError::PortLeftUndefined { part: 9, port: 9 },
        CoaxError::Loop { part: 9 },
        CoaxError::NotConnected { part: 9, root: 8 },
        CoaxError::NoOutlet,
        CoaxError::NoSuchOutlet { outlet: 9, outlets: 8 },
        CoaxError::BadReflection { part: 9, port: 9 },
        CoaxError::Resonance { part: 9, megahertz: 1150.0 },
        CoaxError::TooMuchAsked { values: 9, most: 8 },
    ]
}

fn of_links() -> Vec<LinkError> {
    let frequency = Megahertz(1150.0);
    vec![
        LinkError::Grid { place: 9, frequency },
        LinkError::Lengths { frequencies: 9, transfers: 8 },
        LinkError::Transfer { frequency, transfer: -1.0 },
        LinkError::Uncovered { low: frequency, high: frequency, from: frequency, to: frequency },
        LinkError::Draw,
        LinkError::UnknownVersion { text: SECRET.into() },
        LinkError::OffGrid { frequency, low: frequency, high: frequency },
    ]
}

fn of_measurements() -> Vec<TouchstoneError> {
    let text = || "quux".to_owned();
    vec![
        TouchstoneError::TooLarge { bytes: 9, most: 8 },
        TouchstoneError::TooManyValues { most: 8 },
        TouchstoneError::TooManyPorts { ports: 9, most: 8 },
        TouchstoneError::PortsUnclear,
        TouchstoneError::NoData,
        TouchstoneError::BadOption { line: 7, word: text() },
        TouchstoneError::NotScattering { line: 7, kind: text() },
        TouchstoneError::BadKeyword { line: 7, keyword: text() },
        TouchstoneError::KeywordMissing { keyword: "quux" },
        TouchstoneError::BadNumber { line: 7, text: text() },
        TouchstoneError::CutShort { line: 7, given: 9, needed: 8, ports: 3 },
        TouchstoneError::NotRising { line: 7, megahertz: 1150.0 },
        TouchstoneError::WrongCount { announced: 9, given: 8 },
        TouchstoneError::BadReference { ports: 3 },
        TouchstoneError::NotConvertible { megahertz: 1150.0 },
        TouchstoneError::Part(CoaxError::NoOutlet),
    ]
}

/// What is said of every kind of every error.
fn every_phrase() -> Vec<Phrase> {
    let mut all: Vec<_> = of_facts().iter().map(InWords::phrase).collect();
    all.extend([AdviceError::Stopped, AdviceError::Inner(SECRET)].iter().map(InWords::phrase));
    all.extend(of_wiring().into_iter().map(|error| AdviceError::from(error).phrase()));
    all.extend(of_links().into_iter().map(|error| AdviceError::from(error).phrase()));
    all.extend(of_measurements().iter().map(InWords::phrase));
    all.extend(of_system().map(|fault| system(fault, &file())));
    all
}

#[test]
fn every_kind_has_its_message_and_every_message_its_kind() {
    let language = Language::english(Figures::default());
    let said: BTreeSet<String> = every_phrase().into_iter().map(|phrase| phrase.id).collect();
    let none: Vec<_> = said.iter().filter(|id| !language.knows(id)).collect();
    assert!(none.is_empty(), "no message for {none:?}");
    let ids = WORDS.lines().filter_map(|line| line.split_once(" =")).map(|(id, _)| id.to_owned());
    // What a picture is instead is said within another message.
    let unsaid: Vec<_> = ids.filter(|id| !said.contains(id) && !id.starts_with("error-kind-")).collect();
    assert!(unsaid.is_empty(), "nothing says {unsaid:?}");
}

#[test]
fn no_message_lacks_what_it_speaks_of_or_tells_what_is_for_logs() {
    // Every letter of a message becomes a dash, so that what is left is what it speaks of.
    let dashes = |text: &str| -> Cow<'static, str> {
        text.chars().map(|sign| if sign.is_alphabetic() { '-' } else { sign }).collect()
    };
    let english = Language::english(Figures::default());
    let other = Language::english(Figures::default()).changed_by(dashes);
    for phrase in every_phrase() {
        for said in [english.say(&phrase), other.say(&phrase)] {
            for never in ["{", "}", "os error", "rusqlite", "::", "/srv", "walls", SECRET] {
                assert!(!said.contains(never), "\"{never}\" in {said}");
            }
        }
        let left = other.say(&phrase);
        let of_messages = ["Mill", "legwork", "lwk", "html", "quux", "PNG", "MHz"];
        let left = of_messages.iter().fold(left, |left, known| left.replace(known, ""));
        assert!(!left.contains(char::is_alphabetic), "{}: {left}", phrase.id);
    }
}

#[test]
fn a_survey_and_a_file_are_called_by_their_names() {
    let english = Language::english(Figures::default());
    let busy = FactsError::Busy { folder: folder() };
    assert!(english.say(&busy.phrase()).starts_with("“Mill” is in use by another program."));
    let there = FactsError::FileThere { file: file() };
    assert!(english.say(&there.phrase()).starts_with("A file “Mill.lwk” is there already"));
}
