//! Photos in a row, without a word about what they show: that comes later.

use phrase::{Arg, Phrase};

use super::{assign, builder, go};
use crate::place::{FieldPlace, Key, Move};
use crate::screen::{Ability, PressWeight, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

/// The most photos shown while more are taken; the newest.
const SHOWN: usize = 12;

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let mut builder = builder(snapshot, &Phrase::new("free-burst"));
    builder.words(WordsRole::Lead, &Phrase::new("free-burst-lead"));
    let waiting = assign::waiting(snapshot);
    let first = waiting.len().saturating_sub(SHOWN);
    let numbers = assign::numbers(snapshot);
    let shown = waiting
        .iter()
        .skip(first)
        .map(|photo| builder.photo(photo.id, &assign::photo_name(snapshot, &numbers, photo), None));
    let photos = shown.collect();
    builder.able(Ability::Torch);
    builder.photo_slot(&Key::PhotoSlot, &Phrase::new("free-burst-photo"), photos, true);
    let count = Phrase::new("free-unassigned").with("count", Arg::Count(waiting.len() as u64));
    builder.words(WordsRole::Plain, &count);
    builder.press(&Key::Assign, &Phrase::new("free-assign"), PressWeight::Main);
    builder
}

pub(crate) fn pressed(key: &Key) -> Move {
    if *key == Key::Assign { go(FieldPlace::Assign) } else { Move::Stay }
}
