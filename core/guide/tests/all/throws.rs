//! Deeds by chance: of a screen's own keys, and junk.

use guide::screen::{Block, ChoiceBlock};
use guide::{Deed, Screen};
use proptest::prelude::*;

/// What chance gives for one deed.
#[derive(Debug, Clone)]
pub struct Throw {
    /// Which of the screen's keys, if any.
    pub which: usize,
    /// Which options, which kind of junk.
    pub how: u8,
    /// What is typed.
    pub typed: String,
}

/// Texts without a plain letter: so what is a user's own is never taken for a message that was forgotten.
pub fn throw() -> impl Strategy<Value = Throw> {
    let typed = prop_oneof![
        4 => "[0-9]{1,4}",
        2 => "[1-9][0-9]?[.,][0-9]{1,2}",
        2 => "[ñÖéж漢]{1,8}",
        1 => Just(String::new()),
        1 => Just("5-1000 7".to_owned()),
        1 => "[0-9ñÖéж漢 ,;.'\"\\-\\n\u{202e}]{0,40}",
        1 => Just("Ö".repeat(5000)),
    ];
    (any::<u16>(), any::<u8>(), typed).prop_map(|(which, how, typed)| Throw {
        which: which.into(),
        how,
        typed,
    })
}

impl Throw {
    /// The deed that it comes to on a screen. Every sixteenth is junk, every twentieth goes back.
    pub fn on(&self, screen: &Screen) -> Deed {
        if self.how.is_multiple_of(20) {
            return Deed::Back;
        }
        if self.how.is_multiple_of(16) {
            return self.junk();
        }
        let deeds: Vec<Deed> = screen.blocks.iter().flat_map(|block| self.of(block)).collect();
        match deeds.len() {
            0 => Deed::Back,
            many => deeds.into_iter().nth(self.which % many).unwrap(),
        }
    }

    /// What may be done with one block; what leads on comes twice, so that walks come far.
    fn of(&self, block: &Block) -> Vec<Deed> {
        let press = |key: &str| Deed::Press { key: key.to_owned() };
        match block {
            Block::Choice(choice) => vec![self.pick(choice), self.pick(choice)],
            Block::Writing(writing) => {
                vec![Deed::Write { key: writing.key.clone(), words: self.typed.clone() }]
            }
            Block::Number(number) => {
                let units = &number.units;
                let unit = units.get(usize::from(self.how) % units.len().max(1));
                let unit = unit.map_or_else(String::new, |unit| unit.key.clone());
                vec![Deed::Measure { key: number.key.clone(), typed: self.typed.clone(), unit }]
            }
            Block::PhotoSlot(slot) => {
                let print = |key: &String| Deed::Print { key: key.clone(), words: self.typed.clone() };
                let photo = Deed::Photo { key: slot.key.clone(), file: self.file().to_owned() };
                std::iter::once(photo).chain(slot.print_key.as_ref().map(print)).collect()
            }
            other => other.keys().into_iter().flat_map(|key| [press(key), press(key)]).collect(),
        }
    }

    /// A picture that is taken, another that is not there, and a file that is no picture.
    fn file(&self) -> &'static str {
        match self.how % 4 {
            0 => "/nowhere/picture.jpg",
            1 => concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml"),
            _ => concat!(env!("CARGO_MANIFEST_DIR"), "/../facts/tests/pictures/grey.jpg"),
        }
    }

    fn pick(&self, choice: &ChoiceBlock) -> Deed {
        let options = &choice.options;
        let key = |place: usize| options.get(place % options.len().max(1)).map(|option| option.key.clone());
        let first = key(usize::from(self.how));
        let second = key(self.which).filter(|_| choice.several);
        Deed::Pick { key: choice.key.clone(), picked: first.into_iter().chain(second).collect() }
    }

    /// A deed that the screen does not offer.
    fn junk(&self) -> Deed {
        let key = match self.which % 7 {
            0 => "next",
            1 => "ask:99999999999999999999",
            2 => "open:../..",
            3 => "part:not-an-id",
            4 => "fix:",
            5 => "unsure",
            _ => "\u{0}",
        };
        let key = key.to_owned();
        match self.which % 5 {
            0 => Deed::Press { key },
            1 => Deed::Pick { key, picked: vec!["part:nothing".into(), self.typed.clone()] },
            2 => Deed::Write { key, words: self.typed.clone() },
            3 => Deed::Measure { key, typed: self.typed.clone(), unit: "furlong".into() },
            _ => Deed::File { key, file: "/nowhere".into() },
        }
    }
}
