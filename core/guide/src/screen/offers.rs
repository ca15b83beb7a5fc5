//! Whether a screen offers what was done on it.

use super::{Block, PressBlock, Screen};
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
                let is_there =
                    |key: &String| choice.options.iter().any(|option| option.enabled && option.key == *key);
                choice.key == *key && picked.iter().all(is_there) && (choice.several || picked.len() <= 1)
            }
            (Self::Writing(writing), Deed::Write { key, .. }) => writing.key == *key,
            (Self::Number(number), Deed::Measure { key, unit, .. }) => {
                number.key == *key && number.units.iter().any(|option| option.key == *unit)
            }
            (Self::PhotoSlot(slot), Deed::Photo { key, .. }) => slot.key == *key,
            (Self::PhotoPart(part), Deed::Touch { key, .. }) => part.key == *key,
            (Self::PhotoSlot(slot), Deed::Print { key, .. }) => slot.print_key.as_ref() == Some(key),
            (Self::PhotoSlot(slot), Deed::Press { key }) => {
                slot.photos.iter().any(|photo| photo.key.as_ref() == Some(key))
            }
            (Self::Press(press), Deed::File { key, .. }) => {
                press.takes(key) && press.need.as_ref().is_some_and(super::Need::is_file)
            }
            (Self::Press(press), Deed::Press { key }) => press.takes(key),
            (Self::HowFar(far), Deed::Press { key }) => far.stop.as_ref().is_some_and(|stop| stop.takes(key)),
            (Self::Confirm(confirm), Deed::Press { key }) => confirm.enabled && confirm.key == *key,
            (Self::Label(_) | Self::Part(_) | Self::Rows(_) | Self::Figure(_), Deed::Press { key }) => {
                self.keys().contains(&key.as_str())
            }
            _ => false,
        }
    }
}

impl PressBlock {
    fn takes(&self, key: &str) -> bool {
        self.enabled && self.key == key
    }
}
