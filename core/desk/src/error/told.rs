//! What a program that called us is told of an error: the exit code, and a name in JSON. What people read stands in `words.rs`.

use std::io;

use advice::AdviceError;
use facts::error::FactsError;
use guide::GuideError;

use super::{DeskError, FAILED, REFUSED, STOPPED};

impl DeskError {
    /// The exit code: [`REFUSED`] where the user gave something that cannot be taken, else [`FAILED`].
    pub fn exit_code(&self) -> u8 {
        match self {
            Self::Stopped | Self::Advice(AdviceError::Stopped) | Self::Facts(FactsError::Stopped) => STOPPED,
            Self::PicturesPartly { why, .. } => why.exit_code(),
            Self::Advice(AdviceError::Inner(_))
            | Self::Facts(
                FactsError::Inaccessible { .. }
                | FactsError::DiskFull { .. }
                | FactsError::Busy { .. }
                | FactsError::Database { .. }
                | FactsError::Inner(_)
                | FactsError::PhotoLost,
            )
            | Self::Guide(_)
            | Self::Page(_)
            | Self::Read { .. }
            | Self::Write { .. }
            | Self::Output(_)
            | Self::NoHome
            | Self::Signals(_)
            | Self::PrintModel { .. }
            | Self::Fault => FAILED,
            // Whatever else a survey says is about what it was given.
            Self::Advice(_)
            | Self::Facts(_)
            | Self::PackedFile { .. }
            | Self::Sheet { .. }
            | Self::SheetTooLong { .. }
            | Self::LabelNotText { .. }
            | Self::LabelTooLong { .. }
            | Self::LabelLong { .. }
            | Self::PhotosMany { .. }
            | Self::CropsOfPhotos { .. }
            | Self::CropNotRead { .. }
            | Self::CropOutside { .. }
            | Self::NoText { .. }
            | Self::NoSuchThing { .. }
            | Self::Ambiguous { .. }
            | Self::NoSuchField { .. }
            | Self::WrongThing { .. }
            | Self::Picture { .. }
            | Self::NoPictures { .. }
            | Self::InList { .. }
            | Self::EmptyList { .. }
            | Self::NotSet { .. }
            | Self::TagTwice { .. }
            | Self::NoTags
            | Self::EmptyWord
            | Self::NotConfirmed(_)
            | Self::NothingDone
            | Self::NotAside { .. }
            | Self::AsideAlready { .. }
            | Self::EmptyNote
            | Self::NoName { .. }
            | Self::Exists { .. } => REFUSED,
        }
    }

    /// Its name in JSON.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Sheet { .. } | Self::SheetTooLong { .. } => "sheet",
            Self::LabelNotText { .. }
            | Self::LabelTooLong { .. }
            | Self::LabelLong { .. }
            | Self::PhotosMany { .. }
            | Self::CropsOfPhotos { .. }
            | Self::CropNotRead { .. } => "label",
            Self::PrintModel { .. } => "print_model",
            Self::Exists { .. }
            | Self::AsideAlready { .. }
            | Self::Facts(FactsError::AlreadyThere { .. } | FactsError::FileThere { .. }) => "exists",
            Self::Facts(FactsError::OtherEnding { .. } | FactsError::OtherKindThere { .. }) => "other_kind",
            Self::Facts(FactsError::NotASurvey { .. }) | Self::PackedFile { .. } => "not_a_survey",
            Self::Facts(FactsError::Busy { .. }) => "busy",
            Self::Facts(FactsError::Damaged { .. }) => "damaged",
            Self::Facts(
                FactsError::File { .. } | FactsError::OtherSurvey { .. } | FactsError::OtherSurveyInFile,
            ) => "survey_file",
            Self::Facts(FactsError::Picture(_) | FactsError::PhotoLost)
            | Self::Picture { .. }
            | Self::CropOutside { .. }
            | Self::NoText { .. }
            | Self::NoPictures { .. } => "picture",
            Self::Advice(AdviceError::Stopped) | Self::Facts(FactsError::Stopped) | Self::Stopped => {
                "stopped"
            }
            Self::PicturesPartly { why, .. } => why.name(),
            Self::InList { .. } | Self::EmptyList { .. } => "list",
            Self::NotSet { .. } => "value",
            Self::NoSuchThing { .. }
            | Self::Ambiguous { .. }
            | Self::NoSuchField { .. }
            | Self::WrongThing { .. }
            | Self::NothingDone
            | Self::NotAside { .. }
            | Self::TagTwice { .. }
            | Self::NoTags
            | Self::EmptyWord
            | Self::EmptyNote
            | Self::NoName { .. } => "thing",
            Self::Facts(FactsError::Upheaval { .. }) | Self::NotConfirmed(_) => "not_confirmed",
            Self::Advice(_) | Self::Facts(_) => "survey",
            Self::Read { .. }
            | Self::Write { .. }
            | Self::Output(_)
            | Self::NoHome
            | Self::Signals(_)
            | Self::Page(_)
            | Self::Guide(GuideError::Trouble(_)) => "file",
            Self::Guide(GuideError::Inner(_)) | Self::Fault => "fault",
        }
    }

    /// Whether it only means that the reader of our output has gone, as `head` does.
    pub fn is_broken_pipe(&self) -> bool {
        matches!(self, Self::Output(error) if error.kind() == io::ErrorKind::BrokenPipe)
    }
}
