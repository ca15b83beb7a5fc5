//! Everything that something was said about: a row leads to its story.

use facts::fact::{AuthorId, SubjectId};
use house::record::Survey;
use phrase::Phrase;

use super::act::thing_of;
use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let title = Phrase::new("share-things");
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    builder.words(WordsRole::Lead, &Phrase::new("share-things-lead"));
    let teller = StoryTeller::of(snapshot);
    let mut things = things(snapshot.survey, |subject| builder.say(&teller.thing(subject)));
    // Only where somebody said a name is there a story to tell.
    let named = |(subject, _): &(&SubjectId, &AuthorId)| snapshot.ledger.fields(**subject).next().is_some();
    things.extend(teller.authors().iter().filter(named).map(|(subject, _)| *subject));
    let rows: Vec<RowEntry> = things
        .iter()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .map(|subject| {
            let is_author = teller.authors().contains_key(subject);
            let says = is_author.then(|| Phrase::new("share-who-writes"));
            builder.row(Some(Key::Thing(*subject)), &teller.thing(*subject), says.as_ref(), None)
        })
        .collect();
    builder.rows(&Phrase::new("share-things-rows"), rows);
    paging::presses(&mut builder, things.len());
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// The survey and all that is shown of it, kind by kind, in the order of what things are called.
fn things(survey: &Survey, called: impl Fn(SubjectId) -> String) -> Vec<SubjectId> {
    let mut things = vec![survey.id];
    let kinds: [Vec<SubjectId>; 8] = [
        survey.rooms.keys().copied().collect(),
        survey.services.keys().copied().collect(),
        survey.parts.keys().copied().collect(),
        survey.runs.keys().copied().collect(),
        survey.readings.keys().copied().collect(),
        survey.works.keys().copied().collect(),
        survey.notes.keys().copied().collect(),
        survey.photos.keys().copied().collect(),
    ];
    for mut kind in kinds {
        kind.sort_by_cached_key(|subject| in_order(&called(*subject)));
        things.extend(kind);
    }
    things
}

/// A name by which `S2` comes before `S10`.
fn in_order(name: &str) -> (String, u64, String) {
    let digits = |sign: char| sign.is_ascii_digit();
    let (letters, rest) = name.split_at(name.find(digits).unwrap_or(name.len()));
    let (number, rest) = rest.split_at(rest.find(|sign| !digits(sign)).unwrap_or(rest.len()));
    (letters.to_lowercase(), number.parse().unwrap_or(0), rest.to_lowercase())
}

pub(crate) fn take(done: &Done) -> Move {
    thing_of(done).map_or(Move::Stay, |thing| Move::Go(Place::Share(SharePlace::Thing(thing))))
}
