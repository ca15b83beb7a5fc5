//! Screens as HTML. Only drawing: nothing here asks the guide or knows what a block is about.

mod bar;
mod card;
mod caution;
mod choice;
mod dock;
mod document;
mod drawing;
mod input;
mod photo_part;
mod press;
mod rows;
mod sign;
mod words;

use std::collections::BTreeMap;

use guide::Screen;
use guide::screen::{Block, FigureDrawn, WordsRole};
use maud::{Markup, html};
use phrase::Phrase;
use telling::words::Language;

pub(crate) use document::{closed, document, drawing_alone};

/// Everything that is drawn.
pub(crate) struct Drawn<'a> {
    /// The screen.
    pub screen: &'a Screen,
    /// Its drawings, by name.
    pub figures: &'a BTreeMap<String, FigureDrawn>,
    /// How wide its drawings are shown, CSS pixels, where that is known.
    pub shown_wide: Option<u32>,
    /// The ticket that a deed on it needs.
    pub ticket: &'a str,
    /// What the page itself has to say about the last deed.
    pub said: Option<&'a Phrase>,
    /// Files that were written here and can be saved: name and place in the list.
    pub written: &'a [(String, usize)],
    /// Whether something is going on beside, so that the screen is to be drawn again soon.
    pub working: bool,
    /// The words of the page.
    pub words: &'a Language,
}

impl Drawn<'_> {
    /// A message of the page's own.
    fn word(&self, id: &str) -> String {
        self.words.say(&Phrase::new(id))
    }

    /// Whether these words are the lead of the screen.
    fn is_lead(&self, words: &str) -> bool {
        self.screen.blocks.iter().any(|block| match block {
            Block::Words(lead) => lead.role == WordsRole::Lead && lead.words == words,
            _ => false,
        })
    }
}

/// An id of a screen as an id of HTML, which may hold no space (HTML, "The id attribute").
fn element(id: &str) -> String {
    format!("at-{}", id.replace(char::is_whitespace, "_"))
}

/// The blocks of the screen from top to bottom, but for what stands in the dock.
fn blocks(drawn: &Drawn<'_>) -> Markup {
    let mut out = Vec::new();
    let mut at = 0;
    let blocks = &drawn.screen.blocks;
    while let Some(block) = blocks.get(at) {
        if let Block::Caution(_) = block {
            let together: Vec<_> = blocks[at..]
                .iter()
                .map_while(|block| match block {
                    Block::Caution(caution) => Some(caution),
                    _ => None,
                })
                .collect();
            at += together.len();
            out.push(caution::box_of(&together));
            continue;
        }
        if !is_docked(drawn, block) {
            out.push(block_of(drawn, at, block));
        }
        at += 1;
    }
    html! { @for block in out { (block) } }
}

pub(crate) use photo_part::WIDTHS as TOUCHED_WIDTHS;

fn is_docked(drawn: &Drawn<'_>, block: &Block) -> bool {
    match block {
        Block::Choice(choice) => drawn.screen.dock.has(&choice.id),
        Block::Press(press) => drawn.screen.dock.has(&press.id),
        _ => false,
    }
}

fn block_of(drawn: &Drawn<'_>, at: usize, block: &Block) -> Markup {
    match block {
        Block::Words(words) => words::words(words, words::is_first_lead(drawn.screen, at)),
        Block::Caution(caution) => caution::box_of(&[caution]),
        Block::Choice(choice) => {
            choice::choice(choice, drawn.screen.dock.answers_lead_on, drawn.is_lead(&choice.name))
        }
        Block::Writing(writing) => input::writing(writing),
        Block::Number(number) => input::number(number),
        Block::PhotoSlot(slot) => card::photos(drawn, slot),
        Block::PhotoPart(part) => photo_part::photo_part(part),
        Block::Label(label) => card::label(drawn, label),
        Block::Reading(reading) => card::reading(reading),
        Block::Part(part) => card::part(part),
        Block::Rows(rows) => rows::rows(drawn, rows),
        Block::Figure(figure) => drawing::figure(drawn, figure),
        Block::HowFar(far) => press::how_far(far),
        Block::Press(press) => press::press(drawn, press),
        Block::Confirm(confirm) => press::confirm(confirm),
    }
}
