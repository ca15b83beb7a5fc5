//! What follows from the survey: what gets through, what to change, the test, the handover.

use serde::{Deserialize, Serialize};
use survey::words::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::guide::{Guide, OpenSurvey};
use crate::place::{Move, Place};
use crate::scene::Scene;
use crate::screen::Screen;
use crate::sketch::Sketch;

/// A screen of this folder.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum ResultPlace {
    /// The first of them.
    Start,
}

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(super) fn doors(scene: &Scene<'_>) -> Vec<(&'static str, Phrase, Option<Phrase>)> {
    let _ = scene;
    Vec::new()
}

/// Where such a row leads.
pub(super) fn door(key: &str) -> Option<Place> {
    let _ = key;
    None
}

pub(super) fn show(open: &OpenSurvey, scene: &Scene<'_>, place: &ResultPlace) -> Screen {
    let _ = (open, place);
    Sketch::new(scene.language, scene.pending(), "result", &Phrase::new("result")).screen
}

pub(super) fn take(guide: &mut Guide, place: &ResultPlace, deed: &Deed) -> Result<Move> {
    let _ = (guide, place, deed);
    Ok(Move::Stay)
}
