//! This device: what its user is called, which unit comes first, how to begin. Everything is kept at once.

use phrase::Phrase;
use telling::words::LengthUnit;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole, WritingKind};
use crate::session::{Session, Working};
use crate::view::{Offer, Sketch};

pub(crate) fn show(session: &Session) -> Screen {
    let mut sketch = Sketch::new(session.language(), session.pending(), &Phrase::new("device"));
    let device = session.device();
    sketch.words(WordsRole::Lead, &Phrase::new("device-lead"));
    sketch.writing(
        "name",
        &Phrase::new("device-name"),
        Some(&Phrase::new("device-name-hint")),
        WritingKind::Name,
        device.name(),
    );
    let unit = match session.language().figures().length_unit {
        LengthUnit::Metres => "metres",
        LengthUnit::Feet => "feet",
    };
    let units = ["metres", "feet"].map(|unit| Offer::new(unit, Phrase::new(format!("device-{unit}"))));
    sketch.choice("unit", &Phrase::new("device-unit"), false, units.into(), &[unit.into()]);
    let working = match device.working() {
        Working::Led => "led",
        Working::Freely => "freely",
    };
    let ways = ["led", "freely"].map(|way| {
        let words = Phrase::new(format!("device-{way}"));
        let about = words.attribute("about");
        Offer::new(way, words).about(about)
    });
    sketch.choice("working", &Phrase::new("device-working"), false, ways.into(), &[working.into()]);
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Main);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::Write { key, words } if key == "name" => {
            session.settle_device(|device| device.set_name(words))?;
            // As it stands, so that a space at the end can be typed.
            session.keep_outside(deed);
        }
        Deed::Pick { key, picked } => {
            let unit = match picked.first().map(String::as_str) {
                Some("metres") => Some(LengthUnit::Metres),
                Some("feet") => Some(LengthUnit::Feet),
                _ => None,
            };
            let working = match picked.first().map(String::as_str) {
                Some("led") => Some(Working::Led),
                Some("freely") => Some(Working::Freely),
                _ => None,
            };
            match (key.as_str(), unit, working) {
                ("unit", Some(unit), _) => session.settle_device(|device| device.set_length_unit(unit))?,
                ("working", _, Some(working)) => {
                    session.settle_device(|device| device.set_working(working))?;
                }
                _ => {}
            }
        }
        Deed::Press { key } if key == "out" => return Ok(Move::Outside(Outside::Surveys)),
        _ => {}
    }
    Ok(Move::Stay)
}
