//! Whether a screen offers what was done on it.

use super::{Block, FileAsked, Screen};
use crate::deed::Deed;

impl Screen {
    /// Whether a deed can be done here: a block of this screen has its key, is of its kind, and has what it gives. Any
    /// other is that of an older screen, or a fault of a shell.
    pub fn offers(&self, deed: &Deed) -> bool {
        match deed {
            Deed::Back => self.back,
            _ => self.blocks.iter().any(|block| block.offers(deed)),
        }
    }
}

impl Block {
    fn offers(&self, deed: &Deed) -> bool {
        match (self, deed) {
            (Self::Choice(choice), Deed::Pick { key, picked }) => {
                let is_there = |key: &String| choice.options.iter().any(|option| option.key == *key);
                choice.key == *key && picked.iter().all(is_there) && (choice.several || picked.len() <= 1)
            }
            (Self::Writing(writing), Deed::Write { key, .. }) => writing.key == *key,
            (Self::Number(number), Deed::Measure { key, unit, .. }) => {
                number.key == *key && number.units.iter().any(|option| option.key == *unit)
            }
            (Self::PhotoSlot(slot), Deed::Photo { key, .. }) => slot.key == *key,
            (Self::PhotoSlot(slot), Deed::Press { key }) => {
                slot.photos.iter().any(|photo| photo.key.as_deref() == Some(key))
            }
            (Self::Press(press), Deed::File { key, .. }) => press.key == *key && FileAsked::of(key).is_some(),
            (Self::Choice(_) | Self::Writing(_) | Self::Number(_), _) => false,
            (_, Deed::Press { key }) => self.keys().contains(&key.as_str()),
            _ => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::{ChoiceBlock, ChoiceOption, NumberBlock, PressBlock, PressWeight, UnitOption};

    fn screen() -> Screen {
        let option = |key: &str| ChoiceOption {
            key: key.into(),
            words: String::new(),
            about: String::new(),
            picked: false,
            unsure: false,
        };
        let choice = ChoiceBlock {
            key: "kind".into(),
            name: String::new(),
            several: false,
            options: ["a", "b"].map(option).into(),
        };
        let number = NumberBlock {
            key: "length".into(),
            name: String::new(),
            text: String::new(),
            units: vec![UnitOption { key: "m".into(), words: String::new() }],
            unit: "m".into(),
            hint: String::new(),
        };
        let press =
            |key: String| Block::Press(PressBlock { key, words: String::new(), weight: PressWeight::Main });
        Screen {
            name: String::new(),
            title: String::new(),
            trail: Vec::new(),
            how_far: None,
            blocks: vec![
                Block::Choice(choice),
                Block::Number(number),
                press("next".into()),
                press(FileAsked::ToRead.key()),
            ],
            abilities: Vec::new(),
            back: false,
            right_to_left: false,
        }
    }

    #[test]
    fn only_what_a_block_has_and_takes_is_offered() {
        let screen = screen();
        let pick = |key: &str, picked: &[&str]| Deed::Pick {
            key: key.into(),
            picked: picked.iter().map(|&key| key.into()).collect(),
        };
        let measure =
            |key: &str, unit: &str| Deed::Measure { key: key.into(), typed: "1".into(), unit: unit.into() };
        let press = |key: &str| Deed::Press { key: key.into() };
        let file = |key: String| Deed::File { key, file: "f".into() };
        for offered in [
            pick("kind", &["a"]),
            pick("kind", &[]),
            measure("length", "m"),
            press("next"),
            press(&FileAsked::ToRead.key()),
            file(FileAsked::ToRead.key()),
        ] {
            assert!(screen.offers(&offered), "{offered:?}");
        }
        for refused in [
            pick("kind", &["c"]),
            pick("kind", &["a", "b"]),
            pick("length", &[]),
            measure("length", "ft"),
            measure("kind", "m"),
            press("kind"),
            press("length"),
            press("gone"),
            file("next".into()),
            Deed::Write { key: "length".into(), words: "1".into() },
            Deed::Photo { key: "next".into(), file: "f".into() },
            Deed::Back,
        ] {
            assert!(!screen.offers(&refused), "{refused:?}");
        }
    }
}
