//! An id for everything on a screen, each once.

use std::collections::BTreeSet;

use crate::screen::{Block, Screen};

/// Ids given so far.
#[derive(Default)]
struct Given(BTreeSet<String>);

impl Given {
    /// This id, or the next one after it that is not given.
    fn take(&mut self, wanted: String) -> String {
        let id = if self.0.contains(&wanted) {
            let mut others = (2_u32..).map(|number| format!("{wanted}~{number}"));
            others.find(|id| !self.0.contains(id)).unwrap_or_default()
        } else {
            wanted
        };
        self.0.insert(id.clone());
        id
    }

    /// Gives a thing within a block its id, out of the block's and its own.
    fn within(&mut self, block: &str, own: &mut String) {
        *own = self.take(format!("{block}/{own}"));
    }
}

/// Makes of what each page called its blocks an id that stands once on the screen.
pub(super) fn give(screen: &mut Screen) {
    let mut given = Given(screen.notices.iter().map(|notice| notice.id.clone()).collect());
    for block in &mut screen.blocks {
        let (kind, id) = own(block);
        *id = given.take(format!("{kind}:{id}"));
        let id = id.clone();
        within(block, &id, &mut given);
    }
}

fn within(block: &mut Block, id: &str, given: &mut Given) {
    match block {
        Block::Choice(choice) => {
            choice.options.iter_mut().for_each(|option| given.within(id, &mut option.id));
        }
        Block::Number(number) => {
            number.units.iter_mut().for_each(|unit| given.within(id, &mut unit.id));
        }
        Block::PhotoSlot(slot) => {
            slot.photos.iter_mut().for_each(|photo| given.within(id, &mut photo.id));
        }
        Block::Label(label) => {
            label.figures.iter_mut().for_each(|figure| given.within(id, &mut figure.id));
        }
        Block::Rows(rows) => {
            rows.rows.iter_mut().for_each(|row| given.within(id, &mut row.id));
        }
        Block::HowFar(far) => {
            far.stop.iter_mut().for_each(|stop| given.within(id, &mut stop.id));
        }
        _ => {}
    }
}

/// The kind of a block in ids, and what its page called it.
fn own(block: &mut Block) -> (&'static str, &mut String) {
    match block {
        Block::Words(words) => ("words", &mut words.id),
        Block::Caution(caution) => ("caution", &mut caution.id),
        Block::Choice(choice) => ("choice", &mut choice.id),
        Block::Writing(writing) => ("writing", &mut writing.id),
        Block::Number(number) => ("number", &mut number.id),
        Block::PhotoSlot(slot) => ("photos", &mut slot.id),
        Block::PhotoPart(part) => ("photo-part", &mut part.id),
        Block::Label(label) => ("label", &mut label.id),
        Block::Reading(reading) => ("reading", &mut reading.id),
        Block::Part(part) => ("part", &mut part.id),
        Block::Rows(rows) => ("rows", &mut rows.id),
        Block::Figure(figure) => ("figure", &mut figure.id),
        Block::HowFar(far) => ("how-far", &mut far.id),
        Block::Press(press) => ("press", &mut press.id),
        Block::Confirm(confirm) => ("press", &mut confirm.id),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_called_the_same_is_told_apart() {
        let mut given = Given::default();
        let ids: Vec<_> = ["a", "a", "a~2", "a"].map(|id| given.take(id.into())).into();
        assert_eq!(ids, ["a", "a~2", "a~2~2", "a~3"]);
    }
}
