//! The surveys again, to put them in order: a row leads to what can be done with one.

use facts::home::Home;
use phrase::Phrase;

use super::surveys;
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::Move;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show(guide: &Guide) -> Screen {
    let title = Phrase::new("surveys-order-title");
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "surveys-order", &title);
    sketch.words(WordsRole::Lead, &Phrase::new("surveys-order-lead"));
    let none = Phrase::new("surveys-none");
    surveys::list(guide, &mut sketch, guide.home().list(), "survey", &none);
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    surveys::take_in_list(guide, deed, Home::list)
}
