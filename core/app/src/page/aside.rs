//! The surveys that were set aside.

use facts::home::Home;
use phrase::Phrase;

use super::surveys;
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::Move;
use crate::screen::{PressWeight, Screen};
use crate::sketch::Sketch;

pub(super) fn show(guide: &Guide) -> Screen {
    let title = Phrase::new("surveys-aside");
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "surveys-aside", &title);
    let none = Phrase::new("surveys-aside-none");
    surveys::list(guide, &mut sketch, guide.home().set_aside_list(), "survey", &none);
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    surveys::take_in_list(guide, deed, Home::set_aside_list)
}
