//! A new survey: its name, and where the house is.

use phrase::Phrase;

use crate::deed::Deed;
use crate::device::Working;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show(guide: &Guide) -> Screen {
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "new-survey", &Phrase::new("new-survey"));
    sketch.words(WordsRole::Lead, &Phrase::new("new-survey-lead"));
    sketch.words(WordsRole::Why, &Phrase::new("new-survey-why"));
    sketch.writing("name", &Phrase::new("new-survey-name"), Some(&Phrase::new("new-survey-hint")), false, "");
    sketch.press("make", &Phrase::new("new-survey-make"), PressWeight::Main);
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::Press { key } if key == "make" => {
            let name = guide.pending().written("name").unwrap_or_default().to_owned();
            if name.is_empty() {
                guide.tell(Phrase::new("new-survey-no-name"));
                return Ok(Move::Stay);
            }
            guide.make(&name)?;
            // Whoever works freely sees the whole job first.
            Ok(if guide.device().working() == Working::Freely { Move::Stay } else { Move::Next })
        }
        Deed::Press { key } if key == "out" => Ok(Move::Outside(Outside::Surveys)),
        _ => {
            guide.keep_outside(deed);
            Ok(Move::Stay)
        }
    }
}
