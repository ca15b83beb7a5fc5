//! What is drawn: a screen is a title and a list of blocks, words and numbers ready to show.
//!
//! A shell draws each kind of block in its platform's way and sends back [`Deed`](crate::Deed)s with the block's key.
//! It never needs to know what a block is about. Everything here is a plain record or enum; names are chosen so that
//! they clash with nothing in Kotlin or Swift.

mod ability;
mod block;
mod card;
mod drawing;
mod file;
mod input;
mod offers;

pub use ability::Ability;
pub use block::{
    Block, CautionBlock, ConfirmBlock, HowFarBlock, PressBlock, PressWeight, RowEntry, RowsBlock, WordsBlock,
    WordsRole,
};
pub use card::{LabelBlock, LabelFigure, PartBlock, PhotoShown, PhotoSlotBlock, ReadingBlock};
pub use drawing::{FigureBlock, FigureMark, MarkAnchor, MarkDash, MarkFill, MarkShape, MarkWeight, Spot};
pub use file::FileAsked;
pub use input::{ChoiceBlock, ChoiceOption, NumberBlock, UnitOption, WritingBlock};

/// How far the guide has come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HowFar {
    /// Questions answered.
    pub done: u32,
    /// Questions there are, as far as can be told now; at least `done`.
    pub of: u32,
    /// The same in words.
    pub words: String,
}

/// One screen.
#[derive(Debug, Clone, PartialEq)]
pub struct Screen {
    /// A stable name, the same in every language: for tests, and for a shell to tell one screen from the next.
    pub name: String,
    /// What the screen is about; read first by a screen reader.
    pub title: String,
    /// Where we are, from the whole to the part: the survey, the stage.
    pub trail: Vec<String>,
    /// How far the guide has come; `None` where that means nothing.
    pub how_far: Option<HowFar>,
    /// What it shows, from top to bottom. Never more than [`MOST_ROWS`] rows in all.
    pub blocks: Vec<Block>,
    /// What the screen would like the device to do.
    pub abilities: Vec<Ability>,
    /// Whether there is a way back.
    pub back: bool,
    /// Whether its words are read from right to left; a shell then draws it mirrored. Drawings stay as they are.
    pub right_to_left: bool,
}

/// The most rows, options and marks-free blocks of one screen; longer lists come in pages.
pub const MOST_ROWS: usize = 200;

impl Screen {
    /// Every way on that the screen offers: the keys of what can be pressed, picked, written, measured, confirmed or
    /// given a photo.
    pub fn keys(&self) -> Vec<&str> {
        self.blocks.iter().flat_map(Block::keys).collect()
    }

    /// Every sentence of the screen in reading order, as a screen reader would say it.
    pub fn spoken(&self) -> Vec<&str> {
        let mut spoken = vec![self.title.as_str()];
        spoken.extend(self.trail.iter().map(String::as_str));
        spoken.extend(self.how_far.iter().map(|far| far.words.as_str()));
        spoken.extend(self.blocks.iter().flat_map(Block::spoken));
        spoken
    }

    /// How many rows, options and other blocks it has.
    pub fn rows(&self) -> usize {
        let size = |block: &Block| match block {
            Block::Rows(rows) => rows.rows.len(),
            Block::Choice(choice) => choice.options.len(),
            Block::Label(label) => label.figures.len(),
            Block::PhotoSlot(slot) => slot.photos.len(),
            _ => 1,
        };
        self.blocks.iter().map(size).sum()
    }
}
