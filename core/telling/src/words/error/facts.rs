//! What goes wrong with the facts of a survey, where they are kept, and the files in which they travel.

use facts::error::{FactsError, NotASurvey, SystemFault};
use phrase::Phrase;

use super::{InWords, count, file, file_name, ours, survey_name, system};

impl InWords for FactsError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Inner(_) => ours(),
            Self::Stopped => Phrase::new("error-stopped"),

            Self::DiskFull { folder } => system::phrase_of(SystemFault::Full, survey_name(folder)),
            Self::Busy { folder } => system::phrase_of(SystemFault::Busy, survey_name(folder)),
            Self::Inaccessible { folder, why, reason: _ } => system::phrase_of(*why, survey_name(folder)),
            Self::Database { folder, source: _ } => named("error-database", survey_name(folder)),
            Self::Damaged { folder, report: _ } => named("error-survey-damaged", survey_name(folder)),
            Self::Newer { folder, found: _, known: _ } => named("error-survey-newer", survey_name(folder)),
            Self::AlreadyThere { folder } => named("error-survey-there", survey_name(folder)),
            Self::NotASurvey { folder, why } => match why {
                NotASurvey::AFile => named("error-survey-a-file", file_name(folder)),
                NotASurvey::Name => named("error-survey-name", file_name(folder)),
                NotASurvey::Missing => named("error-survey-missing", survey_name(folder)),
                NotASurvey::NoDatabase => named("error-survey-empty", survey_name(folder)),
                NotASurvey::NotSqlite => named("error-survey-beginning", survey_name(folder)),
                NotASurvey::OtherProgram => named("error-survey-of-others", survey_name(folder)),
            },
            Self::FolderName => Phrase::new("error-folder-name"),
            Self::FolderNameTooLong { found, most } => Phrase::new("error-folder-name-too-long")
                .with("found", count(*found))
                .with("limit", count(*most)),

            Self::Fact(fault) => fault.phrase(),
            Self::DraftTooLong { bytes, limit } => {
                Phrase::new("error-draft-too-long").with("found", count(*bytes)).with("limit", count(*limit))
            }
            Self::TooManyParts { found, most } => too_many("error-too-many-parts", *found, *most),
            Self::TooManyFacts { found, most } => too_many("error-too-many-records", *found, *most),
            Self::TooManyPhotos { most } => Phrase::new("error-too-many-photos").with("most", count(*most)),
            Self::Picture(fault) => fault.phrase(),
            Self::NoSuchPhoto => Phrase::new("error-no-such-photo"),
            Self::PhotoLost => Phrase::new("error-photo-lost"),
            Self::Undo(fault) => fault.phrase(),
            Self::NothingToSettle => Phrase::new("error-nothing-to-settle"),
            Self::CannotPutBack(why) => why.phrase(),

            Self::File { file, fault } => file::phrase_of(fault, &file_name(file)),
            Self::OtherSurvey { file } => Phrase::new("error-other-survey").text("file", file_name(file)),
            Self::Upheaval { file, things, gone, parts, parts_changed } => Phrase::new("error-upheaval")
                .text("file", file_name(file))
                .with("gone", count(*gone))
                .with("things", count(*things))
                .with("changed", count(*parts_changed))
                .with("parts", count(*parts)),
            Self::FileThere { file } => Phrase::new("error-file-there").text("file", file_name(file)),
            Self::OtherEnding { file, ending } => {
                Phrase::new("error-other-ending").text("file", file_name(file)).text("ending", *ending)
            }
            Self::OtherKindThere { file, ending } => {
                Phrase::new("error-other-kind-there").text("file", file_name(file)).text("ending", *ending)
            }
            Self::OtherSurveyInFile => Phrase::new("error-other-survey-than-damaged"),
            Self::DoesNotFit { what: _, most: _ } => Phrase::new("error-does-not-fit"),
            Self::FactDiffers { id: _ } => Phrase::new("error-record-differs"),
            Self::ReplacesUnknown { id: _, missing: _ } => Phrase::new("error-record-before-missing"),
            Self::ReplacesElsewhere { id: _, other: _ } => Phrase::new("error-record-elsewhere"),
            Self::FromTheFuture { id: _ } => Phrase::new("error-record-from-the-future"),
        }
    }
}

fn named(id: &str, name: String) -> Phrase {
    Phrase::new(id).text("name", name)
}

fn too_many(id: &str, found: usize, most: usize) -> Phrase {
    Phrase::new(id).with("found", count(found)).with("most", count(most))
}
