//! Which screen one is on: plain data, known to everything above. A place can be
//! written down and found again after the app's death.

mod choice;
mod field;
mod jacket_figure;
mod key;
mod label_figure;
mod question;
mod result;
mod round;
mod share;
mod stage;

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use facts::fact::SubjectId;
use facts::home::SET_ASIDE;
use serde::{Deserialize, Serialize};

pub(crate) use choice::{Choice, MAY_STAY_OUT, StandsAt, choices, replies};
pub(crate) use field::FieldPlace;
pub(crate) use jacket_figure::{JacketFigure, TakenOfJacket};
pub(crate) use key::Key;
pub(crate) use label_figure::{LabelFigure, TakenFigure};
pub(crate) use question::Question;
pub(crate) use result::{ResultPlace, TestKind};
pub(crate) use round::Round;
pub(crate) use share::SharePlace;
pub(crate) use stage::Stage;

/// A screen of the guide within one survey.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Place {
    /// The whole job: every stage and how far it is.
    Overview,
    /// The rest of it: what is wanted more rarely.
    More,
    /// One question.
    Ask(Question),
    /// Enough is asked: what a round of questions ends with.
    Enough(Round),
    /// The questions of one stage, answered or not.
    Stage(Stage),
    /// What was put off.
    PutOff,
    /// Which part of a photo is read and shown large.
    PhotoPart(SubjectId),
    /// What follows from the survey.
    Result(ResultPlace),
    /// Field work without being led.
    Field(FieldPlace),
    /// With others.
    Share(SharePlace),
}

/// A screen outside any survey.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Outside {
    /// The surveys of this device.
    #[default]
    Surveys,
    /// A new one.
    NewSurvey,
    /// The same list, to put it in order.
    Order,
    /// The surveys that were set aside.
    SetAside,
    /// One survey from outside, by its folder.
    Survey(PathBuf),
    /// Another name for it.
    Rename(PathBuf),
    /// A copy of it.
    Copy(PathBuf),
    /// Mending it.
    Mend {
        /// Its folder.
        folder: PathBuf,
        /// Whether it was already found to be damaged.
        found_damaged: bool,
        /// Whether what is here was found not to be enough, and what can be read can be kept without the rest.
        #[serde(default)]
        has_lost: bool,
    },
    /// A file that somebody sent.
    Sent,
    /// What holds for this device.
    Device,
}

impl Outside {
    /// The screen that back leads to.
    pub(crate) fn up(&self) -> Self {
        match self {
            Self::Surveys | Self::NewSurvey | Self::Order | Self::SetAside | Self::Sent | Self::Device => {
                Self::Surveys
            }
            Self::Survey(folder) if is_aside(folder) => Self::SetAside,
            Self::Survey(_) => Self::Order,
            Self::Rename(folder) | Self::Copy(folder) | Self::Mend { folder, .. } => {
                Self::Survey(folder.clone())
            }
        }
    }

    /// Whether it is the same screen about the same survey, whatever was found out on it.
    pub(crate) fn is_screen(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Mend { folder, .. }, Self::Mend { folder: of_other, .. }) => folder == of_other,
            _ => self == other,
        }
    }

    /// The same screen about a survey whose folder is told in another way; `None` where it cannot be.
    pub(crate) fn with_folder(self, tell: impl FnOnce(&Path) -> Option<PathBuf>) -> Option<Self> {
        Some(match self {
            Self::Survey(folder) => Self::Survey(tell(&folder)?),
            Self::Rename(folder) => Self::Rename(tell(&folder)?),
            Self::Copy(folder) => Self::Copy(tell(&folder)?),
            Self::Mend { folder, found_damaged, has_lost } => {
                Self::Mend { folder: tell(&folder)?, found_damaged, has_lost }
            }
            other => other,
        })
    }
}

/// Whether a survey's folder lies among those that were set aside.
pub(crate) fn is_aside(folder: &Path) -> bool {
    folder.parent().and_then(Path::file_name) == Some(OsStr::new(SET_ASIDE))
}

/// Where a deed leads.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Move {
    /// Nowhere: the same screen, drawn anew.
    Stay,
    /// On to a screen.
    Go(Place),
    /// To a screen in place of this one, so that back leads past it.
    Swap(Place),
    /// One screen back.
    Back,
    /// To the next open question, or what follows when there is none.
    Next,
    /// Out of the survey, to the list.
    Out,
    /// To another screen outside any survey.
    Outside(Outside),
}
