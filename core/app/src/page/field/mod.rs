//! Field work without being led: parts, photos in a row, readings; any stage, any order.
//!
//! A screen here is a file with `show` and `pressed`. What is typed or chosen is kept by [`take`]; the last act of this
//! device can be taken back from every one of them.

mod add;
mod assign;
mod burst;
mod card;
mod edit;
mod finder;
mod here;
mod last;
mod meter;
mod part;
mod photo;
mod questions;
mod reading;
mod room;
mod run;
mod seen;
mod service;
mod service_edits;
mod undo;

use facts::fact::SubjectId;
use house::record::PhotoRole;
use phrase::{Arg, Phrase};
use serde::{Deserialize, Serialize};

use crate::ask::{Answer, Problem, Told};
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::{Guide, OpenSurvey};
use crate::place::{Move, Place};
use crate::scene::Scene;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) use last::same_as_last;
pub(crate) use seen::Seen;
pub(super) use seen::{offer_labels, take_label};

/// A screen of this folder.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum FieldPlace {
    /// All parts.
    Parts,
    /// One part.
    Part(SubjectId),
    /// What a part is called and where it is.
    Edit(SubjectId),
    /// A new part: behind another, or loose.
    Add(Option<SubjectId>),
    /// All cables.
    Runs,
    /// One cable.
    Run(SubjectId),
    /// All rooms.
    Rooms,
    /// One room.
    Room(SubjectId),
    /// What else uses the coax.
    Services,
    /// One service.
    Service(SubjectId),
    /// Photos in a row.
    Burst,
    /// Photos that are still to be said what they show.
    Assign,
    /// One photo.
    Photo(SubjectId),
    /// Where to measure.
    MeterAt,
    /// Readings of a meter at a part.
    Meter(SubjectId),
    /// What one stands in front of.
    Here,
    /// The questions of the part that one stands in front of, one after the other.
    Stand(SubjectId),
}

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(super) fn doors(scene: &Scene<'_>) -> Vec<(&'static str, Phrase, Option<Phrase>)> {
    let survey = scene.survey;
    let count = |number: usize| Phrase::new("free-count").with("count", Arg::Count(number as u64));
    let door = |key: &'static str, says: Option<Phrase>| (key, Phrase::new(key), says);
    let unassigned = survey.photos_of(None).count();
    vec![
        door("free-here", None),
        door("free-burst", None),
        door(
            "free-assign",
            Some(Phrase::new("free-unassigned").with("count", Arg::Count(unassigned as u64))),
        ),
        door("free-parts", Some(count(survey.parts.len()))),
        door("free-runs", Some(count(survey.runs.len()))),
        door("free-rooms", Some(count(survey.rooms.len()))),
        door("free-services", Some(count(survey.services.len()))),
        door("free-meter", Some(count(survey.readings.len()))),
    ]
}

/// Where such a row leads.
pub(super) fn door(key: &str) -> Option<Place> {
    let place = match key {
        "free-here" => FieldPlace::Here,
        "free-burst" => FieldPlace::Burst,
        "free-assign" => FieldPlace::Assign,
        "free-parts" => FieldPlace::Parts,
        "free-runs" => FieldPlace::Runs,
        "free-rooms" => FieldPlace::Rooms,
        "free-services" => FieldPlace::Services,
        "free-meter" => FieldPlace::MeterAt,
        _ => return None,
    };
    Some(Place::Field(place))
}

pub(super) fn show(_open: &OpenSurvey, scene: &Scene<'_>, place: &FieldPlace) -> Screen {
    draw(scene, place)
}

