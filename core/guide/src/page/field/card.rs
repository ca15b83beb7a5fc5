//! What is known of a part or a cable, a line each.

use facts::fact::{FactId, SubjectId};
use house::record::{EntryState, Part, PartKind, PhotoRole, Run, Survey, field};
use house::{naming, story};
use phrase::{Arg, Phrase};
use serde::Serialize;

use crate::place::Key;
use crate::question::about::is_printed;
use crate::screen::Ability;
use crate::session::{SurveySnapshot, first_said};
use crate::view::{ScreenBuilder, photo_name};

/// The most photos of one thing that a screen shows.
const PHOTOS: usize = 20;

/// A field's name and value: `what is plugged in: a TV set`.
fn line<T: Serialize>(survey: &Survey, name: &str, value: &T) -> Phrase {
    let value = serde_json::to_value(value).unwrap_or_default();
    Phrase::new("free-line")
        .phrase("field", story::field_name(name))
        .phrase("value", story::value(survey, name, &value))
}

/// What is known of a part.
fn of_part(snapshot: &SurveySnapshot<'_>, part: &Part) -> Vec<Phrase> {
    let survey = snapshot.survey;
    let mut lines = Vec::new();
    lines.extend(part.place.as_ref().map(|place| line(survey, field::WHERE, place)));
    if part.kind == PartKind::Entry {
        lines.push(line(survey, field::ENTRY_KIND, &part.entry_kind));
        if part.entry_state != EntryState::Unknown {
            lines.push(line(survey, field::ENTRY_STATE, &part.entry_state));
        }
    } else {
        let fed = match survey.wiring.feed(part.id) {
            Some(feed) => naming::port(survey, feed.part, feed.port),
            None if survey.wiring.loose().contains_key(&part.id) => Phrase::new("fed-loose"),
            None => Phrase::new("fed-from-nothing"),
        };
        lines.push(Phrase::new("free-fed").phrase("port", fed));
    }
    lines.extend(part.label.as_ref().map(|label| line(survey, field::LABEL, label)));
    let rated = naming::rated(&part.rating);
    if rated.is_empty() && is_printed(part) {
        lines.push(Phrase::new("free-not-rated"));
    } else if !rated.is_empty() {
        let said = rated.into_iter().map(|phrase| Arg::Phrase(Box::new(phrase))).collect();
        lines.push(Phrase::new("free-rated").with("rated", Arg::Several(said)));
    }
    lines.extend(part.measured.as_ref().map(|_| Phrase::new("free-measured")));
    lines.extend(part.plugged.as_ref().map(|plugged| line(survey, field::PLUGGED, plugged)));
    lines.extend(part.adapter.as_ref().map(|adapter| line(survey, field::ADAPTER, adapter)));
    lines.extend(part.sharing.as_ref().map(|sharing| line(survey, field::SHARING, sharing)));
    if part.device_filter {
        lines.push(line(survey, field::DEVICE_FILTER, &true));
    }
    lines
}

/// What is known of a cable.
fn of_run(survey: &Survey, run: &Run) -> Vec<Phrase> {
    let length = run.length.as_ref();
    vec![
        line(survey, field::CABLE, &run.cable),
        length.map_or_else(|| Phrase::new("free-no-length"), |length| line(survey, field::LENGTH, length)),
        line(survey, field::CONNECTOR_NEAR, &run.connector_near),
        line(survey, field::CONNECTOR_FAR, &run.connector_far),
    ]
}

/// The card of a part.
pub(super) fn part(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: &Part) {
    let lines = of_part(snapshot, part).iter().map(|line| builder.say(line)).collect();
    let photos = snapshot.survey.photos_of(Some(part.id));
    let photo = photos.max_by_key(|photo| photo.role == Some(PhotoRole::Label));
    let mut kind = naming::kind(part);
    if let Some(room) = snapshot.survey.room_of(part).filter(|room| !room.name.trim().is_empty()) {
        kind = Phrase::new("part-in-room").phrase("part", kind).text("room", &room.name);
    }
    builder.part(part.tag.as_deref().unwrap_or_default(), &kind, lines, photo.map(|photo| photo.id));
}

/// The card of a cable.
pub(super) fn run(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: &Run) {
    let lines = of_run(snapshot.survey, run).iter().map(|line| builder.say(line)).collect();
    let photo = snapshot.survey.photos_of(Some(run.id)).next();
    let name = naming::run(snapshot.survey, run.id);
    builder.part(run.tag.as_deref().unwrap_or_default(), &name, lines, photo.map(|photo| photo.id));
}

/// When a thing was first written, milliseconds since 1970.
pub(super) fn born_ms(snapshot: &SurveySnapshot<'_>, subject: SubjectId) -> u64 {
    first_said(snapshot.ledger, subject).map_or(0, FactId::ms)
}

/// The photos of a part or cable, newest first, each of which leads on, and a place for one more.
pub(super) fn photos(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    of: SubjectId,
    prints: bool,
) {
    let mut all: Vec<_> = snapshot.survey.photos_of(Some(of)).collect();
    all.sort_by_cached_key(|photo| std::cmp::Reverse(born_ms(snapshot, photo.id)));
    let shown = all.into_iter().take(PHOTOS).map(|photo| {
        builder.photo(photo.id, &photo_name(snapshot.survey, photo), Some(Key::Photo(photo.id)))
    });
    let photos = shown.collect();
    let name = Phrase::new(if prints { "take-photo-label" } else { "take-photo-place" });
    builder.able(Ability::Torch);
    builder.photo_slot(&Key::PhotoSlot, &name, photos, false);
}
