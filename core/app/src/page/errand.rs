//! While a file is read or written, which takes a while, and when that is over.

use crate::error::GuideError;
use phrase::Phrase;

use crate::errand::Errand;
use crate::guide::Guide;
use crate::place::Place;
use crate::screen::{Block, HowFarBlock, PressBlock, PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

/// The key that stops it.
pub(crate) const ERRAND_STOP: &str = "errand-stop";

pub(crate) fn show(guide: &Guide, errand: &Errand) -> Screen {
    let doing = errand.doing.phrase();
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "errand", &doing);
    match errand.outcome() {
        None => {
            let stop = PressBlock {
                key: ERRAND_STOP.into(),
                words: sketch.say(&Phrase::new("errand-stop")),
                weight: PressWeight::Other,
            };
            let (name, thousandths) = (sketch.say(&doing), errand.work().progress());
            sketch.block(Block::HowFar(HowFarBlock { name, thousandths, stop: Some(stop) }));
            let says = if errand.work().is_stopped() {
                Phrase::new("errand-stopping")
            } else {
                doing.attribute("stop")
            };
            sketch.words(WordsRole::Why, &says);
        }
        Some(outcome) => {
            let id = match outcome {
                Ok(_) => "errand-over",
                Err(GuideError::Stopped) => "errand-is-stopped",
                Err(_) => "errand-failed",
            };
            sketch.words(WordsRole::Lead, &Phrase::new(id));
            sketch.press("errand-on", &Phrase::new("errand-on"), PressWeight::Main);
        }
    }
    let mut screen = sketch.screen;
    // Outside any survey there is none.
    screen.trail = guide.with_scene(|scene| super::trail(scene, &Place::Overview)).unwrap_or_default();
    screen.back = true;
    screen
}