fn draw(scene: &Scene<'_>, place: &FieldPlace) -> Screen {
    let mut sketch = match place {
        FieldPlace::Parts => part::show_all(scene),
        FieldPlace::Part(part) => part::show(scene, *part),
        FieldPlace::Edit(part) => edit::show(scene, *part),
        FieldPlace::Add(behind) => add::show(scene, *behind),
        FieldPlace::Runs => run::show_all(scene),
        FieldPlace::Run(run) => run::show(scene, *run),
        FieldPlace::Rooms => room::show_all(scene),
        FieldPlace::Room(room) => room::show(scene, *room),
        FieldPlace::Services => service::show_all(scene),
        FieldPlace::Service(service) => service::show(scene, *service),
        FieldPlace::Burst => burst::show(scene),
        FieldPlace::Assign => assign::show(scene),
        FieldPlace::Photo(photo) => photo::show(scene, *photo),
        FieldPlace::MeterAt => meter::show_places(scene),
        FieldPlace::Meter(part) => meter::show(scene, *part),
        FieldPlace::Here => here::show(scene),
        FieldPlace::Stand(part) => here::show_stand(scene, *part),
    };
    undo::offer(scene, &mut sketch);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take(guide: &mut Guide, place: &FieldPlace, deed: &Deed) -> Result<Move> {
    // What the screen does not offer changes nothing.
    let key = deed.key().unwrap_or_default();
    if !guide.with_scene(|scene| draw(scene, place).keys().contains(&key))? {
        return Ok(Move::Stay);
    }
    if let (Deed::Press { key }, FieldPlace::Part(about) | FieldPlace::Run(about)) = (deed, place)
        && !matches!(key.as_str(), "add-note" | "undo")
    {
        part::keep_note(guide, *about)?;
    }
    match deed {
        Deed::Press { key } => match key.as_str() {
            "overview" => Ok(Move::Go(Place::Overview)),
            "undo" => undo::take(guide),
            "more" | "first" => finder::turn(guide, key),
            key => pressed(guide, place, key),
        },
        Deed::Pick { .. } | Deed::Measure { .. } => {
            guide.open_survey()?.memory.pending.keep(deed);
            Ok(Move::Stay)
        }
        Deed::Write { key, .. } => {
            let pending = &mut guide.open_survey()?.memory.pending;
            pending.keep(deed);
            if key == "find" {
                // What is looked for stands on the first page.
                pending.keep(&Deed::Write { key: "page".into(), words: String::new() });
            }
            Ok(Move::Stay)
        }
        Deed::Photo { key, file } if key == "photo" => photographed(guide, place, file),
        Deed::Photo { .. } | Deed::File { .. } | Deed::Back => Ok(Move::Stay),
    }
}

fn pressed(guide: &mut Guide, place: &FieldPlace, key: &str) -> Result<Move> {
    match place {
        FieldPlace::Parts => Ok(part::pressed_all(key)),
        FieldPlace::Part(part) => part::pressed(guide, *part, key),
        FieldPlace::Edit(part) => edit::pressed(guide, *part, key),
        FieldPlace::Add(behind) => add::pressed(guide, *behind, key),
        FieldPlace::Runs => run::pressed_all(guide, key),
        FieldPlace::Run(run) => run::pressed(guide, *run, key),
        FieldPlace::Rooms => room::pressed_all(guide, key),
        FieldPlace::Room(room) => room::pressed(guide, *room, key),
        FieldPlace::Services => service::pressed_all(guide, key),
        FieldPlace::Service(service) => service::pressed(guide, *service, key),
        FieldPlace::Burst => Ok(burst::pressed(key)),
        FieldPlace::Assign => assign::pressed(guide, key),
        FieldPlace::Photo(photo) => photo::pressed(guide, *photo, key),
        FieldPlace::MeterAt => Ok(meter::pressed_place(key)),
        FieldPlace::Meter(part) => meter::pressed(guide, *part, key),
        FieldPlace::Here => here::pressed(guide, key),
        FieldPlace::Stand(part) => here::pressed_stand(guide, *part, key),
    }
}

/// Keeps a photo that was taken on one of these screens.
fn photographed(guide: &mut Guide, place: &FieldPlace, file: &str) -> Result<Move> {
    let (of, role) = match place {
        FieldPlace::Burst | FieldPlace::Assign => (None, None),
        FieldPlace::Part(part) => {
            let prints = |scene: &Scene<'_>| scene.survey.parts.get(part).is_some_and(questions::is_printed);
            let role = if guide.with_scene(prints)? { PhotoRole::Label } else { PhotoRole::Place };
            (Some(*part), Some(role))
        }
        FieldPlace::Run(run) => (Some(*run), Some(PhotoRole::Place)),
        _ => return Ok(Move::Stay),
    };
    guide.open_survey()?.add_photo(file, of, role)?;
    Ok(Move::Stay)
}

/// After a question: who asked it from one of these screens comes back to it, or to the next question about the part
/// in front of them.
pub(crate) fn way_on(scene: &Scene<'_>) -> Option<Vec<Place>> {
    let mut way = scene.memory.way.clone();
    let before = way.len();
    while matches!(way.last(), Some(Place::Ask(_))) {
        way.pop();
    }
    let asked = way.len() < before;
    match way.last()? {
        Place::Field(FieldPlace::Stand(part)) => {
            let part = *part;
            if let Some(question) = questions::next(scene, part) {
                way.push(Place::Ask(question));
            } else {
                way.pop();
                way.push(Place::Field(FieldPlace::Part(part)));
            }
            Some(way)
        }
        Place::Field(_) if asked => Some(way),
        _ => None,
    }
}

/// Writes an answer as one act, or says what is wrong with it; returns whether it was written.
fn write(guide: &mut Guide, told: Told<Answer>) -> Result<bool> {
    match told {
        Ok(answer) => {
            guide.open_survey()?.write(&answer.edits)?;
            Ok(true)
        }
        Err(Problem::Phrase(problem)) => {
            guide.tell(problem);
            Ok(false)
        }
        Err(Problem::Fact(fault)) => Err(fault.into()),
    }
}

/// Forgets what the screen was given: it has become an answer.
fn clear(guide: &mut Guide) -> Result<()> {
    guide.open_survey()?.memory.pending = crate::given::Pending::default();
    Ok(())
}

fn go(place: FieldPlace) -> Move {
    Move::Go(Place::Field(place))
}

/// An empty screen of this folder. Its name is that of its title's message.
fn sketch<'a>(scene: &Scene<'a>, title: &Phrase) -> Sketch<'a> {
    let name = title.id.split('.').next().unwrap_or_default().to_owned();
    Sketch::new(scene.language, scene.pending(), &name, title)
}

/// A screen about a thing that is not there any more.
fn gone<'a>(scene: &Scene<'a>, id: &str) -> Sketch<'a> {
    let mut sketch = sketch(scene, &Phrase::new(format!("{id}.gone")));
    sketch.words(WordsRole::Problem, &Phrase::new("free-gone"));
    sketch
}

/// The words of an optional text.
fn text(words: &str) -> Phrase {
    Phrase::new("text").text("text", words)
}
