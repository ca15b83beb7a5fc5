//! Photos in a row, without a word about what they show: that comes later.

use phrase::{Arg, Phrase};

use super::{assign, go, sketch};
use crate::place::{FieldPlace, Key, Move};
use crate::screen::{Ability, PressWeight, WordsRole};
use crate::session::Scene;
use crate::view::Sketch;

/// The most photos shown while more are taken; the newest.
const SHOWN: usize = 12;

pub(crate) fn show<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let mut sketch = sketch(scene, &Phrase::new("free-burst"));
    sketch.words(WordsRole::Lead, &Phrase::new("free-burst-lead"));
    let waiting = assign::waiting(scene);
    let first = waiting.len().saturating_sub(SHOWN);
    let numbers = assign::numbers(scene);
    let shown = waiting
        .iter()
        .skip(first)
        .map(|photo| sketch.photo(photo.id, &assign::photo_name(scene, &numbers, photo), None));
    let photos = shown.collect();
    sketch.able(Ability::Torch);
    sketch.photo_slot(&Key::PhotoSlot, &Phrase::new("free-burst-photo"), photos, true);
    let count = Phrase::new("free-unassigned").with("count", Arg::Count(waiting.len() as u64));
    sketch.words(WordsRole::Plain, &count);
    sketch.press(&Key::Assign, &Phrase::new("free-assign"), PressWeight::Main);
    sketch
}

pub(crate) fn pressed(key: &Key) -> Move {
    if *key == Key::Assign { go(FieldPlace::Assign) } else { Move::Stay }
}
