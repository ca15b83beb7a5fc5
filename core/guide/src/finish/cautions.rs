//! Cautions of a screen: all of them in one place, each open until it was read once, and the press that says so.

use std::collections::BTreeSet;

use phrase::Phrase;
use telling::words::Language;

use crate::place::Key;
use crate::screen::{Block, CautionBlock, PressWeight, Screen};

/// Puts the cautions of a screen together where the first stands, each once and in the page's order, which is that of the
/// step at hand. Those that are not among `read` stand open, and the press that takes the answer says that they were read.
pub(crate) fn gather(screen: &mut Screen, read: &BTreeSet<String>, language: &Language) {
    let is_caution = |block: &Block| matches!(block, Block::Caution(_));
    let Some(first) = screen.blocks.iter().position(is_caution) else { return };
    let (cautions, rest): (Vec<_>, Vec<_>) =
        std::mem::take(&mut screen.blocks).into_iter().partition(is_caution);
    let mut said = BTreeSet::new();
    let mut together: Vec<Block> = Vec::new();
    let mut is_open = false;
    for block in cautions {
        let Block::Caution(mut caution) = block else { continue };
        if !said.insert(caution.id.clone()) {
            continue;
        }
        caution.unread = !read.contains(&caution.id);
        if caution.unread {
            is_open = true;
            caution.name = language.say(&Phrase::new("caution-unread"));
        }
        together.push(Block::Caution(caution));
    }
    screen.blocks = rest;
    screen.blocks.splice(first..first, together);
    if is_open {
        name_presses(screen, language);
    }
}

/// While a caution stands unread, whatever takes the answer says that it was read.
fn name_presses(screen: &mut Screen, language: &Language) {
    for block in &mut screen.blocks {
        if let Block::Press(press) = block
            && press.weight != PressWeight::Quiet
            && Key::of(&press.key).is_some_and(|key| takes(&key))
        {
            let read = Phrase::new("caution-read").text("press", press.words.clone());
            press.words = language.say(&read);
        }
    }
}

/// Whether a press takes an answer, or says that something is done; all others look or lead elsewhere.
pub(crate) fn takes(key: &Key) -> bool {
    matches!(
        key,
        Key::Next
            | Key::Same
            | Key::OthersToo
            | Key::OthersOpen
            | Key::Short
            | Key::AllShort
            | Key::SeenNth(_)
            | Key::Done
            | Key::Placed
            | Key::Save
            | Key::Keep
            | Key::AddBand
    )
}

/// The cautions of a finished screen that stand open, as they are kept.
pub(crate) fn unread(screen: &Screen) -> impl Iterator<Item = String> + '_ {
    screen.blocks.iter().filter_map(|block| match block {
        Block::Caution(CautionBlock { unread: true, id, .. }) => {
            Some(id.split_once(':').map_or(id.as_str(), |(_, own)| own).to_owned())
        }
        _ => None,
    })
}
