//! Everything on a screen that has an id of its own, in reading order.

use super::{Aloud, Block, Screen};

/// One thing on a screen: a notice, a block, or something within a block.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Item<'a> {
    /// Its id on the screen.
    pub id: &'a str,
    /// What a screen reader says of it.
    pub aloud: &'a Aloud,
    /// The key by which it answers, if it does.
    pub key: Option<&'a str>,
}

impl Screen {
    /// Everything that has an id of its own, in reading order. The marks of drawings are not among it.
    pub fn items(&self) -> Vec<Item<'_>> {
        let notices = self.notices.iter().map(|notice| item(&notice.id, &notice.aloud, None));
        notices.chain(self.blocks.iter().flat_map(Block::items)).collect()
    }
}

const fn item<'a>(id: &'a str, aloud: &'a Aloud, key: Option<&'a str>) -> Item<'a> {
    Item { id, aloud, key }
}

impl Block {
    /// Its id on the screen.
    pub fn id(&self) -> &str {
        match self {
            Self::Words(words) => &words.id,
            Self::Caution(caution) => &caution.id,
            Self::Choice(choice) => &choice.id,
            Self::Writing(writing) => &writing.id,
            Self::Number(number) => &number.id,
            Self::PhotoSlot(slot) => &slot.id,
            Self::PhotoPart(part) => &part.id,
            Self::Label(label) => &label.id,
            Self::Reading(reading) => &reading.id,
            Self::Part(part) => &part.id,
            Self::Rows(rows) => &rows.id,
            Self::Figure(figure) => &figure.id,
            Self::HowFar(far) => &far.id,
            Self::Press(press) => &press.id,
            Self::Confirm(confirm) => &confirm.id,
        }
    }

    /// What a screen reader says of it as a whole.
    pub const fn aloud(&self) -> &Aloud {
        match self {
            Self::Words(words) => &words.aloud,
            Self::Caution(caution) => &caution.aloud,
            Self::Choice(choice) => &choice.aloud,
            Self::Writing(writing) => &writing.aloud,
            Self::Number(number) => &number.aloud,
            Self::PhotoSlot(slot) => &slot.aloud,
            Self::PhotoPart(part) => &part.aloud,
            Self::Label(label) => &label.aloud,
            Self::Reading(reading) => &reading.aloud,
            Self::Part(part) => &part.aloud,
            Self::Rows(rows) => &rows.aloud,
            Self::Figure(figure) => &figure.aloud,
            Self::HowFar(far) => &far.aloud,
            Self::Press(press) => &press.aloud,
            Self::Confirm(confirm) => &confirm.aloud,
        }
    }

    /// Itself, and what stands within it.
    pub fn items(&self) -> Vec<Item<'_>> {
        let key = match self {
            Self::Choice(choice) => Some(choice.key.as_str()),
            Self::Writing(writing) => Some(writing.key.as_str()),
            Self::Number(number) => Some(number.key.as_str()),
            Self::PhotoSlot(slot) => Some(slot.key.as_str()),
            Self::Part(part) => part.key.as_deref(),
            Self::Press(press) => Some(press.key.as_str()),
            Self::Confirm(confirm) => Some(confirm.key.as_str()),
            _ => None,
        };
        let mut items = vec![item(self.id(), self.aloud(), key)];
        match self {
            Self::Choice(choice) => {
                items.extend(choice.options.iter().map(|option| item(&option.id, &option.aloud, None)));
            }
            Self::Number(number) => {
                items.extend(number.units.iter().map(|unit| item(&unit.id, &unit.aloud, None)));
            }
            Self::PhotoSlot(slot) => items
                .extend(slot.photos.iter().map(|photo| item(&photo.id, &photo.aloud, photo.key.as_deref()))),
            Self::Label(label) => items.extend(
                label.figures.iter().map(|figure| item(&figure.id, &figure.aloud, figure.key.as_deref())),
            ),
            Self::Rows(rows) => {
                items.extend(rows.rows.iter().map(|row| item(&row.id, &row.aloud, row.key.as_deref())));
            }
            Self::HowFar(far) => {
                items.extend(far.stop.iter().map(|stop| item(&stop.id, &stop.aloud, Some(&stop.key))));
            }
            _ => {}
        }
        items
    }
}
