//! With others: files, what two people said, who said what, taking back, forgetting.

mod act;
mod acts;
mod brings;
mod disagreement;
mod disagreements;
mod field_story;
mod forget;
mod looked;
mod pack;
mod removed;
mod removed_thing;
mod take_in;
mod teller;
mod thing_story;
mod things;

use facts::fact::{ActId, SubjectId};
use phrase::{Arg, Phrase};
use serde::{Deserialize, Serialize};

use super::paging;
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::{Guide, OpenSurvey};
use crate::place::{Move, Place};
use crate::scene::Scene;
use crate::screen::Screen;

pub(super) use brings::tell as tell_look;
pub(crate) use looked::Looked;
pub(super) use pack::send as pack;
pub(super) use take_in::look;
pub(super) use teller::day;

/// A screen of this folder.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum SharePlace {
    /// Writing a file for the next person.
    Pack,
    /// Taking in a file that somebody sent.
    TakeIn,
    /// What people said differently.
    Disagreements,
    /// One field that people said differently.
    Disagreement(SubjectId, String),
    /// Who did what, the newest first.
    Acts,
    /// One action.
    Act(ActId),
    /// Everything that something was said about.
    Things,
    /// What was said about one thing.
    Thing(SubjectId),
    /// What was said about one field of it.
    Field(SubjectId, String),
    /// What was removed.
    Removed,
    /// One thing that was removed.
    RemovedThing(SubjectId),
    /// Forgetting a field, or a thing as a whole: that it is for ever.
    Forget(SubjectId, Option<String>),
    /// The same: that it holds for others too.
    ForgetForOthers(SubjectId, Option<String>),
}

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(super) fn doors(scene: &Scene<'_>) -> Vec<(&'static str, Phrase, Option<Phrase>)> {
    let open = scene.ledger.disagreements().len();
    let count = Phrase::new("share-to-settle").with("count", Arg::Count(open as u64));
    let row = |key, id: &str| (key, Phrase::new(id), None);
    vec![
        row("pack", "share-pack"),
        row("take-in", "share-take-in"),
        ("disagreements", Phrase::new("share-disagreements"), Some(count)),
        row("acts", "share-acts"),
        row("things", "share-things"),
        row("removed", "share-removed"),
    ]
}

/// Where such a row leads.
pub(super) fn door(key: &str) -> Option<Place> {
    let place = match key {
        "pack" => SharePlace::Pack,
        "take-in" => SharePlace::TakeIn,
        "disagreements" => SharePlace::Disagreements,
        "acts" => SharePlace::Acts,
        "things" => SharePlace::Things,
        "removed" => SharePlace::Removed,
        _ => return None,
    };
    Some(Place::Share(place))
}

pub(super) fn show(open: &OpenSurvey, scene: &Scene<'_>, place: &SharePlace) -> Screen {
    match place {
        SharePlace::Pack => pack::show(scene),
        SharePlace::TakeIn => take_in::show(open, scene),
        SharePlace::Disagreements => disagreements::show(scene),
        SharePlace::Disagreement(subject, field) => disagreement::show(scene, *subject, field),
        SharePlace::Acts => acts::show(scene),
        SharePlace::Act(act) => act::show(scene, *act),
        SharePlace::Things => things::show(scene),
        SharePlace::Thing(subject) => thing_story::show(scene, *subject),
        SharePlace::Field(subject, field) => field_story::show(scene, *subject, field),
        SharePlace::Removed => removed::show(scene),
        SharePlace::RemovedThing(subject) => removed_thing::show(scene, *subject),
        SharePlace::Forget(subject, field) => forget::show(scene, *subject, field.as_deref()),
        SharePlace::ForgetForOthers(subject, field) => {
            forget::show_for_others(scene, *subject, field.as_deref())
        }
    }
}

pub(super) fn take(guide: &mut Guide, place: &SharePlace, deed: &Deed) -> Result<Move> {
    if let Deed::Press { key } = deed {
        if key == "overview" {
            return Ok(Move::Go(Place::Overview));
        }
        let pending = &mut guide.open_survey()?.memory.pending;
        if let Some(turned) = paging::turned(pending, key) {
            pending.keep(&turned);
            return Ok(Move::Stay);
        }
    }
    match place {
        SharePlace::Pack => pack::take(guide, deed),
        SharePlace::TakeIn => take_in::take(guide, deed),
        SharePlace::Disagreements => disagreements::take(guide, deed),
        SharePlace::Disagreement(subject, field) => disagreement::take(guide, *subject, field, deed),
        SharePlace::Acts => Ok(acts::take(deed)),
        SharePlace::Act(act) => act::take(guide, *act, deed),
        SharePlace::Things => Ok(things::take(deed)),
        SharePlace::Thing(subject) => Ok(thing_story::take(*subject, deed)),
        SharePlace::Field(subject, field) => Ok(field_story::take(*subject, field, deed)),
        SharePlace::Removed => Ok(removed::take(deed)),
        SharePlace::RemovedThing(subject) => removed_thing::take(guide, *subject, deed),
        SharePlace::Forget(subject, field) => Ok(forget::take(*subject, field.as_deref(), deed)),
        SharePlace::ForgetForOthers(subject, field) => {
            forget::take_for_others(guide, *subject, field.as_deref(), deed)
        }
    }
}
