//! This device: what its user is called, which unit comes first, how to begin. What is chosen is kept at once, the
//! name when its screen is left.

use phrase::Phrase;
use telling::words::LengthUnit;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, Move, Outside, choices};
use crate::screen::{PressWeight, Screen, WordsRole, WritingKind};
use crate::session::{Session, Working};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// Which unit of length comes first.
    FirstUnit {
        /// Metres.
        Metres "metres",
        /// Feet.
        Feet "feet",
    }
}

impl FirstUnit {
    fn of_unit(unit: LengthUnit) -> Self {
        match unit {
            LengthUnit::Metres => Self::Metres,
            LengthUnit::Feet => Self::Feet,
        }
    }

    fn unit(self) -> LengthUnit {
        match self {
            Self::Metres => LengthUnit::Metres,
            Self::Feet => LengthUnit::Feet,
        }
    }
}

choices! {
    /// How to begin.
    WayOfWorking {
        /// Led from question to question.
        Led "led",
        /// With the whole job in view.
        Freely "freely",
    }
}

impl WayOfWorking {
    fn of_working(working: Working) -> Self {
        match working {
            Working::Led => Self::Led,
            Working::Freely => Self::Freely,
        }
    }

    fn working(self) -> Working {
        match self {
            Self::Led => Working::Led,
            Self::Freely => Working::Freely,
        }
    }
}

pub(crate) fn show(session: &Session) -> Screen {
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("device"));
    let device = session.device();
    if let Some(damaged) = device.set_aside() {
        builder.words(WordsRole::Problem, &Phrase::new("device-was-damaged").text("file", damaged));
    }
    builder.words(WordsRole::Lead, &Phrase::new("device-lead"));
    builder.writing(
        &Key::Name,
        &Phrase::new("device-name"),
        Some(&Phrase::new("device-name-hint")),
        WritingKind::Name,
        device.name(),
    );
    let units = FirstUnit::ALL
        .iter()
        .map(|unit| Offer::new(unit, Phrase::new(format!("device-{}", unit.word()))))
        .collect();
    let unit = FirstUnit::of_unit(session.language().figures().length_unit);
    builder.choice(&Key::Unit, &Phrase::new("device-unit"), false, units, &[unit]);
    let way = |way: &WayOfWorking| {
        let words = Phrase::new(format!("device-{}", way.word()));
        let about = words.attribute("about");
        Offer::new(way, words).about(about)
    };
    let ways = WayOfWorking::ALL.iter().map(way).collect();
    let working = WayOfWorking::of_working(device.working());
    builder.choice(&Key::Working, &Phrase::new("device-working"), false, ways, &[working]);
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Main);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        // Settled with what is chosen next, or once the screen is left.
        Done::Write(Key::Name, _) => session.keep_outside(done),
        Done::Pick(Key::Unit, picked) => {
            session.settle_name()?;
            if let Some(unit) = picked.first().and_then(|key| FirstUnit::of(key)) {
                session.settle_device(|device| device.set_length_unit(unit.unit()))?;
            }
        }
        Done::Pick(Key::Working, picked) => {
            session.settle_name()?;
            if let Some(way) = picked.first().and_then(|key| WayOfWorking::of(key)) {
                session.settle_device(|device| device.set_working(way.working()))?;
            }
        }
        Done::Press(Key::Out) => return Ok(Move::Outside(Outside::Surveys)),
        _ => {}
    }
    Ok(Move::Stay)
}
