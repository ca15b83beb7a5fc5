//! What is said of a drawn screen as a whole, once its page is done: an id for everything, which cautions stand open, what a
//! screen reader says, which press takes what is typed, and what stands in the dock.

mod aloud;
pub(crate) mod cautions;
mod dock;
mod ids;

use telling::words::Language;

pub(crate) use aloud::notices as notices_aloud;

use crate::screen::{Block, PressWeight, Screen};

/// Finishes a screen. Pages know nothing of it.
pub(crate) fn finish(screen: &mut Screen, language: &Language) {
    submits(screen);
    ids::give(screen);
    screen.dock = dock::dock(&screen.blocks);
    aloud::give(screen, language);
}

/// What is written or typed goes with the way on, unless its page said another press.
fn submits(screen: &mut Screen) {
    let way_on = screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.weight == PressWeight::Main && press.need.is_none() => {
            Some(press.key.clone())
        }
        _ => None,
    });
    for block in &mut screen.blocks {
        match block {
            // What is looked for counts with every letter.
            Block::Writing(writing) if writing.kind != crate::screen::WritingKind::Search => {
                writing.submit = writing.submit.take().or_else(|| way_on.clone());
            }
            Block::Number(number) => number.submit = number.submit.take().or_else(|| way_on.clone()),
            _ => {}
        }
    }
}
