//! Screens and what their deeds do, one file each.
//!
//! To add a screen: a variant of [`Place`], a file here with `show` and `take`, its line in both functions below, and
//! its words in `words/en`.

mod aside;
mod ask;
mod errand;
mod field;
mod mend;
mod more;
mod new_survey;
mod one_survey;
mod order;
mod other_name;
mod overview;
mod paging;
mod put_off;
mod result;
mod sent;
mod share;
mod stage;
mod surveys;
mod this_device;

use facts::fact::SubjectId;
use house::record::PhotoRole;
use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::guide::{Guide, OpenSurvey};
use crate::journey::journey;
use crate::place::{Move, Outside, Place};
use crate::scene::Scene;
use crate::screen::{Ability, Block, HowFar, PhotoShown, PhotoSlotBlock, PressWeight, Screen};
use crate::sketch::Sketch;

pub(crate) use errand::{ERRAND_STOP, show as show_errand};
pub(crate) use field::{FieldPlace, Seen, way_on};
pub(crate) use result::ResultPlace;
pub(crate) use share::{Looked, SharePlace};

/// Rows that lead to screens: key, name, and what stands beside it.
type Doors = Vec<(&'static str, Phrase, Option<Phrase>)>;

/// Draws a screen within a survey.
pub(crate) fn show(open: &OpenSurvey, scene: &Scene<'_>, place: &Place) -> Screen {
    let mut screen = match place {
        Place::Overview => overview::show(scene),
        Place::More => more::show(scene),
        Place::Ask(question) => ask::show(scene, question),
        Place::Stage(stage) => stage::show(scene, *stage),
        Place::PutOff => put_off::show(scene),
        Place::Result(place) => result::show(open, scene, place),
        Place::Field(place) => field::show(open, scene, place),
        Place::Share(place) => share::show(open, scene, place),
    };
    screen.trail = trail(scene, place);
    screen
}

/// Does what was done on a screen within a survey.
pub(crate) fn take(guide: &mut Guide, place: &Place, deed: &Deed) -> Result<Move> {
    match place {
        Place::Overview => Ok(overview::take(deed)),
        Place::More => Ok(more::take(deed)),
        Place::Ask(question) => ask::take(guide, question, deed),
        Place::Stage(stage) => stage::take(guide, *stage, deed),
        Place::PutOff => put_off::take(guide, deed),
        Place::Result(place) => result::take(guide, place, deed),
        Place::Field(place) => field::take(guide, place, deed),
        Place::Share(place) => share::take(guide, place, deed),
    }
}

/// Draws a screen outside any survey.
pub(crate) fn show_outside(guide: &Guide, outside: &Outside) -> Screen {
    match outside {
        Outside::Surveys => surveys::show(guide),
        Outside::NewSurvey => new_survey::show(guide),
        Outside::Order => order::show(guide),
        Outside::Aside => aside::show(guide),
        Outside::Survey(folder) => one_survey::show(guide, folder),
        Outside::Rename(folder) => other_name::show_rename(guide, folder),
        Outside::Copy(folder) => other_name::show_copy(guide, folder),
        Outside::Mend { .. } => mend::show(guide),
        Outside::Sent => sent::show(guide),
        Outside::Device => this_device::show(guide),
    }
}

/// Does what was done on a screen outside any survey.
pub(crate) fn take_outside(guide: &mut Guide, outside: &Outside, deed: &Deed) -> Result<Move> {
    match outside {
        Outside::Surveys => surveys::take(guide, deed),
        Outside::NewSurvey => new_survey::take(guide, deed),
        Outside::Order => order::take(guide, deed),
        Outside::Aside => aside::take(guide, deed),
        Outside::Survey(folder) => one_survey::take(guide, folder, deed),
        Outside::Rename(folder) => other_name::take_rename(guide, folder, deed),
        Outside::Copy(folder) => other_name::take_copy(guide, folder, deed),
        Outside::Mend { folder, found_damaged } => Ok(mend::take(guide, folder, *found_damaged, deed)),
        Outside::Sent => sent::take(guide, deed),
        Outside::Device => this_device::take(guide, deed),
    }
}

/// The presses that stand together in the same order on every screen: first the way on, last what leads elsewhere.
pub(crate) fn in_order(screen: &mut Screen) {
    let order = |block: &Block| match block {
        Block::Press(press) => match press.weight {
            PressWeight::Main => Some(0),
            PressWeight::Other => Some(1),
            PressWeight::Quiet => Some(2),
        },
        Block::Confirm(_) => Some(1),
        _ => None,
    };
    for together in screen.blocks.chunk_by_mut(|one, two| order(one).is_some() == order(two).is_some()) {
        together.sort_by_key(order);
    }
}

/// Where we are: the survey's name, and the stage of a question.
fn trail(scene: &Scene<'_>, place: &Place) -> Vec<String> {
    let name = scene.survey.name.clone().filter(|name| !name.trim().is_empty());
    let mut trail = vec![name.unwrap_or_else(|| scene.language.say(&Phrase::new("survey-untitled")))];
    if let Place::Ask(question) = place {
        trail.push(scene.language.say(&question.stage().phrase()));
    }
    trail
}

/// How many questions of this house are answered.
pub(crate) fn how_far(scene: &Scene<'_>) -> HowFar {
    let legs = journey(scene);
    let done = u32::try_from(legs.iter().filter(|leg| leg.answered).count()).unwrap_or(u32::MAX);
    let of = u32::try_from(legs.len()).unwrap_or(u32::MAX);
    let count = |number: u32| phrase::Arg::Count(u64::from(number));
    let told = scene.survey.asked.values().filter(|answer| answer.as_str() == Some("unsure")).count();
    let unsure = u32::try_from(told).unwrap_or(u32::MAX).min(done);
    let phrase =
        Phrase::new("how-far").with("done", count(done)).with("of", count(of)).with("unsure", count(unsure));
    HowFar { done, of, words: scene.language.say(&phrase) }
}

/// A place for photos of a part, with those that are there.
pub(crate) fn photo_slot(
    scene: &Scene<'_>,
    sketch: &mut Sketch<'_>,
    key: &str,
    part: SubjectId,
    role: PhotoRole,
) {
    // A photo of nothing in particular may show anything.
    let fits = |photo: &&house::record::Photo| photo.role.is_none_or(|of| of == role);
    let photos = scene.survey.photos_of(Some(part)).filter(fits).take(20).map(|photo| {
        let name = match photo.role {
            Some(PhotoRole::Before) => "photo-before",
            Some(PhotoRole::After) => "photo-after",
            Some(PhotoRole::Label) => "photo-label",
            Some(PhotoRole::Place) => "photo-place",
            None => "photo-of-part",
        };
        PhotoShown { photo: photo.id.to_string(), name: sketch.say(&Phrase::new(name)), key: None }
    });
    let photos: Vec<_> = photos.collect();
    let name = match role {
        PhotoRole::Before => "take-photo-before",
        PhotoRole::After => "take-photo-after",
        PhotoRole::Label => "take-photo-label",
        PhotoRole::Place => "take-photo-place",
    };
    let name = sketch.say(&Phrase::new(name));
    sketch.able(Ability::Camera);
    sketch.able(Ability::Torch);
    sketch.block(Block::PhotoSlot(PhotoSlotBlock { key: key.into(), name, photos, burst: false }));
}
